import type { components } from "@/api/schema.gen";

type Schemas = components["schemas"];
export type Purpose = Schemas["PurposeEnum"];
export type AreaSource = Schemas["AreaSourceEnum"];

export const PURPOSES: readonly (readonly [value: Purpose, label: string])[] = [
  ["customer", "Customer work"],
  ["sample", "Sample board"],
  ["class", "Class"],
  ["trial", "Trial"],
];

export function purposeLabel(purpose: string): string {
  return PURPOSES.find(([value]) => value === purpose)?.[1] ?? purpose;
}

export const STATES = [
  ["", "All"],
  ["unfinished", "Under way"],
  ["finished", "Finished"],
  ["handed_over", "Handed over"],
] as const;

export type JobState = Exclude<(typeof STATES)[number][0], "">;

export const AREA_SOURCES: readonly (readonly [value: AreaSource, label: string])[] = [
  ["quoted", "Quoted"],
  ["templated", "Templated"],
  ["final", "Final"],
];

export function areaSourceLabel(source: string): string {
  return AREA_SOURCES.find(([value]) => value === source)?.[1] ?? source;
}
