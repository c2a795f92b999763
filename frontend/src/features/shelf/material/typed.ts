import type { Material } from "@/api/records";
import type { components } from "@/api/schema.gen";
import { type Said, UNSAID, unsaid } from "@/components/entry/AmountField";
import { unitShown } from "@/components/figures";
import { KINDS, type Kind, type StockUnit } from "../words";

export interface MeasureTyped {
  name: string;
  equals: Said;
  empty_g: string;
}

/** A material as a form keeps it. */
export interface MaterialTyped extends Record<string, unknown> {
  code: string;
  name: string;
  kind: Kind;
  stock_unit: StockUnit;
  density_g_per_ml: string;
  grams_per_tsp: string;
  measures: MeasureTyped[];
  shelf_life_days: string;
  open_life_days: string;
  tracks_lots: boolean;
  single_lot_per_job: boolean;
  hazard_codes: string[];
  cautions: string;
  swatch: string;
  main_supplier: string;
}

export const NEW_MEASURE: MeasureTyped = { name: "", equals: UNSAID, empty_g: "" };

export const NEW_MATERIAL: MaterialTyped = {
  code: "",
  name: "",
  kind: "resin",
  stock_unit: "ml",
  density_g_per_ml: "",
  grams_per_tsp: "",
  measures: [],
  shelf_life_days: "",
  open_life_days: "",
  tracks_lots: true,
  single_lot_per_job: false,
  hazard_codes: [],
  cautions: "",
  swatch: "",
  main_supplier: "",
};

export function typedOf(material: Material): MaterialTyped {
  return {
    code: material.code,
    name: material.name,
    kind: material.kind,
    stock_unit: material.stock_unit,
    density_g_per_ml: material.density_g_per_ml ?? "",
    grams_per_tsp: material.grams_per_tsp ?? "",
    measures: material.measures.map(({ name, as_typed, empty_g }) => ({
      name,
      equals: { text: `${as_typed.amount} ${unitShown(as_typed.unit)}`, body: as_typed },
      empty_g: empty_g ?? "",
    })),
    shelf_life_days: material.shelf_life_days === null ? "" : String(material.shelf_life_days),
    open_life_days: material.open_life_days === null ? "" : String(material.open_life_days),
    tracks_lots: material.tracks_lots,
    single_lot_per_job: material.single_lot_per_job,
    hazard_codes: material.hazard_codes,
    cautions: material.cautions,
    swatch: material.swatch,
    main_supplier: material.main_supplier ? String(material.main_supplier.id) : "",
  };
}

const orNull = (text: string) => (text.trim() === "" ? null : text.trim());

/** Whole days; what is no number is sent as it is, so that the answer says so in its field. */
const days = (text: string) => (text.trim() === "" ? null : (Number(text) as number));

export function bodyOf(typed: MaterialTyped): components["schemas"]["MaterialInRequest"] {
  return {
    ...typed,
    density_g_per_ml: orNull(typed.density_g_per_ml),
    grams_per_tsp: orNull(typed.grams_per_tsp),
    measures: typed.measures.map(({ name, equals, empty_g }) => ({
      name,
      equals: equals.body ?? equals.text,
      empty_g: orNull(empty_g),
    })),
    shelf_life_days: days(typed.shelf_life_days),
    open_life_days: days(typed.open_life_days),
    main_supplier: typed.main_supplier === "" ? null : Number(typed.main_supplier),
  };
}

const isDays = (text: string) => text.trim() === "" || /^[1-9]\d*$/.test(text.trim());

/** A sentence for each field to mend before anything is sent. */
export function checkMaterial(typed: MaterialTyped): Record<string, string> {
  const wrong: Record<string, string> = {};
  if (typed.code.trim() === "") wrong.code = "Give it a short code, as on the shelf's label.";
  if (typed.name.trim() === "") wrong.name = "Say what it is called.";
  if (!isDays(typed.shelf_life_days)) wrong.shelf_life_days = "Type whole days, such as 540.";
  if (!isDays(typed.open_life_days)) wrong.open_life_days = "Type whole days, such as 270.";
  typed.measures.forEach(({ name, equals }, i) => {
    if (name.trim() === "") wrong[`measures.${i}.name`] = "Name the measure, such as pump.";
    const said = unsaid(equals);
    if (said) wrong[`measures.${i}.equals`] = said;
  });
  return wrong;
}

/** The unit that a kind is usually kept in. */
export function usualUnit(kind: Kind): StockUnit {
  return KINDS.find(({ value }) => value === kind)?.unit ?? "each";
}

const NAMES: Record<string, string> = {
  code: "Code",
  name: "Name",
  kind: "Kind",
  stock_unit: "Kept in",
  density_g_per_ml: "Density",
  grams_per_tsp: "Level teaspoon",
  measures: "Measures",
  shelf_life_days: "Good unopened",
  open_life_days: "Good once open",
  tracks_lots: "Lots kept apart",
  single_lot_per_job: "One lot for one job",
  hazard_codes: "Hazards",
  cautions: "Cautions",
  swatch: "Swatch",
  main_supplier: "Mostly from",
};

const shown = (value: unknown): string => {
  if (value === true) return "yes";
  if (value === false) return "no";
  if (Array.isArray(value))
    return value.map((each) => (typeof each === "string" ? each : each.name)).join(", ") || "none";
  return value === "" ? "nothing" : String(value);
};

/** What somebody else changed while a form lay open, field by field in words. */
export function changesBetween(before: MaterialTyped, after: MaterialTyped): string[] {
  return Object.keys(NAMES).flatMap((field) => {
    const [was, is] = [before[field], after[field]];
    return JSON.stringify(was) === JSON.stringify(is)
      ? []
      : [`${NAMES[field]}: ${shown(was)} → ${shown(is)}`];
  });
}
