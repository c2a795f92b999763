import type { ExpiringLot } from "../queries";
import { sumOf } from "../sums";

export interface Span {
  key: string;
  label: string;
  lots: number;
  value: string;
}

const ENDS = [
  { key: "past", label: "Past", last: -1 },
  { key: "week", label: "7 days", last: 7 },
  { key: "month", label: "30 days", last: 30 },
  { key: "two", label: "60 days", last: 60 },
  { key: "half", label: "180 days", last: 180 },
  { key: "year", label: "A year", last: 365 },
];

/** Lots by how soon they pass their use-by, up to the days that were asked for. */
export function useBySpans(rows: readonly ExpiringLot[], days: number): Span[] {
  return ENDS.flatMap(({ key, label, last }, i) => {
    const first = i === 0 ? Number.NEGATIVE_INFINITY : (ENDS[i - 1]?.last ?? 0) + 1;
    if (first > days) return [];
    const found = rows.filter(({ days_left }) => days_left >= first && days_left <= last);
    return [{ key, label, lots: found.length, value: sumOf(found.map(({ value }) => value)) }];
  });
}
