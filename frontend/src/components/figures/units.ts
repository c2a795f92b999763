import { type Fraction, fromDecimal, over, times, toDecimal } from "./fraction";

export interface Amount {
  amount: string;
  unit: string;
}

export type Dimension = "volume" | "mass" | "length" | "area" | "count";

interface Unit {
  shown: string;
  spoken: string;
  dimension: Dimension;
  /** How much of the dimension's base unit (mL, g, ft, sq ft, one) it is, exactly: a decimal, or one over the other. */
  size: string;
}

/** Exact sizes: NIST Handbook 44, appendix C. */
const UNITS: Record<string, Unit> = {
  ml: { shown: "mL", spoken: "millilitres", dimension: "volume", size: "1" },
  l: { shown: "L", spoken: "litres", dimension: "volume", size: "1000" },
  tsp: { shown: "tsp", spoken: "teaspoons", dimension: "volume", size: "4.92892159375" },
  tbsp: { shown: "tbsp", spoken: "tablespoons", dimension: "volume", size: "14.78676478125" },
  fl_oz: { shown: "fl oz", spoken: "fluid ounces", dimension: "volume", size: "29.5735295625" },
  cup: { shown: "cup", spoken: "cups", dimension: "volume", size: "236.5882365" },
  pt: { shown: "pt", spoken: "pints", dimension: "volume", size: "473.176473" },
  qt: { shown: "qt", spoken: "quarts", dimension: "volume", size: "946.352946" },
  gal: { shown: "gal", spoken: "gallons", dimension: "volume", size: "3785.411784" },
  g: { shown: "g", spoken: "grams", dimension: "mass", size: "1" },
  kg: { shown: "kg", spoken: "kilograms", dimension: "mass", size: "1000" },
  oz: { shown: "oz wt", spoken: "ounces by weight", dimension: "mass", size: "28.349523125" },
  lb: { shown: "lb", spoken: "pounds", dimension: "mass", size: "453.59237" },
  in: { shown: "in", spoken: "inches", dimension: "length", size: "1/12" },
  ft: { shown: "ft", spoken: "feet", dimension: "length", size: "1" },
  sqft: { shown: "sq ft", spoken: "square feet", dimension: "area", size: "1" },
  sqm: { shown: "m²", spoken: "square metres", dimension: "area", size: "1/0.09290304" },
  each: { shown: "each", spoken: "each", dimension: "count", size: "1" },
};

export function isKnownUnit(unit: string): boolean {
  return Object.hasOwn(UNITS, unit);
}

export function dimensionOf(unit: string): Dimension | undefined {
  return UNITS[unit]?.dimension;
}

/** How a unit stands on a page: "fl oz"; a material's own measure ("pump") stands as it is. */
export function unitShown(unit: string): string {
  return UNITS[unit]?.shown ?? unit;
}

/** How a unit is read aloud. */
export function unitSpoken(unit: string): string {
  return UNITS[unit]?.spoken ?? unit;
}

function sizeOf(unit: string): Fraction | null {
  const [above, below = "1"] = UNITS[unit]?.size.split("/") ?? [];
  const top = fromDecimal(above ?? "");
  const bottom = fromDecimal(below);
  return top && bottom ? over(top, bottom) : null;
}

/** The same amount in another unit of the same dimension, to the millionth; null across dimensions. */
export function converted(quantity: Amount, unit: string): Amount | null {
  if (quantity.unit === unit) return quantity;
  const from = sizeOf(quantity.unit);
  const to = sizeOf(unit);
  const amount = fromDecimal(quantity.amount);
  if (!from || !to || !amount || dimensionOf(quantity.unit) !== dimensionOf(unit)) return null;
  return { amount: toDecimal(over(times(amount, from), to)), unit };
}

export interface PreferredUnits {
  volume: string;
  mass: string;
  area: string;
}

/** The amount as this shop likes to read it: volumes in fl oz or mL, masses in oz or g, areas in sq ft or m². */
export function asPreferred(quantity: Amount, preferred: PreferredUnits): Amount {
  const dimension = dimensionOf(quantity.unit);
  if (dimension !== "volume" && dimension !== "mass" && dimension !== "area") return quantity;
  return converted(quantity, preferred[dimension]) ?? quantity;
}
