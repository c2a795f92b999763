import { describe, expect, it } from "vitest";
import { inchesShown } from "./dimensions";
import { areaOf, drawOutline } from "./geometry";
import { outlineInWords } from "./Outline";

const sqft = (corners: [number, number][]) => areaOf(corners) / 144;

describe("the outline of a top", () => {
  it("has the area of its rectangle", () =>
    expect(sqft(drawOutline({ length_in: "120", width_in: "25.5" }).corners)).toBe(21.25));

  it("counts the corner of an L once: 120 and 60 in legs, 25.5 deep, are 27.359375 sq ft", () => {
    const { shape, corners } = drawOutline({
      legs: [
        { length_in: "120", width_in: "25.5" },
        { length_in: "60", width_in: "25.5" },
      ],
    });
    expect(shape).toBe("l");
    expect(sqft(corners)).toBe(27.359375);
  });

  it("counts both corners of a U once", () => {
    const leg = (length_in: string) => ({ length_in, width_in: "24" });
    const { shape, corners } = drawOutline({ legs: [leg("60"), leg("120"), leg("48")] });
    expect(shape).toBe("u");
    expect(areaOf(corners)).toBe(60 * 24 + 120 * 24 + 48 * 24 - 2 * 24 * 24);
  });

  it("is a circle where a diameter is given", () =>
    expect(drawOutline({ diameter_in: "42" }).circle).toEqual({ cx: 21, cy: 21, r: 21 }));

  it("is a dashed square of the right size where only the area is known", () => {
    const { shape, corners, dimensions } = drawOutline({ area_sqft: "16" });
    expect(shape).toBe("area only");
    expect(sqft(corners)).toBeCloseTo(16, 9);
    expect(dimensions).toEqual([]);
  });

  it("is drawn even before any measure is typed", () =>
    expect(drawOutline({}).bounds).toMatchObject({ width: 0, height: 0 }));
});

describe("what belongs to a top", () => {
  const top = {
    length_in: "72",
    width_in: "36",
    cutouts: [
      { length_in: "30", width_in: "18" },
      { length_in: "10", width_in: "10" },
    ],
    splash: [{ length_in: "72", height_in: "4" }],
    edges: [{ length_in: "216", height_in: "1.5" }],
  };

  it("keeps cut-outs inside and apart", () => {
    const [first, second] = drawOutline(top).cutouts;
    expect(first).toMatchObject({ width: 30, height: 18, y: 9 });
    expect((first?.x ?? 0) + 30).toBeLessThan(second?.x ?? 0);
    expect((second?.x ?? 0) + 10).toBeLessThan(72);
  });

  it("lays splash above the top and edges below, none over it", () => {
    const { splash, edges } = drawOutline(top);
    for (const strip of splash) expect(strip.y + strip.height).toBeLessThan(0);
    for (const strip of edges) expect(strip.y).toBeGreaterThan(36);
  });

  it("cuts an edge that is longer than the top into runs of the same length in all", () => {
    const { edges } = drawOutline(top);
    expect(edges.map(({ width }) => width)).toEqual([72, 72, 72]);
  });

  it("stays within the bounds of the drawing", () => {
    const { bounds, splash, edges } = drawOutline(top);
    for (const box of [...splash, ...edges]) {
      expect(box.y).toBeGreaterThanOrEqual(bounds.y);
      expect(box.y + box.height).toBeLessThanOrEqual(bounds.y + bounds.height + 1e-9);
    }
  });
});

it.each([
  [25.5, "25½″"],
  [0.75, "¾″"],
  [120, "120″"],
  [12.3, "12.3″"],
  [1.125, "1⅛″"],
])("writes %d inches as a tape shows them", (inches, shown) => expect(inchesShown(inches)).toBe(shown));

it("says in words what it draws", () => {
  expect(
    outlineInWords(
      { length_in: "72", width_in: "36", splash: [{ length_in: "72", height_in: "4" }] },
      "Island",
    ),
  ).toBe("Island: top, 72 by 36 in; 1 splash strip");
  expect(outlineInWords({}, "Vanity")).toBe("Vanity: top known by its area only, no size yet");
});
