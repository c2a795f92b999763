import { type Amount, converted } from "@/components/figures";
import { toScale, worthShowing } from "@/components/figures/decimal";
import type { Happened } from "../planned/account";
import type { Pour } from "../queries";

/** The words under which the left-over that went into the bin is booked. */
const BINNED = "Left over";

function volume(amount: Amount): number {
  return toScale(converted(amount, "ml")?.amount ?? "0");
}

/**
 * What was left over of a pour and thrown away, as far as its volume is still known, so that a correction does not lose
 * it: the sum of what is booked as left over.
 */
export function leftoverOf(pour: Pick<Pour, "usages">): Happened["leftover"] {
  const binned = pour.usages.filter(({ is_waste, reason }) => is_waste && reason === BINNED);
  const amount = worthShowing(binned.reduce((sum, { quantity }) => sum + volume(quantity), 0).toFixed(3));
  if (binned.length === 0 || Number(amount) === 0) return null;
  return { quantity: { text: `${amount} mL`, body: { amount, unit: "ml" } }, went_to: "bin" };
}
