import { readNumber } from "@/components/entry/reading";
import { toDecimal } from "@/components/figures/fraction";
import type { Face, Strip, TopMeasures } from "@/components/outline/measures";
import type { Piece } from "../queries";
import type { AreaSource } from "../words";

export type Form = "rectangle" | "l" | "round" | "area";

export const FORMS: readonly (readonly [value: Form, label: string])[] = [
  ["rectangle", "Rectangle"],
  ["l", "L"],
  ["round", "Round"],
  ["area", "Area only"],
];

/** A top as it is being typed: every measure of every form, so that changing the form loses none of them. */
export type TopTyped = {
  name: string;
  count: string;
  form: Form;
  length_in: string;
  width_in: string;
  legs: [Strip, Strip];
  diameter_in: string;
  area_sqft: string;
  edges: Face[];
  splash: Face[];
  cutouts: Strip[];
  area_source: AreaSource;
};

export const NEW_TOP: TopTyped = {
  name: "",
  count: "1",
  form: "rectangle",
  length_in: "",
  width_in: "25.5",
  legs: [
    { length_in: "", width_in: "25.5" },
    { length_in: "", width_in: "25.5" },
  ],
  diameter_in: "",
  area_sqft: "",
  edges: [],
  splash: [],
  cutouts: [],
  area_source: "quoted",
};

/** A top on record, to be typed over. */
export function typedOf(piece: Pick<Piece, "name" | "shape" | "area_source">): TopTyped {
  const { shape } = piece;
  const [first, second] = shape.legs ?? [];
  const form: Form = shape.diameter_in
    ? "round"
    : first && second
      ? "l"
      : shape.area_sqft
        ? "area"
        : "rectangle";
  return {
    ...NEW_TOP,
    name: piece.name,
    area_source: piece.area_source,
    form,
    length_in: shape.length_in ?? "",
    width_in: shape.width_in ?? "",
    legs: first && second ? [first, second] : NEW_TOP.legs,
    diameter_in: shape.diameter_in ?? "",
    area_sqft: shape.area_sqft ?? "",
    edges: shape.edges ?? [],
    splash: shape.splash ?? [],
    cutouts: shape.cutouts ?? [],
  };
}

const said = (measures: Record<string, string>) =>
  Object.values(measures).some((measure) => measure.trim() !== "");

/** Of the measures, those of the chosen form; rows left wholly empty are not meant. */
function shapeOf(top: TopTyped) {
  const own = {
    rectangle: { length_in: top.length_in, width_in: top.width_in },
    l: { legs: top.legs },
    round: { diameter_in: top.diameter_in },
    area: { area_sqft: top.area_sqft },
  }[top.form];
  return {
    ...own,
    edges: top.edges.filter((face) => said({ ...face })),
    splash: top.splash.filter((face) => said({ ...face })),
    cutouts: top.cutouts.filter((strip) => said({ ...strip })),
  };
}

/** The body of one top. */
export function topBody(top: TopTyped) {
  return { name: top.name.trim(), area_source: top.area_source, ...shapeOf(top) };
}

/** The body of a new top, or of several alike. */
export function newTopBody(top: TopTyped) {
  return { ...topBody(top), count: Math.max(1, Math.trunc(Number(top.count)) || 1) };
}

/** What is missing before it can be sent, by field. */
export function missingOf(top: TopTyped): Record<string, string> {
  const missing: Record<string, string> = {};
  const ask = (field: string, value: string, sentence: string) => {
    if (value.trim() === "") missing[field] = sentence;
    else if (field !== "name" && !readNumber(value))
      missing[field] = "Give a measure such as 25.5 or 25 1/2.";
  };
  ask("name", top.name, "Call the top something, such as Island.");
  if (top.form === "rectangle") {
    ask("length_in", top.length_in, "How long is it?");
    ask("width_in", top.width_in, "How wide is it?");
  } else if (top.form === "l") {
    top.legs.forEach((leg, i) => {
      ask(`legs.${i}.length_in`, leg.length_in, "How long is this leg, to the outside corner?");
      ask(`legs.${i}.width_in`, leg.width_in, "How wide is this leg?");
    });
  } else if (top.form === "round") ask("diameter_in", top.diameter_in, "How wide across is it?");
  else ask("area_sqft", top.area_sqft, "How many square feet is it?");
  return missing;
}

/** A typed measure as plain decimal text, for drawing; "" while it is none. */
function plain(typed: string): string {
  const number = readNumber(typed);
  return number ? toDecimal(number) : "";
}

function plainParts<T extends Strip | Face>(parts: readonly T[]): T[] {
  const all = parts.map((part) =>
    Object.fromEntries(Object.entries(part).map(([key, text]) => [key, plain(text)])),
  );
  return all.filter((part) => Object.values(part).every((measure) => Number(measure) > 0)) as unknown as T[];
}

/** The top as far as it can be drawn already. */
export function drawable(top: TopTyped): TopMeasures {
  const beside = {
    edges: plainParts(top.edges),
    splash: plainParts(top.splash),
    cutouts: plainParts(top.cutouts),
  };
  if (top.form === "rectangle") {
    return { length_in: plain(top.length_in), width_in: plain(top.width_in), ...beside };
  }
  if (top.form === "l") {
    const legs = plainParts(top.legs);
    return legs.length === 2 ? { legs, ...beside } : { ...legs[0], ...beside };
  }
  if (top.form === "round") return { diameter_in: plain(top.diameter_in), ...beside };
  return { area_sqft: plain(top.area_sqft), ...beside };
}
