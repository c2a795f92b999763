import { Link } from "react-router";
import { Day, Quantity } from "@/components/figures";
import { linesPage } from "@/components/figures/linesPage";
import { StatusMark } from "@/components/notes/StatusMark";
import { Reckoning, Why } from "@/components/notes/Why";
import classes from "../figures.module.css";
import type { ReorderRow } from "../queries";
import { PointBar } from "./PointBar";
import own from "./reorder.module.css";

/** Why the reorder point lies where it does: in words, then as the sum on paper. */
function Because({ row }: { row: ReorderRow }) {
  const { why, reorder_point: point, daily_usage: use } = row;
  const unit = use.unit;
  return (
    <>
      {why && <p className={own.words}>{why.in_words}</p>}
      <Reckoning
        lines={[
          { label: "On hand", figure: <Quantity value={row.on_hand} /> },
          { label: "Usable today", figure: <Quantity value={row.usable} /> },
          { label: "Set aside for planned pours", figure: <Quantity value={row.reserved} /> },
        ]}
        total={{ label: "To be had", figure: <Quantity value={row.position} /> }}
      />
      {why && (
        <Reckoning
          lines={[
            { label: "Use per day", figure: <Quantity value={use} />, note: `mean of ${why.days} days` },
            {
              label: `${why.lead_time_days} days until it is here`,
              figure: <Quantity value={{ amount: why.use_during_lead_time, unit }} />,
            },
            {
              label: "Kept ready for ups and downs",
              figure: <Quantity value={row.safety_stock} />,
              note: "so as not to run out in 19 of 20 times",
            },
          ]}
          total={{ label: "Reorder point", figure: <Quantity value={point} /> }}
        />
      )}
      <p className={classes.ways}>
        <Link to={linesPage(row.usage_movements)}>The use behind it</Link>
        <Link to={linesPage(row.movements)}>All in and out</Link>
        <Link to={`/shelf/materials/${row.material.id}`}>The material</Link>
      </p>
    </>
  );
}

function Suggested({ row }: { row: ReorderRow }) {
  if (!row.is_below) return null;
  if (row.packs.length === 0) {
    return (
      <>
        Missing <Quantity value={row.missing} />
      </>
    );
  }
  return <>Order {row.packs.map(({ count, name }) => `${count} × ${name}`).join(", ")}</>;
}

/** One material: what is to be had drawn against its reorder point, the day it runs out, and what to buy. */
export function StockRow({ row }: { row: ReorderRow }) {
  return (
    <li className={own.stockRow}>
      <div className={own.stockHead}>
        <strong>{row.material.name}</strong>
        {row.is_below && <StatusMark mark="look">Below</StatusMark>}
        <span className="soft">
          {row.runs_out_on ? (
            <>
              Runs out <Day value={row.runs_out_on} away={row.is_below} />
            </>
          ) : (
            "Not used lately"
          )}
        </span>
      </div>
      <PointBar row={row} />
      {row.is_below && (
        <p className={own.suggested}>
          <Suggested row={row} />
        </p>
      )}
      {row.reason && <p className="soft">{row.reason}</p>}
      <Why
        figure={
          <span className={own.against}>
            <Quantity value={row.position} />
            {row.reorder_point && (
              <>
                <span className="soft"> against </span>
                <Quantity value={row.reorder_point} />
              </>
            )}
          </span>
        }
        label={`why ${row.material.name} stands there`}
      >
        <Because row={row} />
      </Why>
    </li>
  );
}
