import { describe, expect, it } from "vitest";
import { readNumber, readQuantity, withUnit } from "./reading";

describe("an amount as people say it", () => {
  it.each([
    ["32 fl oz", "32", "fl_oz"],
    ["32floz", "32", "fl_oz"],
    ["1 1/2 cups", "1.5", "cup"],
    ["1½ cups", "1.5", "cup"],
    ["½ gal", "0.5", "gal"],
    ["0.5 gal", "0.5", "gal"],
    [".5 gal", "0.5", "gal"],
    ["2 tsp", "2", "tsp"],
    ["14g", "14", "g"],
    ["14 grams", "14", "g"],
    ["1,280 mL", "1280", "ml"],
    ["3 Quarts", "3", "qt"],
    ["2 oz wt", "2", "oz"],
    ["1/4 can", "0.25", "can"],
    ["2 pumps", "2", "pump"],
  ])("%s is %s %s", (text, amount, unit) =>
    expect(readQuantity(text, { measures: ["can", "pump"] })).toMatchObject({
      kind: "amount",
      quantity: { amount, unit },
    }),
  );

  it("is sent word for word", () => expect(readQuantity("1 1/2 cups")).toMatchObject({ body: "1 1/2 cups" }));

  it("may be about right", () =>
    expect(readQuantity("~1/3 gal")).toMatchObject({ isApproximate: true, body: "~1/3 gal" }));
});

describe("a bare oz", () => {
  it("is asked about", () => expect(readQuantity("32 oz")).toEqual({ kind: "which_ounces", amount: "32" }));

  it("is sent as fl oz where it means liquid", () =>
    expect(readQuantity("1 1/2 oz", { ounces: "fl_oz" })).toMatchObject({
      body: "1 1/2 fl oz",
      quantity: { unit: "fl_oz" },
    }));

  it("is sent as weight where it means the scale", () =>
    expect(readQuantity("1 1/2 ounces", { ounces: "oz" })).toMatchObject({
      body: "1 1/2 oz by weight",
    }));
});

describe("what cannot be understood", () => {
  it.each(["x", "1/0 cup", "1e9 g", "NaN g", "-3 g", "1 2 3 g", "1//2 g", "1.2.3 g"])(
    "%s is no amount",
    (text) => expect(readQuantity(text)).toMatchObject({ kind: "unreadable" }),
  );
  it("is an unknown unit", () =>
    expect(readQuantity("3 blobs")).toMatchObject({
      kind: "unreadable",
      why: expect.stringContaining("blobs"),
    }));
  it("is nothing at all", () => expect(readQuantity("0 g")).toMatchObject({ kind: "unreadable" }));
  it("is a number without a unit", () =>
    expect(readQuantity("32")).toEqual({ kind: "no_unit", amount: "32" }));
  it("is an empty field, which is no error", () => expect(readQuantity("  ")).toEqual({ kind: "nothing" }));
});

it("reads mixed numbers exactly", () => {
  expect(readNumber("1 1/3")).toEqual({ n: 4n, d: 3n });
  expect(readNumber("2⅔")).toEqual({ n: 8n, d: 3n });
});

it("puts a tapped unit behind the number that is there", () => {
  expect(withUnit("32", "fl oz")).toBe("32 fl oz");
  expect(withUnit("1 1/2 cups", "mL")).toBe("1 1/2 mL");
  expect(withUnit("", "mL")).toBe("");
});
