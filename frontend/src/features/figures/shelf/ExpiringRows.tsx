import { Link } from "react-router";
import { Day, Money, Quantity, useAlignment } from "@/components/figures";
import { linesPage } from "@/components/figures/linesPage";
import { LotMarks } from "@/components/notes/StatusMark";
import classes from "../figures.module.css";
import type { ExpiringLot } from "../queries";

function Row({ lot, seesMoney }: { lot: ExpiringLot; seesMoney: boolean }) {
  const places = lot.places.map(({ place }) => place).join(", ");
  return (
    <li className={classes.line}>
      <Day value={lot.use_by} />
      <span className={classes.lineWhat}>
        <Link to={`/shelf/lots/${lot.lot}`}>
          {lot.material.name}, {lot.lot_number}
        </Link>
        <small>
          {lot.days_left < 0 ? `${-lot.days_left} days past` : `${lot.days_left} days left`} · lot{" "}
          {lot.number}
          {places && ` · ${places}`} · <Link to={linesPage(lot.movements)}>in and out</Link>
        </small>
        <LotMarks status={lot.status} isExpired={lot.is_expired} isOpen={lot.opened_on !== null} />
      </span>
      <span className={classes.amount}>
        <Quantity value={lot.on_hand} />
      </span>
      {seesMoney && (
        <span className={classes.amount}>
          <Money value={lot.value} />
        </span>
      )}
    </li>
  );
}

export function ExpiringRows({ rows, seesMoney }: { rows: readonly ExpiringLot[]; seesMoney: boolean }) {
  const room = useAlignment(rows.map(({ on_hand }) => on_hand));
  return (
    <ol className={classes.lines} style={room} data-money={seesMoney} aria-label="Lots by use-by">
      {rows.map((lot) => (
        <Row key={lot.lot} lot={lot} seesMoney={seesMoney} />
      ))}
    </ol>
  );
}
