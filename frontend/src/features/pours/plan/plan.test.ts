import { expect, it } from "vitest";
import { freshLine } from "../lines/line";
import type { Pour } from "../queries";
import { changeBody, filledIn, missingOfPlan, NEW_PLAN, pourBody, typedPlan } from "./planTyped";

const around = { timeZone: "America/Chicago", temperature: "F", before: undefined };
const said = (material: number) => ({
  ...freshLine(material),
  quantity: { text: "8 fl oz", body: "8 fl oz" },
});
const plan = { ...NEW_PLAN, layer: "flood_coat" as const, pieces: [4, 5], usages: [said(1)] };

it("plans for a time on the shop's clock, and says nothing of what is not known", () => {
  const body = pourBody({ ...plan, poured_at: "2026-12-01T09:00" }, around);
  expect(body).toMatchObject({ layer: "flood_coat", pieces: [4, 5], poured_at: "2026-12-01T15:00:00.000Z" });
  expect(body).not.toHaveProperty("complete");
  expect(pourBody(plan, around)).not.toHaveProperty("poured_at");
});

it("logs what has happened in one act", () => {
  const body = pourBody(
    { ...plan, happened: true, seen: { conditions: {}, ticks: { torch: true } } },
    around,
  );
  expect(body).toMatchObject({ complete: true, ticks: { torch: { value: true } } });
  expect(body).not.toHaveProperty("allow_short");
});

it("asks for coat, tops and amounts where they are missing", () => {
  expect(Object.keys(missingOfPlan({ ...NEW_PLAN, happened: true }))).toEqual(["layer", "pieces", "usages"]);
  expect(missingOfPlan(NEW_PLAN)).not.toHaveProperty("usages");
  expect(missingOfPlan({ ...plan, usages: [freshLine(1)] })).toHaveProperty(["usages.0.quantity"]);
});

it("fills in an earlier pour without losing what was said", () => {
  const before = [1, 2].map((material) => ({ ...said(material), is_touched: false }));
  expect(filledIn([said(2)], before).map(({ material, is_touched }) => [material, is_touched])).toEqual([
    [1, false],
    [2, true],
  ]);
});

it("leaves the tops of a plan and their shares alone while they stay the same", () => {
  const pour = {
    planned: [],
    planned_for: null,
    people: [],
    conditions: {},
    ticks: {},
    note: "",
    layer: "flood_coat",
    pieces: [{ piece: 4 }, { piece: 5 }],
    place: 1,
    is_redo: false,
  } as unknown as Pour;
  const typed = typedPlan(pour, "America/Chicago");
  expect(changeBody(typed, pour, "America/Chicago")).not.toHaveProperty("pieces");
  expect(changeBody({ ...typed, pieces: [4] }, pour, "America/Chicago")).toMatchObject({
    pieces: [4],
    poured_at: null,
  });
});
