import { type Amount, converted } from "@/components/figures";
import { fraction, fromDecimal, plus, toDecimal } from "@/components/figures/fraction";
import type { Planned, Usage } from "../queries";

/** One material of a pour: what was planned, what went in, and from which lots. */
export interface WentIn {
  material: number;
  name: string;
  planned: Amount | null;
  used: Amount | null;
  /** Used less planned; null where one of them is missing. */
  difference: string | null;
  usages: Usage[];
}

function sum(amounts: readonly Amount[]): Amount | null {
  const [first] = amounts;
  if (!first) return null;
  const total = amounts.reduce((all, each) => {
    const known = fromDecimal(converted(each, first.unit)?.amount ?? "");
    return known ? plus(all, known) : all;
  }, fraction(0n));
  return { amount: toDecimal(total), unit: first.unit };
}

/** Planned beside used, a row for each material in the order of the plan; what nobody planned comes after. */
export function whatWentIn(planned: readonly Planned[], usages: readonly Usage[]): WentIn[] {
  const order = [...planned, ...usages];
  return [...new Set(order.map(({ material }) => material))].map((material) => {
    const own = usages.filter((row) => row.material === material);
    const plan = sum(planned.filter((row) => row.material === material).map(({ quantity }) => quantity));
    const used = sum(own.map(({ quantity }) => quantity));
    const [a, b] = [used && fromDecimal(used.amount), plan && fromDecimal(plan.amount)];
    return {
      material,
      name: order.find((row) => row.material === material)?.material_name ?? "",
      planned: plan,
      used,
      difference: a && b ? toDecimal(plus(a, fraction(-b.n, b.d))) : null,
      usages: own,
    };
  });
}
