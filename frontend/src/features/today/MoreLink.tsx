import { Link } from "react-router";
import classes from "./today.module.css";

/** At the end of a part's title: where the whole list is. */
export function MoreLink({ to, children }: { to: string; children: string }) {
  return (
    <Link to={to} className={classes.more}>
      {children}
    </Link>
  );
}
