import { Button } from "@mantine/core";
import { Suspense } from "react";
import { Link, useParams } from "react-router";
import { useIsOwner, useMayRecord } from "@/api/session";
import { Day } from "@/components/figures";
import { EmptyState } from "@/components/notes/EmptyState";
import { StatusMark } from "@/components/notes/StatusMark";
import { Columns, type Fact, LinesSkeleton, Page, Part } from "@/components/page";
import { PourList } from "@/components/pours/PourList";
import { JobActs } from "./JobActs";
import { JobCost } from "./JobCost";
import { JobStanding } from "./JobRows";
import { JobTops } from "./JobTops";
import classes from "./jobs.module.css";
import { type Job, type PourRow, useJob, usePoursOf } from "./queries";
import { Area } from "./top/TopPreview";
import { purposeLabel } from "./words";

function factsOf(job: Job): Fact[] {
  return [
    { label: "Customer", value: job.customer.name },
    { label: "How far", value: <JobStanding job={job} /> },
    {
      label: job.pieces.length === 1 ? "1 top" : `${job.pieces.length} tops`,
      value: <Area sqft={job.area_sqft} />,
    },
    { label: "What for", value: purposeLabel(job.purpose) },
    ...(job.site ? [{ label: "Where it goes", value: job.site }] : []),
    ...(job.due_on && job.finished_on ? [{ label: "Was due", value: <Day value={job.due_on} /> }] : []),
  ];
}

function Pours({ job, pours }: { job: Job; pours: readonly PourRow[] }) {
  const mayRecord = useMayRecord();
  const meant = pours.filter(({ status }) => status === "planned" || status === "completed");
  const gone = pours.filter(({ status }) => status === "reversed" || status === "cancelled");
  return (
    <Part
      title="Pours"
      aside={
        <Link to={`/jobs/${job.id}/sources`} className={classes.aside}>
          Every lot in it
        </Link>
      }
    >
      {meant.length === 0 ? (
        <EmptyState title="No pour yet">
          {mayRecord
            ? "Plan the first coat, or log one that was poured already."
            : "None is planned or poured."}
        </EmptyState>
      ) : (
        <PourList label="Pours of this job" pours={meant} namesJob={false} />
      )}
      {gone.length > 0 && (
        <details className={classes.gone}>
          <summary>{gone.length} undone or called off</summary>
          <PourList label="Undone or called off" pours={gone} namesJob={false} />
        </details>
      )}
    </Part>
  );
}

/** One job: its tops to scale with the coats on them, its pours, what it cost. */
export function JobPage() {
  const id = Number(useParams().id);
  const job = useJob(id);
  const pours = usePoursOf({ job: id });
  const isOwner = useIsOwner();
  const mayRecord = useMayRecord();
  const isUnderWay = job.finished_on === null;
  return (
    <Page
      title={job.title}
      back={{ to: "/jobs", label: `Jobs · ${job.number}` }}
      marks={job.is_archived ? <StatusMark mark="quiet">Archived</StatusMark> : null}
      facts={factsOf(job)}
      acts={
        mayRecord && (
          <>
            {isUnderWay && job.pieces.length > 0 && (
              <Button component={Link} to={`/pours/new?job=${id}`} h={58} px={28} fz="1.06rem">
                Plan or log a pour
              </Button>
            )}
            <JobActs job={job} hasPours={pours.some(({ status }) => status === "completed")} />
          </>
        )
      }
    >
      {job.note && <p className={classes.note}>{job.note}</p>}
      <Columns lead>
        <JobTops job={job} pours={pours} />
        <div className={classes.beside}>
          <Pours job={job} pours={pours} />
          {isOwner && (
            <Part title="What it cost">
              <Suspense fallback={<LinesSkeleton lines={2} />}>
                <JobCost job={job} />
              </Suspense>
            </Part>
          )}
        </div>
      </Columns>
    </Page>
  );
}
