import { Link, useSearchParams } from "react-router";
import classes from "./choice.module.css";

interface PagerProps {
  /** What is listed: "movements". */
  label: string;
  count: number;
  pageSize: number;
  name?: string;
}

/** The page that the address names, from 1. */
export function usePage(name = "page"): number {
  const [params] = useSearchParams();
  const page = Number(params.get(name) ?? "1");
  return Number.isInteger(page) && page > 0 ? page : 1;
}

/** Leads through a long list, page by page. Nothing where one page holds all. */
export function Pager({ label, count, pageSize, name = "page" }: PagerProps) {
  const [params] = useSearchParams();
  const page = usePage(name);
  const last = Math.max(1, Math.ceil(count / pageSize));
  if (last === 1) return null;
  function at(next: number) {
    const search = new URLSearchParams(params);
    search.set(name, String(next));
    return { search: search.toString() };
  }
  return (
    <nav className={classes.pager} aria-label={`Pages of ${label}`}>
      {page > 1 ? (
        <Link to={at(page - 1)} preventScrollReset>
          Later ones
        </Link>
      ) : (
        <span />
      )}
      <span className="soft">
        {page} of {last}
      </span>
      {page < last ? (
        <Link to={at(page + 1)} preventScrollReset>
          Earlier ones
        </Link>
      ) : (
        <span />
      )}
    </nav>
  );
}
