/**
 * The colours of the page, by what they are for. Pale stone in light, wet slate in dark, graphite ink, one deep kelp green;
 * amber says "look here", brick says "stop". Whatever else has a colour is a material's own swatch.
 */
export interface Palette {
  ground: string;
  sheet: string;
  raised: string;
  face: string;
  faceDeep: string;
  ink: string;
  inkSoft: string;
  /** The frame of the sheet and the heads of its parts. */
  frame: string;
  rule: string;
  ruleStrong: string;
  kelp: string;
  kelpFill: string;
  kelpFillHover: string;
  kelpWash: string;
  onKelp: string;
  amber: string;
  amberFill: string;
  onAmber: string;
  brick: string;
  brickFill: string;
  brickWash: string;
  onBrick: string;
}

export const light: Palette = {
  ground: "#dfe1dc",
  sheet: "#eff0ec",
  raised: "#f9faf7",
  face: "#d9dbd5",
  faceDeep: "#b9bdb7",
  ink: "#23282a",
  inkSoft: "#50585a",
  frame: "#23282a",
  rule: "#c6c9c2",
  ruleStrong: "#737b7b",
  kelp: "#1d513d",
  kelpFill: "#1d513d",
  kelpFillHover: "#153e2e",
  kelpWash: "#d8e4da",
  onKelp: "#f6f8f4",
  amber: "#754a00",
  amberFill: "#dc9a2e",
  onAmber: "#23282a",
  brick: "#962f1f",
  brickFill: "#962f1f",
  brickWash: "#f0e1db",
  onBrick: "#fbf6f4",
};

export const dark: Palette = {
  ground: "#151b1e",
  sheet: "#1d2427",
  raised: "#272f33",
  face: "#343d41",
  faceDeep: "#56636a",
  ink: "#e6e8e3",
  inkSoft: "#a8b1b2",
  frame: "#97a2a4",
  rule: "#364045",
  ruleStrong: "#7f8b8f",
  kelp: "#8acaa8",
  kelpFill: "#2f7557",
  kelpFillHover: "#276349",
  kelpWash: "#22382f",
  onKelp: "#f6f8f4",
  amber: "#e7b45a",
  amberFill: "#dc9a2e",
  onAmber: "#171c1e",
  brick: "#f0937f",
  brickFill: "#a83e2c",
  brickWash: "#3a2723",
  onBrick: "#fdf7f5",
};
