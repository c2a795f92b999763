import { Link } from "react-router";
import type { components } from "@/api/schema.gen";
import { Moment } from "../figures";
import { StatusMark } from "../notes/StatusMark";
import classes from "./pours.module.css";
import { coatLabel, jobsUnder, statusLabel, topsInWords } from "./words";

export type PourRow = components["schemas"]["PourRow"];

function Standing({ pour }: { pour: PourRow }) {
  if (pour.status === "planned") return <StatusMark mark="quiet">Planned</StatusMark>;
  if (pour.status !== "completed") return <StatusMark mark="quiet">{statusLabel(pour.status)}</StatusMark>;
  return pour.needs_owner_reason ? (
    <StatusMark mark="look">Owner's word missing</StatusMark>
  ) : (
    <StatusMark mark="ok">Poured</StatusMark>
  );
}

interface PourListProps {
  pours: readonly PourRow[];
  label: string;
  /** Left out where all are of one job. */
  namesJob?: boolean;
}

/** Pours one under another: the coat, on which tops, when, and how it stands. The whole row leads to the pour. */
export function PourList({ pours, label, namesJob = true }: PourListProps) {
  return (
    <ul className={classes.list} aria-label={label}>
      {pours.map((pour) => (
        <li key={pour.id} data-status={pour.status}>
          <span className={classes.number}>{pour.number}</span>
          <span className={classes.what}>
            <Link to={`/pours/${pour.id}`}>
              {coatLabel(pour.layer)} on {topsInWords(pour.pieces)}
            </Link>
            {namesJob && (
              <small>
                {jobsUnder(pour.pieces)
                  .map(({ job_title, customer_name }) => `${job_title}, ${customer_name}`)
                  .join(" · ")}
              </small>
            )}
            {pour.is_redo && <small>Laid again over one that failed</small>}
          </span>
          <span className={classes.when}>
            <Moment value={pour.poured_at ?? pour.planned_for} />
            {!pour.poured_at && !pour.planned_for && <span className="soft">no time yet</span>}
            <Standing pour={pour} />
          </span>
        </li>
      ))}
    </ul>
  );
}
