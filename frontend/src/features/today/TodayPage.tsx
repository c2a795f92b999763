import { useSession } from "@/api/session";
import { Day } from "@/components/figures";
import { EmptyState } from "@/components/notes/EmptyState";
import { type Fact, Page, Part } from "@/components/page";
import { daysFrom, type Group, groupsOf, poursToCome, poursToLog } from "./groups";
import { MoreLink } from "./MoreLink";
import { NeedRows } from "./NeedRows";
import { PourSlips } from "./PourSlips";
import { type Need, useNeeds } from "./queries";
import classes from "./today.module.css";
import { WeekStrip } from "./WeekStrip";

function counted(count: number, one: string, many: string): string {
  return count === 0 ? `no ${many}` : count === 1 ? `1 ${one}` : `${count} ${many}`;
}

interface Sorted {
  on: string;
  toLog: readonly Need[];
  toCome: readonly Need[];
  groups: readonly Group[];
}

function factsOf({ on, toLog, toCome, groups }: Sorted): Fact[] {
  const others = groups.reduce((sum, { rows }) => sum + rows.length, 0);
  return [
    { label: "Day", value: <Day value={on} /> },
    { label: "To log", value: counted(toLog.length, "pour", "pours") },
    { label: "To look at", value: counted(others, "thing", "things") },
    { label: "Next seven days", value: counted(toCome.length, "pour", "pours") },
  ];
}

/** Nothing is left to do: what comes next, if anything. */
function AllDone({ next }: { next: Need | undefined }) {
  return (
    <EmptyState title="Nothing needs a hand">
      {next ? (
        <>
          Next: {next.title}, <Day value={next.on} away />.
        </>
      ) : (
        "Pours to log, materials that run low and lots that near their use-by will be listed here."
      )}
    </EmptyState>
  );
}

/** The first page: what needs a hand, each row a tap away from the act that settles it. */
export function TodayPage() {
  const { on, rows } = useNeeds();
  const role = useSession().person?.role ?? "viewer";
  const toLog = poursToLog(rows);
  const toCome = poursToCome(rows);
  const groups = groupsOf(rows);
  const isCalm = toLog.length === 0 && groups.length === 0;
  return (
    <Page title="Today" facts={factsOf({ on, toLog, toCome, groups })}>
      <div className={classes.day} data-calm={groups.length === 0 || undefined}>
        <div className={classes.log}>
          {isCalm && <AllDone next={toCome[0]} />}
          {!isCalm && (
            <Part
              title="To log"
              aside={
                role !== "viewer" && <MoreLink to="/pours/new?happened=yes">A pour nobody planned</MoreLink>
              }
            >
              {toLog.length > 0 ? (
                <PourSlips pours={toLog} role={role} />
              ) : (
                <p className={classes.quiet}>Every pour up to now is logged.</p>
              )}
            </Part>
          )}
        </div>
        {groups.length > 0 && (
          <div className={classes.rest}>
            {groups.map(({ key, title, rows: found, more }) => (
              <Part key={key} title={title} aside={more && <MoreLink to={more.to}>{more.label}</MoreLink>}>
                <NeedRows label={title} rows={found} role={role} />
              </Part>
            ))}
          </div>
        )}
        <div className={classes.next}>
          <Part title="The next days" aside={<MoreLink to="/pours">All pours</MoreLink>}>
            <WeekStrip days={daysFrom(on, rows)} />
            {toCome.length > 0 ? (
              <NeedRows label="Pours of the next days" rows={toCome} role={role} most={7} />
            ) : (
              <p className={classes.quiet}>No pour is planned for the next seven days.</p>
            )}
          </Part>
        </div>
      </div>
    </Page>
  );
}
