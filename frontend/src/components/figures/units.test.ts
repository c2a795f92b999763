import { describe, expect, it } from "vitest";
import { fraction, fromDecimal, over, plus, toDecimal } from "./fraction";
import { asPreferred, converted, unitShown } from "./units";

/** Sizes: NIST Handbook 44, appendix C. */
describe("conversion", () => {
  it.each([
    ["1", "gal", "ml", "3785.411784"],
    ["1", "gal", "fl_oz", "128"],
    ["1", "qt", "cup", "4"],
    ["946.352946", "ml", "fl_oz", "32"],
    ["1", "lb", "oz", "16"],
    ["1", "lb", "g", "453.59237"],
    ["1", "sqm", "sqft", "10.76391"],
    ["30", "in", "ft", "2.5"],
    ["3", "tsp", "tbsp", "1"],
  ])("%s %s in %s is %s", (amount, from, to, result) =>
    expect(converted({ amount, unit: from }, to)).toEqual({ amount: result, unit: to }),
  );

  it("does not cross from volume to mass, nor guess what a pump holds", () => {
    expect(converted({ amount: "1", unit: "ml" }, "g")).toBeNull();
    expect(converted({ amount: "1", unit: "pump" }, "ml")).toBeNull();
  });
});

it("shows volumes and masses as the shop prefers, and everything else as it is", () => {
  const shop = { volume: "fl_oz", mass: "g", area: "sqft" };
  expect(asPreferred({ amount: "946.352946", unit: "ml" }, shop)).toEqual({ amount: "32", unit: "fl_oz" });
  expect(asPreferred({ amount: "5", unit: "g" }, shop)).toEqual({ amount: "5", unit: "g" });
  expect(asPreferred({ amount: "3", unit: "each" }, shop)).toEqual({ amount: "3", unit: "each" });
});

it("tells ounces on the scale from ounces of liquid", () => {
  expect(unitShown("fl_oz")).toBe("fl oz");
  expect(unitShown("oz")).toBe("oz wt");
  expect(unitShown("scoop")).toBe("scoop");
});

it("reckons with fractions exactly", () => {
  const third = fraction(1n, 3n);
  expect(plus(plus(third, third), third)).toEqual(fraction(1n));
  expect(toDecimal(third)).toBe("0.333333");
  expect(toDecimal(over(fraction(-2n), fraction(3n)))).toBe("-0.666667");
  expect(fromDecimal("29.5735295625")).toEqual(fraction(295735295625n, 10n ** 10n));
});
