import { toScale } from "@/components/figures/decimal";
import type { ReorderRow } from "../queries";
import own from "./reorder.module.css";

/** Where the parts of the drawing lie, in percent of its length. */
export function barOf(row: Pick<ReorderRow, "available" | "on_order" | "reserved" | "reorder_point">) {
  const available = Math.max(0, toScale(row.available.amount));
  const onOrder = toScale(row.on_order.amount);
  const reserved = toScale(row.reserved.amount);
  const point = row.reorder_point ? toScale(row.reorder_point.amount) : null;
  const whole = Math.max(available + onOrder + reserved, (point ?? 0) * 1.25) || 1;
  const percent = (part: number) => (part / whole) * 100;
  return {
    available: percent(available),
    onOrder: percent(onOrder),
    reserved: percent(reserved),
    point: point === null ? null : percent(point),
  };
}

/** A shelf seen from the side: what is to be had, what comes, what is set aside, and the line below which one orders. */
export function PointBar({ row }: { row: ReorderRow }) {
  const { available, onOrder, reserved, point } = barOf(row);
  return (
    <span className={own.pointBar} aria-hidden="true" data-below={row.is_below || undefined}>
      <span style={{ width: `${available}%` }} data-part="available" />
      <span style={{ width: `${onOrder}%` }} data-part="coming" />
      <span style={{ width: `${reserved}%` }} data-part="reserved" />
      {point !== null && <i style={{ left: `${point}%` }} />}
    </span>
  );
}

/** What the parts of the bars stand for. */
export function BarKey() {
  return (
    <ul className={own.barKey} aria-label="What is drawn how">
      <li>
        <span data-part="available" /> To be had
      </li>
      <li>
        <span data-part="reserved" /> Set aside
      </li>
      <li>
        <i /> Reorder point
      </li>
    </ul>
  );
}
