import type { components } from "@/api/schema.gen";

type Schemas = components["schemas"];
export type Kind = Schemas["MaterialKind"];
export type StockUnit = Schemas["StockUnitEnum"];
export type ActKind = Schemas["ActKind"];
export type Basis = Schemas["BasisEnum"];

interface KindWords {
  value: Kind;
  /** One of it, on a form. */
  label: string;
  /** Many, as the head of a shelf. */
  many: string;
  /** What it is usually kept in. */
  unit: StockUnit;
}

/** The kinds of material, in the order of the shelves. */
export const KINDS: readonly KindWords[] = [
  { value: "resin", label: "Resin (part A)", many: "Resin", unit: "ml" },
  { value: "hardener", label: "Hardener (part B)", many: "Hardener", unit: "ml" },
  { value: "dye", label: "Dye", many: "Dye", unit: "ml" },
  { value: "paste", label: "Paste", many: "Paste", unit: "g" },
  { value: "powder", label: "Powder", many: "Powder", unit: "g" },
  { value: "spray_can", label: "Spray can", many: "Spray cans", unit: "each" },
  { value: "paint", label: "Paint", many: "Paint", unit: "ml" },
  { value: "solvent", label: "Solvent", many: "Solvent", unit: "ml" },
  { value: "consumable", label: "Consumable", many: "Consumables", unit: "each" },
];

export function kindLabel(kind: string): string {
  return KINDS.find(({ value }) => value === kind)?.label ?? kind;
}

export const STOCK_UNITS: readonly { value: StockUnit; label: string }[] = [
  { value: "ml", label: "mL, for what is poured" },
  { value: "g", label: "g, for what is weighed" },
  { value: "each", label: "each, for what is counted" },
  { value: "ft", label: "ft, for what is unrolled" },
  { value: "sqft", label: "sq ft, for what is laid out" },
];

/** A line of in and out in the bench's words. */
export const ACTS: Record<ActKind, string> = {
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

export const BASES: Record<Basis, string> = {
  paid: "Paid",
  free: "Free",
  borrowed: "Borrowed",
  customers_own: "Customer's own",
};

/** Days as people say them: 540 is "18 months", 45 is "45 days". */
export function daysInWords(days: number): string {
  if (days >= 360 && days % 365 === 0) return days === 365 ? "1 year" : `${days / 365} years`;
  if (days >= 60 && days % 30 === 0) return `${days / 30} months`;
  return days === 1 ? "1 day" : `${days} days`;
}
