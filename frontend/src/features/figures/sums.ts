import { fraction, fromDecimal, plus, toDecimal } from "@/components/figures/fraction";

/** The exact sum of decimal texts. */
export function sumOf(amounts: readonly (string | null | undefined)[]): string {
  const total = amounts.reduce(
    (sum, amount) => plus(sum, fromDecimal(amount ?? "0") ?? fraction(0n)),
    fraction(0n),
  );
  return toDecimal(total);
}

/** One decimal text over another, to four places; null where nothing can be divided. */
export function ratioOf(above: string, below: string): string | null {
  const [top, bottom] = [fromDecimal(above), fromDecimal(below)];
  if (!top || !bottom || bottom.n === 0n) return null;
  return toDecimal(fraction(top.n * bottom.d, top.d * bottom.n), 4);
}
