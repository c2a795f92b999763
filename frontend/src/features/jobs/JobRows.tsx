import { Link } from "react-router";
import { Day, daysBetween, useToday } from "@/components/figures";
import { StatusMark } from "@/components/notes/StatusMark";
import { Outline } from "@/components/outline/Outline";
import classes from "./jobs.module.css";
import type { Job } from "./queries";
import { Area } from "./top/TopPreview";
import { purposeLabel } from "./words";

/** How far a job is, in a word and a day. */
export function JobStanding({ job }: { job: Job }) {
  const today = useToday();
  if (!job.finished_on) {
    if (!job.due_on) return <span className="soft">Under way</span>;
    const isLate = daysBetween(today, job.due_on) < 0;
    return (
      <>
        {isLate ? <StatusMark mark="look">Overdue</StatusMark> : "Due"} <Day value={job.due_on} away />
      </>
    );
  }
  return (
    <span className={classes.howFar}>
      <StatusMark mark="ok">{job.handed_over_on ? "Handed over" : "Finished"}</StatusMark>
      <Day value={job.handed_over_on ?? job.finished_on} />
    </span>
  );
}

/** Jobs one under another, each with its first top drawn small. */
export function JobRows({ jobs }: { jobs: readonly Job[] }) {
  return (
    <ul className={classes.jobs} aria-label="Jobs">
      {jobs.map((job) => {
        const [first] = job.pieces;
        return (
          <li key={job.id}>
            <span className={classes.number}>{job.number}</span>
            <span className={classes.thumb} aria-hidden="true">
              {first && <Outline top={first.shape} name={first.name} hasDimensions={false} />}
            </span>
            <span className={classes.what}>
              <Link to={`/jobs/${job.id}`}>{job.title}</Link>
              <small>
                {job.customer.name}
                {job.purpose !== "customer" && ` · ${purposeLabel(job.purpose)}`}
                {job.site && ` · ${job.site}`}
              </small>
            </span>
            <span className={classes.size}>
              <Area sqft={job.area_sqft} />
              <small>{job.pieces.length === 1 ? "1 top" : `${job.pieces.length} tops`}</small>
            </span>
            <span className={classes.standing}>
              <JobStanding job={job} />
            </span>
          </li>
        );
      })}
    </ul>
  );
}
