import type { components } from "@/api/schema.gen";
import { type Said, UNSAID } from "@/components/entry/AmountField";
import { unitShown } from "@/components/figures";
import { worthShowing } from "@/components/figures/decimal";
import { fraction, fromDecimal, over, plus, times, toDecimal } from "@/components/figures/fraction";

type System = components["schemas"]["ResinSystemOut"];
type Scale = "F" | "C";

const THIRTY_TWO = fraction(32n);
const NINE_FIFTHS = fraction(9n, 5n);

/** Celsius as the shop's thermometer reads it; exact: °F = °C × 9/5 + 32. */
export function onScale(celsius: string, scale: Scale): string {
  const value = fromDecimal(celsius);
  if (!value || scale === "C") return celsius;
  return worthShowing(toDecimal(plus(times(value, NINE_FIFTHS), THIRTY_TWO)));
}

/** What the shop's thermometer reads, in Celsius; what is no number stays as it was typed. */
export function inCelsius(typed: string, scale: Scale): string {
  const value = fromDecimal(typed);
  if (!value || scale === "C") return typed;
  return toDecimal(over(plus(value, { n: -32n, d: 1n }), NINE_FIFTHS));
}

export function degrees(celsius: string, scale: Scale): string {
  return `${onScale(celsius, scale)} °${scale}`;
}

/** A window in hours: "4 to 10 h", "after 24 h". */
export function recoatInWords([from, to]: readonly (string | null)[]): string {
  return to ? `${from} to ${to} h` : `after ${from} h`;
}

export interface PartTyped {
  role: string;
  material: string;
  by_volume: string;
  by_mass: string;
}

/** A resin system as a form keeps it; temperatures on the shop's scale. */
export interface SystemTyped extends Record<string, unknown> {
  name: string;
  parts: PartTyped[];
  tolerance_percent: string;
  pot_minutes: string;
  pot_mass_g: string;
  pot_at: string;
  working_minutes: string;
  min_temp: string;
  max_temp: string;
  max_humidity_percent: string;
  max_layer_in: string;
  tacky_from: string;
  tacky_to: string;
  sanded_from: string;
  sanded_to: string;
  max_bucket: Said;
  max_colourant_percent: string;
  paint_dry_h: string;
}

const part = (role: string): PartTyped => ({ role, material: "", by_volume: "", by_mass: "" });

export const NEW_SYSTEM: SystemTyped = {
  name: "",
  parts: [part("A"), part("B")],
  tolerance_percent: "",
  pot_minutes: "",
  pot_mass_g: "",
  pot_at: "",
  working_minutes: "",
  min_temp: "",
  max_temp: "",
  max_humidity_percent: "",
  max_layer_in: "",
  tacky_from: "",
  tacky_to: "",
  sanded_from: "",
  sanded_to: "",
  max_bucket: UNSAID,
  max_colourant_percent: "",
  paint_dry_h: "",
};

export const nextPart = (parts: readonly PartTyped[]) => part(String.fromCharCode(65 + parts.length));

export function typedSystem(system: System, scale: Scale): SystemTyped {
  const text = (value: string | number | null | undefined) =>
    value === null || value === undefined ? "" : String(value);
  const warm = (celsius: string | null | undefined) => (celsius ? onScale(celsius, scale) : "");
  const { pot_life, max_bucket } = system;
  return {
    name: system.name,
    parts: system.parts.map(({ role, material }) => ({
      role,
      material: String(material.id),
      by_volume: system.ratio_by_volume?.[role] ?? "",
      by_mass: system.ratio_by_mass?.[role] ?? "",
    })),
    tolerance_percent: text(system.tolerance_percent),
    pot_minutes: text(pot_life?.minutes),
    pot_mass_g: text(pot_life?.mass_g),
    pot_at: warm(pot_life?.at_c),
    working_minutes: text(system.working_minutes),
    min_temp: warm(system.min_temp_c),
    max_temp: warm(system.max_temp_c),
    max_humidity_percent: text(system.max_humidity_percent),
    max_layer_in: text(system.max_layer_in),
    tacky_from: text(system.recoat_tacky_h?.[0]),
    tacky_to: text(system.recoat_tacky_h?.[1]),
    sanded_from: text(system.recoat_sanded_h?.[0]),
    sanded_to: text(system.recoat_sanded_h?.[1]),
    max_bucket: max_bucket
      ? { text: `${max_bucket.amount} ${unitShown(max_bucket.unit)}`, body: max_bucket }
      : UNSAID,
    max_colourant_percent: text(system.max_colourant_percent),
    paint_dry_h: text(system.paint_dry_h),
  };
}

