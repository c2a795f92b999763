import { Link } from "react-router";
import { Day, Money } from "@/components/figures";
import { linesPage } from "@/components/figures/linesPage";
import { LotMarks, StatusMark } from "@/components/notes/StatusMark";
import { Amount, useAmountRoom } from "../Amount";
import classes from "../figures.module.css";
import type { ExpiringLot } from "../queries";

function inDays(days: number): string {
  return days === 1 ? "1 day" : `${days} days`;
}

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
          {lot.days_left < 0 ? (
            <StatusMark mark="stop">{`${inDays(-lot.days_left)} past`}</StatusMark>
          ) : (
            `${inDays(lot.days_left)} left`
          )}
          {" · "}lot {lot.number}
          {places && ` · ${places}`}
        </small>
        <LotMarks status={lot.status} isOpen={lot.opened_on !== null} />
      </span>
      <span className={classes.amount}>
        <Link to={linesPage(lot.movements)}>
          <Amount value={lot.on_hand} />
          <span className="only-read-aloud">, in and out of lot {lot.number}</span>
        </Link>
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
  const room = useAmountRoom(rows.map(({ on_hand }) => on_hand));
  return (
    <ol className={classes.lines} style={room} data-money={seesMoney} aria-label="Lots by use-by">
      {rows.map((lot) => (
        <Row key={lot.lot} lot={lot} seesMoney={seesMoney} />
      ))}
    </ol>
  );
}
