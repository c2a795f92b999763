import { Link } from "react-router";
import { Day, Money } from "@/components/figures";
import { Swatch } from "@/components/notes/Swatch";
import { Amount, useAmountRoom } from "../Amount";
import classes from "../figures.module.css";
import type { Movement } from "../queries";
import { LINES } from "../words";

/** What a line says, with how it stands to an earlier one. */
export function lineTitle({ kind, posting_kind, corrects }: Movement): string {
  const words = LINES[kind];
  if (posting_kind === "reversed") return `${words}: undone, entry mistake`;
  if (posting_kind === "charged" && kind !== "charged") return `${words}: price changed`;
  return corrects === null ? words : `${words}: corrected`;
}

function Line({ movement, seesMoney }: { movement: Movement; seesMoney: boolean }) {
  const { lot, material, quantity, value, place, reason, by, cause } = movement;
  const title = lineTitle(movement);
  return (
    <li className={classes.line}>
      <Day value={movement.happened_on} />
      <span className={classes.lineWhat}>
        <Link to={`/shelf/lots/${lot.id}`}>
          <Swatch colour={material.swatch} /> {material.name}, lot {lot.number}
        </Link>
        <small>
          {cause === null ? title : <Link to={`/pours/${cause}`}>{title}</Link>} · {place.name} · {by.name}
          {reason && ` · ${reason}`}
        </small>
      </span>
      <span className={classes.amount}>{quantity.amount !== "0" && <Amount value={quantity} />}</span>
      {seesMoney && (
        <span className={classes.amount}>
          <Money value={value} />
        </span>
      )}
    </li>
  );
}

export function MovementLines({ rows, seesMoney }: { rows: readonly Movement[]; seesMoney: boolean }) {
  const room = useAmountRoom(rows.map(({ quantity }) => quantity));
  return (
    <ol className={classes.lines} style={room} data-money={seesMoney} aria-label="In and out">
      {rows.map((movement) => (
        <Line key={movement.id} movement={movement} seesMoney={seesMoney} />
      ))}
    </ol>
  );
}
