import { type CSSProperties, useState } from "react";
import { Link } from "react-router";
import { asProblem } from "@/api/problem";
import { useMayRecord } from "@/api/session";
import { Pager, usePage } from "@/components/entry/Pager";
import { Day, Money, Quantity, useAlignment } from "@/components/figures";
import { Drawn } from "@/components/form";
import { EmptyState } from "@/components/notes/EmptyState";
import { ProblemNote } from "@/components/notes/ProblemNote";
import { LinesSkeleton } from "@/components/page";
import classes from "./inAndOut.module.css";
import { MOVEMENTS_SHOWN, type Movement, useMovements } from "./queries";
import { UndoPosting } from "./UndoPosting";
import { ACTS } from "./words";

/** What the shelf itself takes back; a delivery or a pour is undone on its own page. */
const UNDONE_HERE = new Set([
  "written_off",
  "returned",
  "given",
  "moved",
  "opened",
  "blended",
  "counted",
  "wasted",
]);

/** Room for so many places; what a count mends beyond that may stand out of line. */
const MOST_PLACES = 2;

function title({ kind, posting_kind, corrects }: Movement): string {
  const words = ACTS[kind];
  if (posting_kind === "reversed") return `${words}: undone, entry mistake`;
  if (posting_kind === "charged" && kind !== "charged") return `${words}: price changed`;
  return corrects === null ? words : `${words}: corrected`;
}

function Line({
  movement,
  showsLot,
  onUndo,
}: {
  movement: Movement;
  showsLot: boolean;
  onUndo?: () => void;
}) {
  const { lot, quantity, value, place, reason, by, cause } = movement;
  const words = title(movement);
  return (
    <li className={classes.line}>
      <Day value={movement.happened_on} />
      <span className={classes.what}>
        {cause !== null ? <Link to={`/pours/${cause}`}>{words}</Link> : <strong>{words}</strong>}
        <small>
          {showsLot && (
            <>
              <Link to={`/shelf/lots/${lot.id}`}>Lot {lot.number}</Link>
              {" · "}
            </>
          )}
          {place.name} · {by.name}
          {reason && ` · ${reason}`}
        </small>
      </span>
      <span className={classes.amount}>{quantity.amount !== "0" && <Quantity value={quantity} />}</span>
      {value !== undefined && (
        <span className={`${classes.amount} ${classes.money}`}>
          <Money value={value} />
        </span>
      )}
      {onUndo && (
        <button type="button" className={classes.undo} onClick={onUndo}>
          Undo<span className="only-read-aloud"> {words}</span>
        </button>
      )}
    </li>
  );
}

/** In and out of a lot or a material, the latest first; what was entered by mistake is undone from here. */
export function InAndOut({ lot, material }: { lot?: number; material?: number }) {
  const page = usePage("lines");
  const of = lot !== undefined ? { lot } : material !== undefined ? { material } : {};
  const { data, error, isPending, refetch } = useMovements(of, page);
  const mayRecord = useMayRecord();
  const [undoing, setUndoing] = useState<Movement | null>(null);
  const aligned = useAlignment(data?.results.map(({ quantity }) => quantity) ?? []) as Record<
    string,
    unknown
  >;
  const room = {
    ...aligned,
    "--places": Math.min(MOST_PLACES, Number(aligned["--places"])),
  } as CSSProperties;
  if (isPending) return <LinesSkeleton lines={5} />;
  if (error) return <ProblemNote problem={asProblem(error)} onRetry={() => void refetch()} />;
  const { results, count } = data;
  if (count === 0) return <EmptyState title="Nothing came in or went out yet" />;
  const takenBack = new Set(results.map(({ corrects }) => corrects));
  return (
    <>
      <ol
        className={classes.lines}
        style={room}
        data-money={results.some(({ value }) => value !== undefined)}
      >
        {results.map((movement) => {
          const mayUndo =
            mayRecord &&
            UNDONE_HERE.has(movement.posting_kind) &&
            movement.corrects === null &&
            !takenBack.has(movement.id);
          return (
            <Line
              key={movement.id}
              movement={movement}
              showsLot={material !== undefined}
              {...(mayUndo ? { onUndo: () => setUndoing(movement) } : {})}
            />
          );
        })}
      </ol>
      <Pager label="in and out" count={count} pageSize={MOVEMENTS_SHOWN} name="lines" />
      <Drawn
        title={undoing ? `Undo: ${title(undoing).toLowerCase()}` : ""}
        isOpen={undoing !== null}
        onClose={() => setUndoing(null)}
      >
        {undoing && <UndoPosting posting={undoing.posting} onDone={() => setUndoing(null)} />}
      </Drawn>
    </>
  );
}