const orNull = (text: string) => (text.trim() === "" ? null : text.trim());
const wholeOrNull = (text: string) => (text.trim() === "" ? null : Number(text));

function ratioOf(parts: readonly PartTyped[], by: "by_volume" | "by_mass"): Record<string, string> | null {
  const said = parts.filter((each) => each[by].trim() !== "");
  return said.length === 0 ? null : Object.fromEntries(said.map((each) => [each.role, each[by].trim()]));
}

export function systemBody(typed: SystemTyped, scale: Scale): components["schemas"]["ResinSystemInRequest"] {
  const warm = (text: string) => (text.trim() === "" ? null : inCelsius(text.trim(), scale));
  const window = (from: string, to: string) => (from.trim() === "" ? null : [from.trim(), orNull(to)]);
  const isPotSaid = [typed.pot_minutes, typed.pot_mass_g, typed.pot_at].some((text) => text.trim() !== "");
  return {
    name: typed.name,
    parts: typed.parts.map(({ role, material }) => ({ role, material: Number(material) })),
    ratio_by_volume: ratioOf(typed.parts, "by_volume"),
    ratio_by_mass: ratioOf(typed.parts, "by_mass"),
    tolerance_percent: orNull(typed.tolerance_percent),
    pot_life: isPotSaid
      ? {
          minutes: Number(typed.pot_minutes),
          mass_g: typed.pot_mass_g,
          at_c: inCelsius(typed.pot_at, scale),
        }
      : null,
    working_minutes: wholeOrNull(typed.working_minutes),
    min_temp_c: warm(typed.min_temp),
    max_temp_c: warm(typed.max_temp),
    max_humidity_percent: orNull(typed.max_humidity_percent),
    max_layer_in: orNull(typed.max_layer_in),
    recoat_tacky_h: window(typed.tacky_from, typed.tacky_to),
    recoat_sanded_h: window(typed.sanded_from, typed.sanded_to),
    max_bucket: typed.max_bucket.body ?? null,
    max_colourant_percent: orNull(typed.max_colourant_percent),
    paint_dry_h: orNull(typed.paint_dry_h),
  };
}

export function checkSystem(typed: SystemTyped): Record<string, string> {
  const wrong: Record<string, string> = {};
  if (typed.name.trim() === "") wrong.name = "Say what it is called.";
  typed.parts.forEach(({ material }, i) => {
    if (material === "") wrong[`parts.${i}.material`] = "Choose the material.";
  });
  const hasRatio = (by: "by_volume" | "by_mass") => typed.parts.every((each) => each[by].trim() !== "");
  if (!hasRatio("by_volume") && !hasRatio("by_mass")) {
    wrong["parts.0.by_volume"] = "Give the ratio by volume or by weight, a figure for each part.";
  }
  return wrong;
}

const FIELDS: Record<string, string> = {
  "pot_life.minutes": "pot_minutes",
  "pot_life.mass_g": "pot_mass_g",
  "pot_life.at_c": "pot_at",
  pot_life: "pot_minutes",
  min_temp_c: "min_temp",
  max_temp_c: "max_temp",
  recoat_tacky_h: "tacky_from",
  recoat_sanded_h: "sanded_from",
};

/** The form's field for a field of the body. A ratio's share is named by its part: `ratio_by_mass.B`. */
export function systemField(name: string): string {
  const share = /^ratio_by_(volume|mass)(?:\.([A-Z]))?$/.exec(name);
  if (share) return `parts.${share[2] ? share[2].charCodeAt(0) - 65 : 0}.by_${share[1]}`;
  return FIELDS[name] ?? FIELDS[name.replace(/\.\d+$/, "")] ?? name.replace(/\.(amount|unit)$/, "");
}
