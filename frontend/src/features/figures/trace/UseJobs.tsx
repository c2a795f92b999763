import { Link } from "react-router";

import { FlowList } from "@/components/flow/FlowList";
import { EmptyState } from "@/components/notes/EmptyState";
import { Amount, useAmountRoom } from "../Amount";
import classes from "../figures.module.css";
import type { Uses } from "../queries";
import own from "./trace.module.css";

/** Whom to call: each job and customer that got any of it; and the lots that it was mixed or opened into. */
export function UseJobs({ uses }: { uses: Uses }) {
  const room = useAmountRoom(uses.jobs.map(({ quantity }) => quantity));
  if (uses.jobs.length === 0) {
    return <EmptyState title="No job yet">None of it went into a pour.</EmptyState>;
  }
  return (
    <>
      <ul className={classes.plain} style={room} aria-label="Jobs and customers">
        {uses.jobs.map((job) => (
          <li key={job.job} className={own.jobUse}>
            <span>
              <Link to={`/jobs/${job.job}`}>
                Job {job.number}, {job.title}
              </Link>
              <small>
                {job.customer_name} · {job.tops === 1 ? "1 top" : `${job.tops} tops`}
              </small>
            </span>
            <Amount value={job.quantity} />
          </li>
        ))}
      </ul>
      {uses.through.length > 0 && (
        <>
          <h3>On the way, it was in</h3>
          <FlowList
            label="Lots on the way"
            stops={uses.through.map(({ lot, quantity }) => ({
              key: `lot ${lot.id}`,
              kind: "blend",
              title: `Lot ${lot.number}, ${lot.material.name}`,
              to: `/shelf/lots/${lot.id}`,
              quantity,
            }))}
          />
        </>
      )}
    </>
  );
}
