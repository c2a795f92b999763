import { describe, expect, it } from "vitest";
import { contrast } from "./contrast";
import { dark, light, type Palette } from "./palette";

const GROUNDS = ["ground", "sheet", "raised"] as const satisfies readonly (keyof Palette)[];
const LETTERING = ["ink", "inkSoft", "kelp", "amber", "brick"] as const satisfies readonly (keyof Palette)[];

describe.each([
  ["light", light],
  ["dark", dark],
] as const)("the %s palette", (_, palette) => {
  it.each(LETTERING.flatMap((text) => GROUNDS.map((ground) => [text, ground] as const)))(
    "lets %s be read on %s (AA, 4.5:1)",
    (text, ground) => expect(contrast(palette[text], palette[ground])).toBeGreaterThanOrEqual(4.5),
  );

  it.each([
    ["onKelp", "kelpFill"],
    ["onKelp", "kelpFillHover"],
    ["onAmber", "amberFill"],
    ["onBrick", "brickFill"],
    ["ink", "kelpWash"],
    ["kelp", "kelpWash"],
    ["ink", "brickWash"],
    ["brick", "brickWash"],
    ["ink", "face"],
  ] as const)("lets %s be read on %s (AA, 4.5:1)", (text, ground) =>
    expect(contrast(palette[text], palette[ground])).toBeGreaterThanOrEqual(4.5),
  );

  it.each(GROUNDS)("shows the edge of a field on %s (3:1)", (ground) =>
    expect(contrast(palette.ruleStrong, palette[ground])).toBeGreaterThanOrEqual(3),
  );
});

it("measures black on white as 21:1 and a colour on itself as 1:1", () => {
  expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 5);
  expect(contrast("#8acaa8", "#8acaa8")).toBe(1);
});
