import type { ReactNode } from "react";
import { Link } from "react-router";
import { Quantity } from "@/components/figures";
import { Reckoning, type ReckoningLine, Why } from "@/components/notes/Why";
import type { LotRow, ShelfRow } from "../queries";
import { lotName } from "../shelfView";
import { minus, sumOf, whyNotUsable } from "./figures";
import classes from "./material.module.css";

const lotLink = (lot: LotRow) => <Link to={`/shelf/lots/${lot.id}`}>{lotName(lot)}</Link>;

function Asked({
  name,
  figure,
  label,
  children,
}: {
  name: string;
  figure: ReactNode;
  label: string;
  children: ReactNode;
}) {
  return (
    <div className={classes.figure}>
      <h3>{name}</h3>
      <Why figure={figure} label={label}>
        {children}
      </Why>
    </div>
  );
}

function linesOf(lots: readonly LotRow[], amount: (lot: LotRow) => LotRow["on_hand"]): ReckoningLine[] {
  return lots.map((lot) => ({ label: lotLink(lot), figure: <Quantity value={amount(lot)} /> }));
}

/** On hand, usable, set aside and available: each opens into the lots that it is made of. */
export function StockFigures({ row, lots }: { row: ShelfRow; lots: readonly LotRow[] }) {
  const out = lots.filter((lot) => !lot.is_usable);
  const kept = lots.filter(({ reserved }) => reserved.amount !== "0");
  const anyLot = minus(
    row.reserved,
    sumOf(
      kept.map(({ reserved }) => reserved),
      row.reserved.unit,
    ),
  );
  return (
    <div className={classes.figures}>
      <Asked name="On hand" figure={<Quantity value={row.on_hand} />} label="which lots it is made of">
        <Reckoning
          lines={linesOf(lots, ({ on_hand }) => on_hand)}
          total={{ label: "On hand", figure: <Quantity value={row.on_hand} /> }}
        />
      </Asked>
      <Asked name="Usable today" figure={<Quantity value={row.usable} />} label="why not all of it is usable">
        <Reckoning
          lines={[
            { label: "On hand", figure: <Quantity value={row.on_hand} /> },
            ...out.map((lot) => ({
              label: lotLink(lot),
              figure: <Quantity value={minus({ amount: "0", unit: lot.on_hand.unit }, lot.on_hand)} />,
              note: whyNotUsable(lot) ?? "",
            })),
          ]}
          total={{ label: "Usable today", figure: <Quantity value={row.usable} /> }}
        />
      </Asked>
      <Asked name="Set aside" figure={<Quantity value={row.reserved} />} label="what it is set aside in">
        {row.reserved.amount === "0" ? (
          <p>No planned pour has asked for any.</p>
        ) : (
          <Reckoning
            lines={[
              ...linesOf(kept, ({ reserved }) => reserved),
              ...(anyLot.amount === "0"
                ? []
                : [{ label: "Of whichever lot", figure: <Quantity value={anyLot} /> }]),
            ]}
            total={{ label: "Set aside for planned pours", figure: <Quantity value={row.reserved} /> }}
          />
        )}
      </Asked>
      <Asked name="Available" figure={<Quantity value={row.available} />} label="how it is reckoned">
        <Reckoning
          lines={[
            { label: "Usable today", figure: <Quantity value={row.usable} /> },
            {
              label: "Set aside",
              figure: <Quantity value={minus({ amount: "0", unit: row.reserved.unit }, row.reserved)} />,
            },
          ]}
          total={{ label: "Available", figure: <Quantity value={row.available} /> }}
        />
      </Asked>
    </div>
  );
}
