import { toScale } from "@/components/figures/decimal";
import type { BalanceRow } from "../queries";
import { sumOf } from "../sums";

export const CAME = [
  ["received", "Came in"],
  ["charged", "Price changed later"],
  ["opened_in", "Opened from another lot"],
  ["blended_in", "Mixed in"],
  ["counted_up", "Counted up"],
] as const;

export const WENT = [
  ["used", "Went into pours"],
  ["wasted", "Wasted"],
  ["written_off", "Written off"],
  ["counted_off", "Counted off"],
  ["returned", "Returned"],
  ["given", "Given away or sold"],
  ["opened_on", "Opened into another lot"],
  ["blended_on", "Mixed into another lot"],
] as const;

/** The balance of a lot or material, or the sum of several. */
export type Balance = Pick<BalanceRow, "figures" | "difference">;
type Figure = BalanceRow["difference"];

export interface LedgerLine {
  key: string;
  label: string;
  sign: "start" | "in" | "out" | "rest";
  figure: Figure;
  /** Where its bar begins and how long it is, of the most that was ever there: 0 to 1. */
  from: number;
  length: number;
}

function isNothing({ quantity, value }: Figure): boolean {
  return toScale(quantity?.amount ?? "0") === 0 && toScale(value ?? "0") === 0;
}

/**
 * The balance as lines of a ledger: what was there, what came, what went, what is here. Each bar hangs where the one before
 * ended, so that the last closes the drawing. Lines of nothing are left out.
 */
export function ledgerOf(row: Balance): LedgerLine[] {
  const of = (name: string): Figure => row.figures[name] ?? { quantity: null, value: "0", movements: null };
  const size = (figure: Figure) => toScale(figure.quantity?.amount ?? figure.value ?? "0");
  const named = [
    { key: "opening", label: "Was there before", sign: "start" as const },
    ...CAME.map(([key, label]) => ({ key, label, sign: "in" as const })),
    ...WENT.map(([key, label]) => ({ key, label, sign: "out" as const })),
    { key: "on_hand", label: "Is here", sign: "rest" as const },
  ].map((line) => ({ ...line, figure: of(line.key) }));
  const most = named.reduce(
    (sum, { sign, figure }) => (sign === "start" || sign === "in" ? sum + size(figure) : sum),
    0,
  );
  let level = 0;
  return named.flatMap(({ sign, figure, ...line }) => {
    const part = size(figure);
    if (sign === "start" || sign === "in") level += part;
    else if (sign === "out") level -= part;
    if (sign !== "rest" && isNothing(figure)) return [];
    const low = sign === "start" || sign === "in" ? level - part : sign === "out" ? level : 0;
    const share = (amount: number) => (most > 0 ? Math.min(1, Math.max(0, amount / most)) : 0);
    return [{ ...line, sign, figure, from: share(low), length: share(part) }];
  });
}

/** What came in and what went, each as one sum; null where the units differ. */
export function sidesOf(row: Balance) {
  const sum = (names: readonly string[]) => {
    const parts = names.map((name) => row.figures[name]?.quantity ?? null);
    const unit = parts.find((part) => part !== null)?.unit;
    return unit ? { amount: sumOf(parts.map((part) => part?.amount)), unit } : null;
  };
  return {
    came: sum(["opening", ...CAME.map(([name]) => name)]),
    went: sum(WENT.map(([name]) => name)),
    here: row.figures.on_hand?.quantity ?? null,
  };
}

/** Whether the book adds up: nothing is left between what came, what went and what is here. */
export function addsUp({ difference }: Balance): boolean {
  return isNothing(difference);
}
