import { Link } from "react-router";
import { Quantity, useAlignment } from "@/components/figures";
import type { Pour } from "../queries";
import classes from "./done.module.css";

/** What was booked once and went back into its lots: by a correction, or as the pour was undone. */
export function TakenBack({ pour }: { pour: Pour }) {
  const rows = pour.taken_back;
  const room = useAlignment(rows.map(({ quantity }) => quantity));
  if (rows.length === 0) return null;
  return (
    <details className={classes.back}>
      <summary>Taken back into its lots: {rows.length === 1 ? "1 amount" : `${rows.length} amounts`}</summary>
      <ul className={classes.lots} style={room}>
        {rows.map(({ id, lot, number, material_name, quantity }) => (
          <li key={id} className={classes.lot}>
            <span>
              {material_name} <Link to={`/shelf/lots/${lot}`}>Lot {number}</Link>
            </span>
            <span className={classes.fromLot}>
              <Quantity value={quantity} />
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}
