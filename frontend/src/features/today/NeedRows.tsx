import { Link } from "react-router";
import { Day } from "@/components/figures";
import { StatusMark } from "@/components/notes/StatusMark";
import { ACTS, mayAct, pageOf } from "./groups";
import type { Need } from "./queries";
import classes from "./today.module.css";

export type Role = "owner" | "crew" | "viewer";

function Sign({ kind }: { kind: Need["kind"] }) {
  if (kind === "lot_expired") return <StatusMark mark="stop">Past its use-by</StatusMark>;
  if (kind === "lot_on_hold") return <StatusMark mark="look">On hold</StatusMark>;
  return null;
}

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
          <Sign kind={need.kind} />
        </span>
        {mayAct(need.act, role) && <span className={classes.act}>{ACTS[need.act]}</span>}
        <svg viewBox="0 0 16 16" aria-hidden="true">
          <path d="M6 3l5 5-5 5" />
        </svg>
      </Link>
    </li>
  );
}

export function NeedRows({ label, rows, role }: { label: string; rows: readonly Need[]; role: Role }) {
  return (
    <ul className={classes.rows} aria-label={label}>
      {rows.map((need) => (
        <Row key={`${need.kind} ${need.link.id}`} need={need} role={role} />
      ))}
    </ul>
  );
}
