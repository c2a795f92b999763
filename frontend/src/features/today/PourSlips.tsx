import { Link } from "react-router";
import { Day } from "@/components/figures";
import { StatusMark } from "@/components/notes/StatusMark";
import { LOG_WORDS, mayAct, pageOf } from "./groups";
import type { Role } from "./NeedRows";
import type { Need } from "./queries";
import classes from "./today.module.css";

function Slip({ pour, role }: { pour: Need; role: Role }) {
  const why = LOG_WORDS[pour.kind];
  return (
    <li>
      <Link to={pageOf(pour)} className={classes.slip}>
        <span className={classes.what}>
          <strong>{pour.title}</strong>
          <span>{pour.detail}</span>
          <span className={classes.why}>
            {why && <StatusMark mark={why.mark}>{why.words}</StatusMark>}
            {pour.kind === "pour_overdue" && <Day value={pour.on} away />}
          </span>
        </span>
        <span className={classes.go}>{mayAct(pour.act, role) ? "Log this pour" : "See the plan"}</span>
      </Link>
    </li>
  );
}

/** Planned pours that can be logged now: one tap opens the pour with all its amounts filled in. */
export function PourSlips({ pours, role }: { pours: readonly Need[]; role: Role }) {
  return (
    <ul className={classes.slips} aria-label="Pours to log">
      {pours.map((pour) => (
        <Slip key={pour.link.id} pour={pour} role={role} />
      ))}
    </ul>
  );
}
