import { asPreferred, converted } from "@/components/figures";
import { fromDecimal, times, toDecimal } from "@/components/figures/fraction";
import type { PreferredUnits } from "@/components/figures/units";

/** What one of the shop's preferred unit costs, from what one of the stock unit costs; to the millionth. */
export function costEach(
  unitCost: string,
  stockUnit: string,
  preferred: PreferredUnits,
): { cost: string; unit: string } {
  const { unit } = asPreferred({ amount: "1", unit: stockUnit }, preferred);
  const size = fromDecimal(converted({ amount: "1", unit }, stockUnit)?.amount ?? "1");
  const cost = fromDecimal(unitCost);
  return { cost: size && cost ? toDecimal(times(size, cost)) : unitCost, unit };
}
