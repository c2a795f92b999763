import { expect, it } from "vitest";
import { Problem } from "@/api/problem";
import { fraction } from "@/components/figures/fraction";
import type { Planned, Usage } from "../queries";
import { reworded } from "../short/reworded";
import {
  areUntouched,
  freshLine,
  lessOf,
  likeBefore,
  plannedLines,
  ratioOf,
  scaled,
  usageBody,
  usedLines,
} from "./line";
import { lotIn, shortagesOf, takeFromLot } from "./short";

const ml = (amount: string) => ({ amount, unit: "ml" });

const planned: Planned = {
  position: 0,
  material: 5,
  material_name: "Flood resin A",
  material_code: "FLD-A",
  material_kind: "resin",
  quantity: ml("532.323532"),
  typed_amount: "18",
  typed_unit: "fl_oz",
  weighed_before: "",
  weighed_after: "",
  bucket: null,
  is_waste: false,
  reason: "",
  provenance: "assumed",
  lot_provenance: "assumed",
  lot: null,
  number: null,
  lot_number: null,
  place: null,
};

function used(changes: Partial<Usage>): Usage {
  return {
    ...planned,
    id: 1,
    lot: 81,
    number: 81,
    lot_number: "FA-1",
    place: 1,
    place_name: "Shop",
    movement: 1,
    density_g_per_ml: null,
    grams_per_tsp: null,
    lot_status: "usable",
    was_expired: false,
    given_by: null,
    ...changes,
  };
}

it("keeps a plan's amounts as assumed until somebody touches them", () => {
  const lines = plannedLines([planned], 1);
  expect(areUntouched(lines, 1)).toBe(true);
  const [line] = lines;
  expect(line && usageBody(line)).toMatchObject({
    quantity: { amount: "18", unit: "fl_oz" },
    provenance: "assumed",
    lot_provenance: "assumed",
  });
  expect(line && usageBody({ ...line, is_touched: true })).toMatchObject({ provenance: "typed" });
  expect(areUntouched(lines.slice(1), 1)).toBe(false);
});

it("sends a named lot with its place, and two weighings instead of an amount", () => {
  const line = {
    ...freshLine(5),
    lot: "81@2",
    is_lot_touched: true,
    weighed: { before: { text: "940 g", body: "940 g" }, after: { text: "600 g", body: "600 g" } },
  };
  const body = usageBody(line);
  expect(body).toMatchObject({
    lot: 81,
    place: 2,
    weighed: { before: "940 g", after: "600 g" },
    provenance: "weighed",
  });
  expect(body).not.toHaveProperty("quantity");
});

it("makes one line of an amount that two lots gave, and leaves out what came from another pour", () => {
  const rows = [
    used({ id: 1 }),
    used({ id: 2, lot: 82 }),
    used({ id: 3, position: 1, lot: 90, given_by: 7 }),
  ];
  expect(usedLines(rows)).toMatchObject([{ material: 5, lot: "", quantity: { text: "18 fl oz" } }]);
  expect(usedLines([used({})])).toMatchObject([{ lot: "81@1" }]);
});

it("fills in an earlier pour for another area, as assumed and without its lots", () => {
  const waste = used({ id: 4, position: 1, is_waste: true, reason: "Spilled" });
  const cups = used({ id: 5, position: 2, material: 9, typed_amount: "3", typed_unit: "each" });
  const lines = likeBefore([used({}), waste, cups], ratioOf("20", "12"));
  expect(lines.map(({ quantity }) => quantity.text)).toEqual(["30 fl oz", "5 each"]);
  expect(lines.every((line) => line.lot === "" && !line.is_touched && line.was === "assumed")).toBe(true);
});

it("scales as one would say it, and leaves an equal area as it was said", () => {
  expect(scaled("1/3", "cup", fraction(1n))).toBe("1/3");
  expect(scaled("18", "fl_oz", fraction(1n, 3n))).toBe("6");
  expect(scaled("7.5", "ml", fraction(4n, 3n))).toBe("10");
  expect(scaled("1", "each", fraction(1n, 3n))).toBe("1");
});

const short = new Problem({
  slug: "not-enough-stock",
  title: "There is not enough",
  status: 409,
  detail: "",
  extra: {
    shortages: [
      { material: 5, name: "A", wanted: ml("532.323532"), there: ml("332.323532"), missing: ml("200") },
    ],
  },
});

it("takes what is missing from a second lot, and the rest from where it was", () => {
  const [shortage] = shortagesOf(short);
  const remedy = lotIn({ kind: "other_lot", text: "", material: 5, lot: 9, place: 1, quantity: ml("900") });
  if (!shortage || !remedy) throw new Error("the refusal was not understood");
  const lines = takeFromLot(plannedLines([planned], 1), remedy, shortage);
  expect(lines.map((line) => [line.quantity.body, line.lot])).toEqual([
    [ml("332.323532"), ""],
    [ml("200"), "9@1"],
  ]);
  const empty = { ...shortage, there: ml("0"), missing: shortage.wanted };
  expect(takeFromLot(plannedLines([planned], 1), remedy, empty)).toMatchObject([
    { lot: "9@1", quantity: { text: "18 fl oz" } },
  ]);
});

it("never takes more from the second lot than it has", () => {
  const [shortage] = shortagesOf(short);
  const remedy = lotIn({ kind: "other_lot", text: "", material: 5, lot: 9, place: 1, quantity: ml("50") });
  if (!shortage || !remedy) throw new Error("the refusal was not understood");
  const lines = takeFromLot(plannedLines([planned], 1), remedy, shortage);
  expect(lines.map(({ quantity }) => quantity.body)).toEqual([ml("482.323532"), ml("50")]);
});

it("takes one amount from another only within a dimension", () => {
  expect(lessOf({ amount: "18", unit: "fl_oz" }, ml("532.3235325"))).toBeNull();
  expect(lessOf({ amount: "1", unit: "g" }, ml("1"))).toBeNull();
  expect(lessOf(ml("10"), ml("4"))).toEqual(ml("6"));
});

it("reads nothing from a refusal of another kind", () => {
  expect(shortagesOf(null)).toEqual([]);
  expect(shortagesOf(new Problem({ slug: "x", title: "", status: 409, detail: "" }))).toEqual([]);
  expect(lotIn({ kind: "found_more", text: "", materials: [5] })).toBeNull();
});

it("says what is short as the shop measures it, and what each lot has left", () => {
  const told = new Problem({
    slug: short.slug,
    title: short.title,
    status: 422,
    detail: "A: 200 ml short; 532.323532 ml wanted, 332.323532 ml there.",
    errors: [{ pointer: "/usages/0", detail: "A: 200 ml short" }],
    remedies: [
      { kind: "other_lot", text: "Name lot 9.", material: 5, lot: 9, place: 1, quantity: ml("900") },
    ],
    extra: short.extra,
  });
  const said = reworded(told, ({ amount }) => `${Math.round(Number(amount))} of ours`);
  expect(said?.detail).toBe("A: 200 of ours short. 532 of ours wanted, 332 of ours there.");
  expect(said?.errors).toEqual([{ pointer: "/usages/0", detail: said?.detail }]);
  expect(said?.remedies[0]?.text).toBe("Name lot 9. 900 of ours left.");
  expect(reworded(null, () => "")).toBeNull();
});
