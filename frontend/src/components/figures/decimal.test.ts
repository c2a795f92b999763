import { describe, expect, it } from "vitest";
import { decimalParts, grouped, placesOf, roundTo, worthShowing } from "./decimal";

describe("rounding", () => {
  it.each([
    ["946.352946", 1, "946.4"],
    ["0.005", 2, "0.01"],
    ["1.005", 2, "1.01"],
    ["2.675", 2, "2.68"],
    ["-2.675", 2, "-2.68"],
    ["-0.004", 2, "0.00"],
    ["9.99", 1, "10.0"],
    ["9999999.9999995", 6, "10000000.000000"],
    ["3", 2, "3.00"],
    ["0.5", 0, "1"],
    [".5", 1, "0.5"],
  ])("%s to %i places is %s", (text, places, rounded) => expect(roundTo(text, places)).toBe(rounded));

  it("never goes through a float: every digit of the largest movement stays", () =>
    expect(roundTo("9999999.999999", 6)).toBe("9999999.999999"));

  it("leaves what is no decimal alone", () => expect(roundTo("soon", 2)).toBe("soon"));
});

it.each([
  ["946.352946", "946.4"],
  ["47.9990001", "48"],
  ["14.250000", "14.25"],
  ["1.352999", "1.353"],
  ["0.041200", "0.0412"],
  ["0.000001", "0.000001"],
  ["16155.49", "16155"],
  ["32", "32"],
  ["-2.5", "-2.5"],
  ["0.000000", "0"],
])("shows %s as %s", (text, shown) => expect(worthShowing(text)).toBe(shown));

it.each([
  ["16155.50", "16,155", ".50"],
  ["-1234567", "−1,234,567", ""],
  ["999", "999", ""],
  ["0.30", "0", ".30"],
])("groups %s", (text, whole, fraction) => expect(grouped(text)).toEqual({ whole, fraction }));

it("makes room for the longest fraction of a column", () => {
  expect(placesOf(["32", "14.25", "0.5"])).toBe(2);
  expect(placesOf(["32", "100"])).toBe(0);
  expect(placesOf([])).toBe(0);
});

it.each(["", "1/2", "1e5", "NaN", "-", "."])("does not take %j for a decimal", (text) =>
  expect(decimalParts(text)).toBeNull(),
);
