import { Link } from "react-router";
import { Day } from "@/components/figures";
import { ACTS, mayAct, pageOf } from "./groups";
import type { Need } from "./queries";
import classes from "./today.module.css";

export type Role = "owner" | "crew" | "viewer";

/** One that needs a hand: the whole row leads to where it is settled. */
function Row({ need, role }: { need: Need; role: Role }) {
  const isDated = need.link.noun === "pour" || need.link.noun === "delivery";
  return (
    <li className={classes.row}>
      <Link to={pageOf(need)}>
        <span className={classes.what}>
          <strong>{need.title}</strong>
          <small>
            {isDated && need.on && (
              <>
                <Day value={need.on} away />
                {" · "}
              </>
            )}
            {need.detail}
          </small>
        </span>
        {mayAct(need.act, role) && <span className={classes.act}>{ACTS[need.act]}</span>}
        <svg viewBox="0 0 16 16" aria-hidden="true">
          <path d="M6 3l5 5-5 5" />
        </svg>
      </Link>
    </li>
  );
}

interface NeedRowsProps {
  label: string;
  rows: readonly Need[];
  role: Role;
  /** How many stand in sight; the others are a tap away. */
  most?: number;
}

/** Rows of one sort; of a long list the first stand in sight, so that the next sort is not lost below it. */
export function NeedRows({ label, rows, role, most = 4 }: NeedRowsProps) {
  const shown = rows.length > most + 1 ? rows.slice(0, most) : rows;
  const others = rows.slice(shown.length);
  const listed = (these: readonly Need[]) =>
    these.map((need) => <Row key={`${need.kind} ${need.link.id}`} need={need} role={role} />);
  return (
    <>
      <ul className={classes.rows} aria-label={label}>
        {listed(shown)}
      </ul>
      {others.length > 0 && (
        <details className={classes.others}>
          <summary>{others.length} more</summary>
          <ul className={classes.rows} aria-label={`${label}, the others`}>
            {listed(others)}
          </ul>
        </details>
      )}
    </>
  );
}
