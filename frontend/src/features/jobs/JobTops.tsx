import { Link } from "react-router";
import { useMayRecord } from "@/api/session";
import { EmptyState } from "@/components/notes/EmptyState";
import { StatusMark } from "@/components/notes/StatusMark";
import { Outline } from "@/components/outline/Outline";
import { Part } from "@/components/page";
import { CoatStack, type LaidCoat } from "@/components/pours/CoatStack";
import classes from "./jobs.module.css";
import type { Job, Piece, PourRow } from "./queries";
import { Area } from "./top/TopPreview";
import { areaSourceLabel } from "./words";

/** The coats on a top, those that are only planned last. */
export function coatsOn(piece: number, pours: readonly PourRow[]): LaidCoat[] {
  const own = pours.filter(
    ({ status, pieces }) =>
      (status === "completed" || status === "planned") && pieces.some((under) => under.piece === piece),
  );
  return own
    .map(({ id, layer, status }) => ({ pour: id, coat: layer, isPoured: status === "completed" }))
    .sort((a, b) => Number(b.isPoured) - Number(a.isPoured));
}

function Top({ piece, pours }: { piece: Piece; pours: readonly PourRow[] }) {
  return (
    <li className={classes.top} data-scrapped={piece.is_scrapped || undefined}>
      <Outline top={piece.shape} name={piece.name} />
      <div className={classes.topLabel}>
        <Link to={`/tops/${piece.id}`}>{piece.name}</Link>
        <span>
          <Area sqft={piece.area_sqft} />
          <small>{areaSourceLabel(piece.area_source).toLowerCase()}</small>
        </span>
        {piece.is_scrapped && <StatusMark mark="stop">Scrapped</StatusMark>}
      </div>
      <CoatStack coats={coatsOn(piece.id, pours)} name={piece.name} />
    </li>
  );
}

/** The job's tops, each drawn to scale over a section through its coats. */
export function JobTops({ job, pours }: { job: Job; pours: readonly PourRow[] }) {
  const mayAdd = useMayRecord() && job.finished_on === null;
  return (
    <Part
      title="Tops"
      aside={
        mayAdd && (
          <Link to={`/jobs/${job.id}/tops/new`} className={classes.aside}>
            Add a top
          </Link>
        )
      }
    >
      {job.pieces.length === 0 ? (
        <EmptyState title="No top yet">A pour needs a top to go on.</EmptyState>
      ) : (
        <ul className={classes.tops} aria-label="Tops" data-one={job.pieces.length === 1 || undefined}>
          {job.pieces.map((piece) => (
            <Top key={piece.id} piece={piece} pours={pours} />
          ))}
        </ul>
      )}
    </Part>
  );
}
