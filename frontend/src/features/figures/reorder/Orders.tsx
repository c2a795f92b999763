import { Money } from "@/components/figures";
import { EmptyState } from "@/components/notes/EmptyState";
import classes from "../figures.module.css";
import type { Reorder } from "../queries";
import own from "./reorder.module.css";

/** What is suggested from each supplier, each pack once. */
export function Orders({ orders, seesMoney }: { orders: Reorder["orders"]; seesMoney: boolean }) {
  if (orders.length === 0) {
    return (
      <EmptyState title="Nothing to order now">Every material stands above its reorder point.</EmptyState>
    );
  }
  return (
    <ul className={classes.plain} aria-label="To order, by supplier">
      {orders.map(({ supplier, name, packs }) => (
        <li key={supplier} className={own.order}>
          <strong>{name}</strong>
          <ul className={classes.plain}>
            {packs.map(({ pack, name: packName, count, price }) => (
              <li key={pack}>
                <span>
                  {count} × {packName}
                </span>
                {seesMoney && <Money value={price} per="each" />}
              </li>
            ))}
          </ul>
        </li>
      ))}
    </ul>
  );
}
