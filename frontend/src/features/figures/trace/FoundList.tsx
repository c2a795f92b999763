import type { ReactNode } from "react";
import { Link } from "react-router";
import classes from "../figures.module.css";
import own from "./trace.module.css";

export interface Found {
  key: string;
  to: string;
  title: ReactNode;
  note?: ReactNode;
}

/** What a search found, each row leading to its trace. */
export function FoundList({ label, rows, none }: { label: string; rows: readonly Found[]; none: string }) {
  if (rows.length === 0) return <p className="soft">{none}</p>;
  return (
    <ul className={classes.plain} aria-label={label}>
      {rows.map(({ key, to, title, note }) => (
        <li key={key} className={own.found}>
          <Link to={to}>{title}</Link>
          {note && <small>{note}</small>}
        </li>
      ))}
    </ul>
  );
}
