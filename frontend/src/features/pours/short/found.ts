import type { Said } from "@/components/entry/AmountField";
import type { FoundBody } from "../queries";

/** More of a lot than the book said, as a form keeps it. */
export type Found = {
  lot: number;
  /** What the lot is called on the page. */
  name: string;
  quantity: Said;
  reason: string;
};

export function foundBody({ lot, quantity, reason }: Found): FoundBody {
  return { lot, quantity: quantity.body ?? quantity.text, reason: reason.trim() };
}
