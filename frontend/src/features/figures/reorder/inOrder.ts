import { daysBetween } from "@/components/figures";
import type { ReorderRow } from "../queries";

/** Those below their reorder point first, then by the day on which they run out; what never runs out comes last. */
export function inOrder(rows: readonly ReorderRow[]): ReorderRow[] {
  const key = ({ is_below, runs_out_on }: ReorderRow) => `${is_below ? 0 : 1} ${runs_out_on ?? "9999"}`;
  return [...rows].sort((a, b) => key(a).localeCompare(key(b)));
}

/** Materials that run out within so many days, as they are used now. */
export function runOutWithin(rows: readonly ReorderRow[], on: string, days: number): ReorderRow[] {
  return rows.filter(({ runs_out_on }) => runs_out_on !== null && daysBetween(on, runs_out_on) <= days);
}
