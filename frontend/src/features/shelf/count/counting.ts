import type { components } from "@/api/schema.gen";
import { type Said, UNSAID } from "@/components/entry/AmountField";
import { type Reading, readQuantity } from "@/components/entry/reading";
import { type Amount, converted } from "@/components/figures";
import { minus } from "../material/figures";
import type { LotRow } from "../queries";

/** What was typed for one lot: an amount, or that nothing is left. */
export interface Counted {
  said: Said;
  isNone: boolean;
  reason: string;
}

export const NOT_COUNTED: Counted = { said: UNSAID, isNone: false, reason: "" };

export type Counts = Record<string, Counted>;

/** What the book says lies of a lot at a place. */
export function bookAt(lot: LotRow, place: number): Amount {
  return (
    lot.places.find((there) => there.place === place)?.on_hand ?? {
      amount: "0",
      unit: lot.material.stock_unit,
    }
  );
}

function amountOf({ said, isNone }: Counted, unit: string): Amount | null {
  if (isNone) return { amount: "0", unit };
  if (said.body === undefined) return null;
  if (typeof said.body !== "string") return said.body;
  const reading: Reading = readQuantity(said.text, { ounces: "fl_oz" });
  return reading.kind === "amount" ? reading.quantity : null;
}

/** Counted less what the book says; null where the count is not said yet, or in a unit that only the server can turn. */
export function differenceTo(counted: Counted, book: Amount): Amount | null {
  const amount = amountOf(counted, book.unit);
  const inUnit = amount && converted(amount, book.unit);
  return inUnit ? minus(inUnit, book) : null;
}

export function isCounted({ said, isNone }: Counted): boolean {
  return isNone || said.body !== undefined;
}

/** The lots that were counted, in the order in which they are sent. */
export function countedLots(counts: Counts): number[] {
  return Object.keys(counts)
    .filter((lot) => isCounted(counts[lot] ?? NOT_COUNTED))
    .map(Number);
}

export function linesOf(
  counts: Counts,
  lots: readonly LotRow[],
): components["schemas"]["CountLineInRequest"][] {
  const units = new Map(lots.map(({ id, material }) => [id, material.stock_unit]));
  return countedLots(counts).map((lot) => {
    const { said, isNone, reason } = counts[String(lot)] ?? NOT_COUNTED;
    const quantity = isNone ? { amount: "0", unit: units.get(lot) ?? "each" } : (said.body ?? said.text);
    return { lot, quantity, ...(reason.trim() !== "" && { reason }) };
  });
}

/** The form's field for a pointer into the body: `lines.2.quantity` is that of the third lot that was counted. */
export function fieldOfLine(name: string, counted: readonly number[]): string {
  const match = /^lines\.(\d+)\.(lot|quantity|reason)/.exec(name);
  const lot = match && counted[Number(match[1])];
  if (!lot) return name;
  return `counts.${lot}.${match?.[2] === "reason" ? "reason" : "said"}`;
}
