import { expect, it } from "vitest";
import type { Planned, Usage } from "../queries";
import { whatWentIn } from "./whatWentIn";

const row = (material: number, amount: string) => ({
  material,
  material_name: `M${material}`,
  quantity: { amount, unit: "ml" },
});

it("sets what was used beside what was planned, to the last drop", () => {
  const rows = whatWentIn(
    [row(1, "532.323532"), row(2, "10")] as unknown as Planned[],
    [row(1, "500.000001"), row(1, "32.323532"), row(3, "5")] as unknown as Usage[],
  );
  expect(rows.map(({ name, used, difference }) => [name, used?.amount, difference])).toEqual([
    ["M1", "532.323533", "0.000001"],
    ["M2", undefined, null],
    ["M3", "5", null],
  ]);
});
