import { expect, it } from "vitest";
import type { Pour } from "../queries";
import { completeBody, fieldOf, happeningOf, missingOf, NO_LEFTOVER } from "./account";

const planned = {
  position: 0,
  material: 5,
  typed_amount: "18",
  typed_unit: "fl_oz",
  bucket: null,
  is_waste: false,
  reason: "",
  provenance: "assumed",
  lot: null,
  place: null,
};
const pour = {
  id: 3,
  place: 1,
  planned: [planned],
  people: [{ id: 2, name: "Wren" }],
  conditions: {},
  ticks: {},
  note: "",
} as unknown as Pour;
const around = { timeZone: "America/Chicago", temperature: "F", before: undefined };

it("sends no amounts where all went as planned", () => {
  expect(completeBody(happeningOf(pour), 1, around)).toEqual({
    people: [2],
    conditions: {},
    ticks: {},
    note: "",
  });
});

it("sends every amount once one of them differs", () => {
  const typed = happeningOf(pour);
  const usages = typed.usages.map((line) => ({ ...line, is_touched: true }));
  expect(completeBody({ ...typed, usages }, 1, around).usages).toMatchObject([
    { material: 5, provenance: "typed" },
  ]);
  expect(completeBody({ ...typed, usages: [] }, 1, around).usages).toEqual([]);
});

it("says when it was on the shop's clock, what was left and what was found", () => {
  const body = completeBody(
    {
      ...happeningOf(pour),
      poured_at: "2026-11-25T14:05",
      leftover: { quantity: { text: "8 fl oz", body: "8 fl oz" }, went_to: "12" },
      found: [{ lot: 9, name: "Lot 9", quantity: { text: "200 mL", body: "200 mL" }, reason: " Fuller " }],
    },
    1,
    around,
  );
  expect(body).toMatchObject({
    poured_at: "2026-11-25T20:05:00.000Z",
    leftover: { quantity: "8 fl oz", went_to: 12 },
    found: [{ lot: 9, quantity: "200 mL", reason: "Fuller" }],
  });
});

it("asks for what is missing in its own field", () => {
  const typed = happeningOf(pour);
  const usages = typed.usages.map((line) => ({ ...line, quantity: { text: "18" } }));
  expect(Object.keys(missingOf({ usages, leftover: NO_LEFTOVER }))).toEqual([
    "usages.0.quantity",
    "leftover.quantity",
  ]);
});

it("finds the form's row for a row of the plan", () => {
  expect(fieldOf("planned.2")).toBe("usages.2");
  expect(fieldOf("usages.1.quantity.amount")).toBe("usages.1.quantity");
  expect(fieldOf("usages.0.weighed.before")).toBe("usages.0.weighed");
});
