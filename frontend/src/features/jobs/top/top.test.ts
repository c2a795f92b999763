import { expect, it } from "vitest";
import { facesOf } from "./faces";
import { drawable, missingOf, NEW_TOP, newTopBody, topBody, typedOf } from "./topTyped";

const ALL = { counts_top: true, counts_edges: true, counts_splash: true, deducts_cutouts: false };

it("counts the corner of an L once", () => {
  const legs: [{ length_in: string; width_in: string }, { length_in: string; width_in: string }] = [
    { length_in: "120", width_in: "25 1/2" },
    { length_in: "60", width_in: "25.5" },
  ];
  const faces = facesOf(drawable({ ...NEW_TOP, form: "l", legs }), ALL);
  expect(faces.top).toBeCloseTo(27.359375, 9);
});

it("keeps top, edges and splash apart and counts them by the job's rule", () => {
  const top = drawable({
    ...NEW_TOP,
    length_in: "120",
    width_in: "25.5",
    edges: [{ length_in: "120", height_in: "1.5" }],
    splash: [{ length_in: "120", height_in: "4" }],
    cutouts: [{ length_in: "24", width_in: "18" }],
  });
  expect(facesOf(top, ALL)).toMatchObject({ top: 21.25, edges: 1.25, cutouts: 3 });
  expect(facesOf(top, ALL).counted).toBeCloseTo(155 / 6, 9);
  expect(facesOf(top, { ...ALL, counts_splash: false, deducts_cutouts: true }).counted).toBeCloseTo(19.5, 9);
});

it("sends only the measures of the chosen form, and no row left empty", () => {
  const typed = { ...NEW_TOP, name: " Island ", length_in: "72", diameter_in: "40", count: "3" };
  const body = newTopBody({ ...typed, edges: [{ length_in: "", height_in: "" }] });
  expect(body).toEqual({
    name: "Island",
    area_source: "quoted",
    length_in: "72",
    width_in: "25.5",
    edges: [],
    splash: [],
    cutouts: [],
    count: 3,
  });
  expect(topBody({ ...typed, form: "round" })).not.toHaveProperty("length_in");
});

it("says what is missing where it is missing", () => {
  expect(Object.keys(missingOf({ ...NEW_TOP, form: "l" }))).toEqual([
    "name",
    "legs.0.length_in",
    "legs.1.length_in",
  ]);
  expect(missingOf({ ...NEW_TOP, name: "Bar", length_in: "six feet" })).toHaveProperty("length_in");
  expect(missingOf({ ...NEW_TOP, name: "Bar", length_in: "72 1/2" })).toEqual({});
});

it("types over a top on record as it was given", () => {
  const typed = typedOf({ name: "Table", area_source: "final", shape: { diameter_in: "48" } });
  expect(typed).toMatchObject({ form: "round", diameter_in: "48", area_source: "final" });
});
