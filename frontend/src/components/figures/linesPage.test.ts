import { expect, it } from "vitest";
import { linesPage } from "./linesPage";

it("leads to the list of in and out, with the same filters", () => {
  expect(linesPage("/api/movements/?material=30&kind=used&kind=wasted")).toBe(
    "/figures/movements?material=30&kind=used&kind=wasted",
  );
});

it("leads to the lines of a cost, where the figure is one", () => {
  expect(linesPage("/api/reports/cost-per-sqft/movements/?group_by=month&key=2026-10")).toBe(
    "/figures/movements/cost?group_by=month&key=2026-10",
  );
});
