import { Money, Quantity, useAlignment } from "@/components/figures";
import type { Lot } from "../queries";
import classes from "./lot.module.css";

/** How much of a lot lies at each place, and what it is worth there. */
export function WhereItLies({ lot }: { lot: Lot }) {
  const room = useAlignment(lot.places.map(({ on_hand }) => on_hand));
  if (lot.places.length === 0) return <p className="soft">Nothing of it is left.</p>;
  return (
    <ul className={classes.places} style={room}>
      {lot.places.map(({ place, name, on_hand, value }) => (
        <li key={place}>
          <span>{name}</span>
          <Quantity value={on_hand} />
          {value !== undefined && <Money value={value} />}
        </li>
      ))}
    </ul>
  );
}
