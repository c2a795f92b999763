import { Link } from "react-router";
import { Quantity, useAlignment } from "@/components/figures";
import { StatusMark } from "@/components/notes/StatusMark";
import { Swatch } from "@/components/notes/Swatch";
import { shapeFor } from "@/components/vessel/shapes";
import { Vessel } from "@/components/vessel/Vessel";
import type { LotRow } from "./queries";
import classes from "./shelf.module.css";
import { type Board, heldCount, lotName, type Standing, useByAlert } from "./shelfView";

/** Most containers drawn side by side; the material's page shows the rest. */
const DRAWN = 5;

function Container({ lot, isFound }: { lot: LotRow; isFound: boolean }) {
  return (
    <li data-found={isFound || undefined}>
      <Link to={`/shelf/lots/${lot.id}`}>
        <Vessel
          name={`${lotName(lot)}, ${lot.material.name}`}
          shape={shapeFor(lot.material.kind)}
          level={Number(lot.fill)}
          colour={lot.material.swatch || null}
          status={lot.status}
          isOpen={lot.opened_on !== null}
          isExpired={lot.is_expired}
          useBy={lot.use_by}
          count={lot.containers}
          size="row"
        />
        <span aria-hidden="true">{lot.number}</span>
      </Link>
    </li>
  );
}

function Marks({ standing: { lots, row }, isBelow }: { standing: Standing; isBelow: boolean }) {
  const alert = useByAlert(lots);
  const held = heldCount(lots);
  return (
    <span className={classes.marks}>
      {isBelow && <StatusMark mark="look">Below reorder point</StatusMark>}
      {alert && <StatusMark mark={alert.mark}>{alert.text}</StatusMark>}
      {held > 0 && <StatusMark mark="look">{held === 1 ? "1 on hold" : `${held} on hold`}</StatusMark>}
      {row.is_provisional && <StatusMark mark="quiet">Price to follow</StatusMark>}
    </span>
  );
}

function MaterialOnShelf({ standing, isBelow }: { standing: Standing; isBelow: boolean }) {
  const { row, lots, found } = standing;
  const { material } = row;
  const shown = found.size > 0 ? lots.filter(({ id }) => found.has(id)) : lots;
  const more = shown.length - DRAWN;
  const to = `/shelf/materials/${material.id}`;
  return (
    <li className={classes.material}>
      <ul className={classes.containers} aria-label={`Lots of ${material.name}`}>
        {shown.slice(0, DRAWN).map((lot) => (
          <Container key={lot.id} lot={lot} isFound={found.has(lot.id)} />
        ))}
        {more > 0 && (
          <li className={classes.more}>
            <Link to={to}>
              {more} more<span className="only-read-aloud"> lots of {material.name}</span>
            </Link>
          </li>
        )}
        {lots.length === 0 && <li className={classes.none}>none left</li>}
      </ul>
      <div className={classes.label}>
        <Link to={to} className={classes.name}>
          <Swatch colour={material.swatch} /> <span>{material.name}</span>
        </Link>
        <div className={classes.left}>
          <Quantity value={row.available} />
          <small>
            {row.available.amount === row.on_hand.amount ? "all free" : <Rest standing={standing} />}
          </small>
        </div>
        <Marks standing={standing} isBelow={isBelow} />
      </div>
    </li>
  );
}

function Rest({ standing: { row } }: { standing: Standing }) {
  return (
    <>
      free of <Quantity value={row.on_hand} />
    </>
  );
}

/** One shelf: its materials stand on it side by side. */
export function ShelfBoard({ board, below }: { board: Board; below: ReadonlySet<number> }) {
  const room = useAlignment(board.materials.map(({ row }) => row.available));
  return (
    <section aria-label={board.title}>
      <h2 className={classes.boardTitle}>{board.title}</h2>
      <ul className={classes.board} style={room}>
        {board.materials.map((standing) => (
          <MaterialOnShelf
            key={standing.row.material.id}
            standing={standing}
            isBelow={below.has(standing.row.material.id)}
          />
        ))}
      </ul>
    </section>
  );
}
