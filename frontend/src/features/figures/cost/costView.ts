import type { CostAsked } from "../queries";

export type GroupBy = NonNullable<CostAsked["group_by"]>;

export const GROUPINGS = [
  ["", "Month"],
  ["job", "Job"],
  ["piece", "Top"],
  ["customer", "Customer"],
  ["material_kind", "Kind of material"],
] as const;

export const STATES = [
  ["", "Finished"],
  ["unfinished", "Not finished"],
  ["all", "Both"],
] as const;

export const PURPOSES = [
  ["", "Customers' work"],
  ["sample", "Samples"],
  ["class", "Classes"],
  ["trial", "Trials"],
  ["all", "Everything"],
] as const;

/** The head over the rows, by how they are grouped. */
export const PART_TITLES: Record<GroupBy, string> = {
  month: "Month by month",
  job: "Job by job",
  piece: "Top by top",
  customer: "Customer by customer",
  material_kind: "Kind by kind",
};

const DAY = /^\d{4}-\d{2}-\d{2}$/;

function oneOf<T extends string>(
  said: string | null,
  choices: readonly (readonly [string, string])[],
  usual: T,
): T {
  return said && choices.some(([value]) => value === said) ? (said as T) : usual;
}

function dayIn(params: URLSearchParams, name: string): string | undefined {
  const said = params.get(name) ?? "";
  return DAY.test(said) ? said : undefined;
}

/** What the page's address asks for: finished customer work by month, where it says nothing else. */
export function costView(
  params: URLSearchParams,
): Required<Pick<CostAsked, "group_by" | "purpose" | "state">> & Pick<CostAsked, "from" | "to"> {
  const from = dayIn(params, "from");
  const to = dayIn(params, "to");
  return {
    group_by: oneOf<GroupBy>(params.get("group_by"), GROUPINGS, "month"),
    purpose: oneOf<NonNullable<CostAsked["purpose"]>>(params.get("purpose"), PURPOSES, "customer"),
    state: oneOf<NonNullable<CostAsked["state"]>>(params.get("state"), STATES, "finished"),
    ...(from && { from }),
    ...(to && { to }),
  };
}
