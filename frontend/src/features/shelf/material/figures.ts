import { type Fraction, fraction, fromDecimal, plus, toDecimal } from "@/components/figures/fraction";
import type { LotRow } from "../queries";

interface Amounted {
  amount: string;
  unit: string;
}

const NOTHING: Fraction = fraction(0n);

/** The exact sum of amounts in one unit. */
export function sumOf(amounts: readonly Amounted[], unit: string): Amounted {
  const sum = amounts.reduce((all, { amount }) => plus(all, fromDecimal(amount) ?? NOTHING), NOTHING);
  return { amount: toDecimal(sum), unit };
}

export function minus(a: Amounted, b: Amounted): Amounted {
  const less = fromDecimal(b.amount) ?? NOTHING;
  return {
    amount: toDecimal(plus(fromDecimal(a.amount) ?? NOTHING, { n: -less.n, d: less.d })),
    unit: a.unit,
  };
}

/** Why a lot cannot be used today; null where it can. */
export function whyNotUsable(lot: LotRow): string | null {
  if (lot.is_usable) return null;
  if (lot.status === "rejected") return "rejected";
  if (lot.status === "on_hold") return "on hold";
  return "past its use-by";
}
