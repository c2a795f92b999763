import { Button } from "@mantine/core";
import { Link, useSearchParams } from "react-router";
import { useMayRecord } from "@/api/session";
import { FilterRow } from "@/components/entry/FilterRow";
import { Pager, usePage } from "@/components/entry/Pager";
import { SearchField } from "@/components/entry/SearchField";
import { EmptyState } from "@/components/notes/EmptyState";
import { ProblemNote } from "@/components/notes/ProblemNote";
import { LinesSkeleton, Page } from "@/components/page";
import { JobRows } from "./JobRows";
import classes from "./jobs.module.css";
import { JOBS_SHOWN, useJobs } from "./queries";
import { type JobState, PURPOSES, type Purpose, STATES } from "./words";

/** What the address asks for, as the list takes it. */
function askedIn(params: URLSearchParams, page: number) {
  const search = params.get("search");
  const state = params.get("state");
  const purpose = params.get("purpose");
  return {
    page,
    is_archived: false,
    ...(search && { search }),
    ...(state && { state: state as JobState }),
    ...(purpose && { purpose: purpose as Purpose }),
  };
}

/** Every job: whose, what, how large, and how far it is. */
export function JobsPage() {
  const [params] = useSearchParams();
  const mayRecord = useMayRecord();
  const { jobs, count, ...listing } = useJobs(askedIn(params, usePage()));
  const isNarrowed = ["search", "state", "purpose"].some((name) => params.get(name));
  const fresh = (
    <Button component={Link} to="/jobs/new" h={58} px={28} fz="1.06rem">
      New job
    </Button>
  );
  return (
    <Page
      title="Jobs"
      acts={
        <>
          {mayRecord && fresh}
          <Button component={Link} to="/pours" variant="default" h={58} px={28} fz="1.06rem">
            All pours
          </Button>
        </>
      }
    >
      <div className={classes.narrow}>
        <SearchField label="A job, a customer, a site" />
        <FilterRow label="How far" name="state" choices={STATES} />
        <FilterRow label="What for" name="purpose" choices={[["", "Every purpose"], ...PURPOSES]} />
      </div>
      {listing.isPending && <LinesSkeleton lines={8} />}
      <ProblemNote problem={listing.error} onRetry={() => void listing.refetch()} />
      {jobs?.length === 0 && (
        <EmptyState
          title={isNarrowed ? "No job goes by that" : "No job yet"}
          act={!isNarrowed && mayRecord && fresh}
        >
          {isNarrowed ? "Try fewer letters, or look under all." : "A job is what tops are poured for."}
        </EmptyState>
      )}
      {jobs && jobs.length > 0 && (
        <>
          <JobRows jobs={jobs} />
          <Pager label="jobs" count={count} pageSize={JOBS_SHOWN} />
        </>
      )}
    </Page>
  );
}
