import type { components } from "@/api/schema.gen";

type Schemas = components["schemas"];
export type Coat = Schemas["LayerEnum"];
export type PourStatus = Schemas["PourStatus"];

/** The coats, in the order in which they are laid. */
export const COATS: readonly (readonly [value: Coat, label: string])[] = [
  ["primer", "Primer"],
  ["base_coat", "Base coat"],
  ["seal_coat", "Seal coat"],
  ["flood_coat", "Flood coat"],
  ["accent", "Accent"],
  ["top_coat", "Top coat"],
  ["touch_up", "Touch-up"],
  ["repair", "Repair"],
];

export function coatLabel(coat: string): string {
  return COATS.find(([value]) => value === coat)?.[1] ?? coat;
}

export const STATUSES: readonly (readonly [value: PourStatus, label: string])[] = [
  ["planned", "Planned"],
  ["completed", "Poured"],
  ["reversed", "Undone, entry mistake"],
  ["cancelled", "Called off"],
];

export function statusLabel(status: string): string {
  return STATUSES.find(([value]) => value === status)?.[1] ?? status;
}

interface PouredTop {
  name: string;
  job: number;
  job_title: string;
}

/** The tops under a pour as people say them: "Vanity 1, Vanity 2"; many are counted. */
export function topsInWords(pieces: readonly PouredTop[]): string {
  const names = pieces.map(({ name }) => name);
  return names.length > 3 ? `${names.slice(0, 2).join(", ")} and ${names.length - 2} more` : names.join(", ");
}

/** The jobs that a pour belongs to, each once. */
export function jobsUnder<T extends { job: number }>(pieces: readonly T[]): T[] {
  const seen = new Set<number>();
  return pieces.filter(({ job }) => !seen.has(job) && seen.add(job));
}
