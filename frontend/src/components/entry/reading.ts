import { type Fraction, fraction, fromDecimal, plus, toDecimal } from "../figures/fraction";
import type { Amount } from "../figures/units";

/** What a bare "oz" means here: ounces of liquid or ounces on the scale. */
export type Ounces = "fl_oz" | "oz";

/** What the call takes where a person types: the words, an ambiguous "oz" spelled out, or the amount with its unit. */
export type QuantityBody = string | Amount;

export type Reading =
  | { kind: "nothing" }
  | { kind: "amount"; quantity: Amount; isApproximate: boolean; body: QuantityBody }
  | { kind: "which_ounces"; amount: string }
  | { kind: "no_unit"; amount: string }
  | { kind: "unreadable"; why: string };

interface ReadingOptions {
  ounces?: Ounces | undefined;
  /** The material's own measures, such as "pump" and "scoop". */
  measures?: readonly string[];
}

const SIGNS: Record<string, string> = {
  "½": "1/2",
  "⅓": "1/3",
  "⅔": "2/3",
  "¼": "1/4",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

const WORDS: Record<string, string> = {
  ml: "ml",
  milliliter: "ml",
  millilitre: "ml",
  cc: "ml",
  l: "l",
  liter: "l",
  litre: "l",
  tsp: "tsp",
  teaspoon: "tsp",
  tbsp: "tbsp",
  tablespoon: "tbsp",
  "fl oz": "fl_oz",
  floz: "fl_oz",
  fl_oz: "fl_oz",
  "fl. oz": "fl_oz",
  "fl. oz.": "fl_oz",
  "fluid ounce": "fl_oz",
  cup: "cup",
  pt: "pt",
  pint: "pt",
  qt: "qt",
  quart: "qt",
  gal: "gal",
  gallon: "gal",
  g: "g",
  gram: "g",
  gr: "g",
  kg: "kg",
  kilo: "kg",
  kilogram: "kg",
  lb: "lb",
  pound: "lb",
  "oz wt": "oz",
  "oz weight": "oz",
  "oz by weight": "oz",
  ft: "ft",
  foot: "ft",
  feet: "ft",
  in: "in",
  inch: "in",
  inches: "in",
  sqft: "sqft",
  "sq ft": "sqft",
  "square feet": "sqft",
  "square foot": "sqft",
  sqm: "sqm",
  "m²": "sqm",
  each: "each",
  ea: "each",
  pc: "each",
  piece: "each",
};

const OUNCES = new Set(["oz", "oz.", "ounce", "ounces"]);

/** "1 1/2", "1½", "0.5", "1,280" as an exact number; null when it is none. */
export function readNumber(text: string): Fraction | null {
  const plain = text
    .replace(/[½⅓⅔¼¾⅛⅜⅝⅞]/g, (sign) => ` ${SIGNS[sign] ?? ""}`)
    .replace(/(\d),(?=\d{3}(\D|$))/g, "$1")
    .replaceAll("⁄", "/")
    .trim();
  const match = /^(?:(\d+)\s+)?(\d+)\s*\/\s*(\d+)$/.exec(plain);
  if (!match) return fromDecimal(plain.startsWith("-") ? "" : plain);
  const below = BigInt(match[3] ?? "0");
  if (below === 0n) return null;
  return plus(fraction(BigInt(match[1] ?? "0")), fraction(BigInt(match[2] ?? "0"), below));
}

function unitOf(word: string, measures: readonly string[]): string | null {
  const own = measures.find((name) => name.toLowerCase() === word || `${name.toLowerCase()}s` === word);
  if (own) return own;
  return (
    WORDS[word] ??
    WORDS[word.replace(/\.$/, "")] ??
    WORDS[word.replace(/e?s$/, "")] ??
    WORDS[word.replace(/s$/, "")] ??
    null
  );
}

const SHAPE = /^(~?)\s*([\d.,/⁄\s½⅓⅔¼¾⅛⅜⅝⅞]+?)\s*([^\d\s.,/⁄½⅓⅔¼¾⅛⅜⅝⅞~].*)?$/;

/** What a person typed, understood: an amount with its unit, or what is still missing to understand it. */
export function readQuantity(text: string, { ounces, measures = [] }: ReadingOptions = {}): Reading {
  const typed = text.trim();
  if (typed === "") return { kind: "nothing" };
  const match = SHAPE.exec(typed);
  const number = match && readNumber(match[2] ?? "");
  if (!match || !number) {
    return {
      kind: "unreadable",
      why: `“${typed}” is no amount. Type a number and a unit, such as 1 1/2 cups or 14 g.`,
    };
  }
  const amount = toDecimal(number);
  if (number.n === 0n) return { kind: "unreadable", why: "The amount is nothing. Type more than 0." };
  const isApproximate = match[1] === "~";
  const word = (match[3] ?? "").toLowerCase().replace(/\s+/g, " ").trim();
  if (word === "") return { kind: "no_unit", amount };
  if (OUNCES.has(word)) {
    if (!ounces) return { kind: "which_ounces", amount };
    const meant = ounces === "fl_oz" ? "fl oz" : "oz by weight";
    const body = `${match[1]}${(match[2] ?? "").trim()} ${meant}`;
    return { kind: "amount", quantity: { amount, unit: ounces }, isApproximate, body };
  }
  const unit = unitOf(word, measures);
  if (!unit) {
    return {
      kind: "unreadable",
      why: `“${match[3]}” is no unit known here. Try fl oz, cups, gal, mL, g, lb or a measure of this material.`,
    };
  }
  return { kind: "amount", quantity: { amount, unit }, isApproximate, body: typed };
}

/** The typed text with its unit replaced, as the unit buttons do: "32" and "fl_oz" give "32 fl oz". */
export function withUnit(text: string, unitText: string): string {
  const number = /^(~?\s*[\d.,/⁄\s½⅓⅔¼¾⅛⅜⅝⅞]*)/.exec(text.trim())?.[1]?.trim() ?? "";
  return number === "" ? text : `${number} ${unitText}`;
}
