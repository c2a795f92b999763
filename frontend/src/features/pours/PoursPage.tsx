import { Button } from "@mantine/core";
import { Link, useSearchParams } from "react-router";
import { useMayRecord } from "@/api/session";
import { FilterRow } from "@/components/entry/FilterRow";
import { Pager, usePage } from "@/components/entry/Pager";
import { SearchField } from "@/components/entry/SearchField";
import { EmptyState } from "@/components/notes/EmptyState";
import { ProblemNote } from "@/components/notes/ProblemNote";
import { LinesSkeleton, Page } from "@/components/page";
import { PourList } from "@/components/pours/PourList";
import { COATS, type Coat } from "@/components/pours/words";
import classes from "./pours.module.css";
import { POURS_SHOWN, usePours } from "./queries";

const STANDINGS = [
  ["", "All"],
  ["planned", "Planned"],
  ["completed", "Poured"],
  ["waiting", "Owner's word missing"],
  ["off", "Undone or called off"],
] as const;

/** What the address asks for, as the list takes it. */
function askedIn(params: URLSearchParams) {
  const standing = params.get("state") ?? "";
  const search = params.get("search");
  const coat = params.get("coat");
  return {
    ...(search && { search }),
    ...(coat && { layer: [coat as Coat] }),
    ...((standing === "planned" || standing === "completed") && {
      status: [standing] as const as ["planned"],
    }),
    ...(standing === "waiting" && { needs_owner_reason: true }),
    ...(standing === "off" && { status: ["reversed" as const, "cancelled" as const] }),
    ...(standing === "planned" && { ordering: ["planned_for" as const] }),
  };
}

/** Every pour, the latest first; those that are planned by their day. */
export function PoursPage() {
  const [params] = useSearchParams();
  const mayRecord = useMayRecord();
  const pours = usePours({ ...askedIn(params), page: usePage() });
  const isNarrowed = ["search", "state", "coat"].some((name) => params.get(name));
  const fresh = (
    <Button component={Link} to="/pours/new" h={58} px={28} fz="1.06rem">
      Plan or log a pour
    </Button>
  );
  return (
    <Page title="Pours" back={{ to: "/jobs", label: "Jobs" }} acts={mayRecord && fresh}>
      <div className={classes.narrow}>
        <SearchField label="A top, a job, a customer" />
        <FilterRow label="How far" name="state" choices={STANDINGS} />
        <FilterRow label="Coat" name="coat" choices={[["", "Every coat"], ...COATS]} />
      </div>
      {pours.isPending && <LinesSkeleton lines={8} />}
      <ProblemNote problem={pours.error} onRetry={() => void pours.refetch()} />
      {pours.data?.results.length === 0 && (
        <EmptyState
          title={isNarrowed ? "No such pour" : "No pour yet"}
          act={!isNarrowed && mayRecord && fresh}
        >
          {isNarrowed
            ? "Try fewer letters, or look under all."
            : "Plan one, or log one that was poured already."}
        </EmptyState>
      )}
      {pours.data && pours.data.results.length > 0 && (
        <>
          <PourList label="Pours" pours={pours.data.results} />
          <Pager label="pours" count={pours.data.count} pageSize={POURS_SHOWN} />
        </>
      )}
    </Page>
  );
}
