import { type Box, type Dimension, num, type Strip, type TopShape } from "./measures";

/** The dimension lines of a top: each measure once, on the side where a tape would lie. */
export function dimensionsOf(
  shape: TopShape,
  corners: [number, number][],
  box: Box,
  legs: readonly Strip[],
): Dimension[] {
  if (shape === "area only") return [];
  const right = box.x + box.width;
  const bottom = box.y + box.height;
  const across: Dimension = { from: [box.x, box.y], to: [right, box.y], side: "above", inches: box.width };
  if (shape === "circle") return [across];
  if (shape === "rectangle") {
    return [across, { from: [right, box.y], to: [right, bottom], side: "right", inches: box.height }];
  }
  const depth = num(legs[shape === "u" ? 1 : 0]?.width_in);
  const footWidth = num(legs[shape === "u" ? 0 : 1]?.width_in);
  const foot = shape === "u" ? num(legs[0]?.length_in) : bottom;
  const dims: Dimension[] = [
    across,
    { from: [0, 0], to: [0, foot], side: "left", inches: foot },
    { from: [0, foot], to: [footWidth, foot], side: "below", inches: footWidth },
  ];
  const [, , third] = legs;
  if (shape === "u" && third) {
    const [length, width] = [num(third.length_in), num(third.width_in)];
    dims.push({ from: [right, 0], to: [right, length], side: "right", inches: length });
    dims.push({ from: [right - width, length], to: [right, length], side: "below", inches: width });
  } else {
    dims.push({ from: [right, 0], to: [right, depth], side: "right", inches: depth });
  }
  return corners.length > 0 ? dims : [];
}

const PARTS: Record<number, string> = { 2: "⅛", 4: "¼", 6: "⅜", 8: "½", 10: "⅝", 12: "¾", 14: "⅞" };

/** Inches as a tape shows them: 25.5 is 25½″; what is no eighth stays a decimal. */
export function inchesShown(inches: number): string {
  const whole = Math.floor(inches);
  const sixteenths = Math.round((inches - whole) * 16 * 1000) / 1000;
  if (sixteenths === 0) return `${whole}″`;
  const part = PARTS[sixteenths];
  return part ? `${whole || ""}${part}″` : `${Math.round(inches * 1000) / 1000}″`;
}
