import { Day, Quantity } from "@/components/figures";
import { StatusMark } from "@/components/notes/StatusMark";
import type { Line } from "../lines/line";
import classes from "../pours.module.css";
import { type Pour, type Proposal, useLotsOf } from "../queries";

/** The lot that somebody named. */
function NamedLot({ line }: { line: Line }) {
  const [lot, place] = line.lot.split("@").map(Number);
  const found = useLotsOf(line.material).find(({ id }) => id === lot);
  const at = found?.places.find((each) => each.place === place);
  return (
    <>
      from lot {found ? `${found.number} (${found.lot_number})` : lot}
      {at && `, ${at.name}`}
    </>
  );
}

/** From which lots a line will be taken, as things stand on the shelf now. */
export function FromLots({ line, pour }: { line: Line; pour: Pour }) {
  if (line.lot !== "") return <NamedLot line={line} />;
  const position = /^planned (\d+)$/.exec(line.key)?.[1];
  const { takings = [], shortages = [] } = pour.proposal ?? {};
  if (position === undefined) return <>from where the shelf decides</>;
  const own = takings.filter((taking) => taking.position === Number(position));
  const lack = shortages.find(({ material }) => material === line.material);
  return (
    <>
      {own.map((taking, i) => (
        <span key={`${taking.lot} ${taking.place}`}>
          {i > 0 && ", then "}
          {i === 0 && "from "}lot {taking.number} ({taking.lot_number})
          {taking.use_by && i === 0 && own.length === 1 && (
            <>
              , use by <Day value={taking.use_by} />
            </>
          )}
        </span>
      ))}
      {lack && (
        <span className={classes.short}>
          {own.length > 0 && "; "}
          <Quantity value={lack.missing} /> short
        </span>
      )}
    </>
  );
}

/** What the shelf says of the plan as a whole. Nothing where all is there. */
export function ProposalNote({ proposal }: { proposal: Proposal | null }) {
  if (!proposal || (proposal.problem === "" && proposal.shortages.length === 0)) return null;
  return (
    <p className={classes.hint} role="note">
      <StatusMark mark="look">Look here</StatusMark>{" "}
      {proposal.problem || "The book is short of what is planned."} It can be recorded all the same:
      completing it asks where the rest came from.
    </p>
  );
}
