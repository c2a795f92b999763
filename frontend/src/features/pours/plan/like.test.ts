import { expect, it } from "vitest";
import type { PourRow } from "../queries";
import { areaOf, nearestFirst } from "./like";

function pour(id: number, job: number, customer_name: string, area_sqft = "3.000000"): PourRow {
  return { id, pieces: [{ job, customer_name, area_sqft }] } as unknown as PourRow;
}

it("adds areas exactly", () => {
  const tops = [{ area_sqft: "6.809028" }, { area_sqft: "0.190972" }, { area_sqft: "0.333333" }];
  expect(areaOf({ pieces: tops } as unknown as PourRow)).toBe("7.333333");
  expect(areaOf({ pieces: [] } as unknown as PourRow)).toBe("0.000000");
});

it("puts the same job before the same customer before whatever came last", () => {
  const rows = [pour(1, 8, "Ann"), pour(2, 7, "Bea"), pour(3, 5, "Cal"), pour(4, 8, "Bea")];
  expect(nearestFirst(rows, [5], ["Bea"]).map(({ id }) => id)).toEqual([3, 2, 4, 1]);
});
