import { expect, it } from "vitest";
import { layersOf } from "./Cup";

const part = (key: string, amount: string, unit: string) => ({
  key,
  name: key,
  colour: null,
  quantity: { amount, unit },
});

it("stacks what is stirred in by its size, the largest lowest, up to the brim", () => {
  const layers = layersOf([part("dye", "2", "ml"), part("A", "400", "ml"), part("B", "200", "ml")], 100, 0);
  expect(layers.map(({ key }) => key)).toEqual(["A", "B", "dye"]);
  expect(layers[0]?.bottom).toBe(100);
  expect(layers.at(-1)?.top).toBeCloseTo(0, 9);
  const [a, b] = layers.map(({ top, bottom }) => bottom - top - 2.5);
  expect((a ?? 0) / (b ?? 1)).toBeCloseTo(2, 9);
});

it("draws no gloves and no tape", () => {
  expect(layersOf([part("gloves", "2", "each"), part("tape", "21", "ft")])).toEqual([]);
});
