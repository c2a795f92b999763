import type { components } from "@/api/schema.gen";

type Schemas = components["schemas"];

/** What went into a square foot, in the groups that a drawing can tell apart. */
export const KIND_GROUPS = [
  { key: "resin", label: "Resin", short: "Resin", kinds: ["resin"] },
  { key: "hardener", label: "Hardener", short: "Hardener", kinds: ["hardener"] },
  { key: "colour", label: "Colour", short: "Colour", kinds: ["dye", "paste", "powder", "spray_can"] },
  { key: "paint", label: "Paint", short: "Paint", kinds: ["paint"] },
  { key: "around", label: "Tape, cups, solvent", short: "Around", kinds: ["solvent", "consumable"] },
] as const;

const KINDS: Record<string, string> = {
  resin: "Resin",
  hardener: "Hardener",
  dye: "Dyes",
  paste: "Pastes",
  powder: "Powders",
  spray_can: "Spray cans",
  paint: "Paint",
  solvent: "Solvent",
  consumable: "Tape, cups, gloves",
};

export function kindLabel(kind: string): string {
  return KINDS[kind] ?? kind;
}

/** A line of in and out in the bench's words. */
export const LINES: Record<Schemas["ActKind"], string> = {
  received: "Came in",
  used: "Went into a pour",
  wasted: "Wasted",
  counted: "Counted",
  moved: "Moved",
  opened: "Opened",
  blended: "Mixed",
  written_off: "Written off",
  returned: "Returned",
  given: "Given away or sold",
  charged: "Price changed",
  reversed: "Undone",
};

/** What the rest of a traced lot came to. */
export const RESTS: Record<string, string> = {
  on_hand: "Still here",
  written_off: "Written off",
  returned: "Returned",
  given: "Given away or sold",
  counted: "Counted off",
};

const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

/** A month's key as it fits under a bar: "2026-10" is "Oct 26". */
export function monthShort(key: string): string {
  const [year, month] = key.split("-");
  return month ? `${MONTHS[Number(month) - 1]?.slice(0, 3) ?? month} ${year?.slice(2)}` : key;
}

/** A month's key in words: "2026-10" is "October 2026". */
export function monthLong(key: string): string {
  const [year, month] = key.split("-");
  return month ? `${MONTHS[Number(month) - 1] ?? month} ${year}` : key;
}
