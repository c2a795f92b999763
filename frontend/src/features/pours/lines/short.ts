import type { Problem, Remedy } from "@/api/problem";
import type { Said } from "@/components/entry/AmountField";
import { type Amount, converted, unitShown } from "@/components/figures";
import { worthShowing } from "@/components/figures/decimal";
import { freshLine, type Line, lessOf } from "./line";

/** What an amount lacks, as the refusal says it. */
export interface Shortage {
  material: number;
  name: string;
  wanted: Amount;
  there: Amount;
  missing: Amount;
}

function isAmount(value: unknown): value is Amount {
  return (
    typeof value === "object" &&
    value !== null &&
    typeof (value as Amount).amount === "string" &&
    typeof (value as Amount).unit === "string"
  );
}

/** The shortages of a refusal; none for a refusal of another kind. */
export function shortagesOf(problem: Problem | null): Shortage[] {
  const rows = problem?.extra.shortages;
  if (!Array.isArray(rows)) return [];
  return rows.filter(
    (row: Partial<Shortage> | null): row is Shortage =>
      typeof row?.material === "number" &&
      isAmount(row.wanted) &&
      isAmount(row.there) &&
      isAmount(row.missing),
  );
}

export interface LotRemedy {
  material: number;
  lot: number;
  place: number;
  quantity: Amount;
}

/** The lot that a remedy names, where it names one. */
export function lotIn(remedy: Remedy): LotRemedy | null {
  const { material, lot, place, quantity } = remedy;
  return typeof material === "number" &&
    typeof lot === "number" &&
    typeof place === "number" &&
    isAmount(quantity)
    ? { material, lot, place, quantity }
    : null;
}

/** An exact amount, shown in the unit in which the line was said. */
function shown(amount: Amount, like: Line): Said {
  const unit = typeof like.quantity.body === "object" ? like.quantity.body.unit : amount.unit;
  const read = converted(amount, unit) ?? amount;
  return { text: `${worthShowing(read.amount)} ${unitShown(read.unit)}`, body: amount };
}

/**
 * Takes what is missing from another lot: the line that lacks it is cut to what is there, and a line from the named lot
 * stands under it. Where nothing was there, the whole line is from the named lot.
 */
export function takeFromLot(
  lines: readonly Line[],
  { material, lot, place, quantity }: LotRemedy,
  shortage: Shortage,
  row?: number,
): Line[] {
  const at = row ?? lines.findIndex((line) => line.material === material && !line.is_waste);
  const line = lines[at];
  if (!line) return [...lines];
  const named = `${lot}@${place}`;
  const rest = lessOf(shortage.wanted, shortage.missing);
  if (!rest || Number(shortage.there.amount) === 0) {
    return lines.map((each, i) => (i === at ? { ...each, lot: named, is_lot_touched: true } : each));
  }
  const gives = Number(quantity.amount) < Number(shortage.missing.amount) ? quantity : shortage.missing;
  const cut = lessOf(shortage.wanted, gives) ?? rest;
  const second: Line = {
    ...freshLine(material),
    quantity: shown(gives, line),
    lot: named,
    bucket: line.bucket,
    is_waste: line.is_waste,
    is_lot_touched: true,
  };
  const first: Line = { ...line, quantity: shown(cut, line), weighed: null };
  return [...lines.slice(0, at), first, second, ...lines.slice(at + 1)];
}
