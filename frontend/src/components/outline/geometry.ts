/** A top's measures in inches, as the job keeps them: decimal text. */
export interface TopMeasures {
  length_in?: string | null;
  width_in?: string | null;
  legs?: readonly Strip[] | null;
  diameter_in?: string | null;
  area_sqft?: string | null;
  cutouts?: readonly Strip[] | null;
  edges?: readonly Face[] | null;
  splash?: readonly Face[] | null;
}
export interface Strip {
  length_in: string;
  width_in: string;
}
export interface Face {
  length_in: string;
  height_in: string;
}

export interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** A dimension line: from one point to another, standing off to one side, with its text. */
export interface Dimension {
  from: [number, number];
  to: [number, number];
  side: "above" | "below" | "left" | "right";
  inches: number;
}

export type TopShape = "rectangle" | "l" | "u" | "circle" | "area only";

/** Everything that is drawn, in inches, x to the right and y down. */
export interface OutlineDrawing {
  shape: TopShape;
  /** Corners of the top; a circle has none. */
  corners: [number, number][];
  circle: { cx: number; cy: number; r: number } | null;
  cutouts: Box[];
  splash: Box[];
  edges: Box[];
  dimensions: Dimension[];
  bounds: Box;
}

const num = (text: string | null | undefined) => Number(text ?? 0) || 0;

function rectangle(length: number, width: number): [number, number][] {
  return [
    [0, 0],
    [length, 0],
    [length, width],
    [0, width],
  ];
}

/** Leg A along the wall, leg B down from its left end; both measured to the outside corner, which counts once. */
function lShape(a: [number, number], b: [number, number]): [number, number][] {
  const [lengthA, widthA] = a;
  const [lengthB, widthB] = b;
  return [
    [0, 0],
    [lengthA, 0],
    [lengthA, widthA],
    [widthB, widthA],
    [widthB, lengthB],
    [0, lengthB],
  ];
}

/** Three legs: the middle one along the wall, the first down from its left end and the last down from its right end. */
function uShape(a: [number, number], b: [number, number], c: [number, number]): [number, number][] {
  const [lengthA, widthA] = a;
  const [lengthB, widthB] = b;
  const [lengthC, widthC] = c;
  return [
    [0, 0],
    [lengthB, 0],
    [lengthB, lengthC],
    [lengthB - widthC, lengthC],
    [lengthB - widthC, widthB],
    [widthA, widthB],
    [widthA, lengthA],
    [0, lengthA],
  ];
}

/** Area inside the corners, in square inches (the shoelace formula). */
export function areaOf(corners: readonly [number, number][]): number {
  const twice = corners.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = corners[(i + 1) % corners.length] ?? [0, 0];
    return sum + x * nextY - nextX * y;
  }, 0);
  return Math.abs(twice) / 2;
}

function span(corners: readonly [number, number][]): Box {
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const x = Math.min(...xs);
  const y = Math.min(...ys);
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

/** Cut-outs carry no place of their own: they are spread evenly along the first run, centred in its depth. */
function spread(cutouts: readonly Strip[], run: Box): Box[] {
  return cutouts.map((cutout, i) => {
    const width = num(cutout.length_in);
    const height = num(cutout.width_in);
    const centre = run.x + (run.width * (i + 1)) / (cutouts.length + 1);
    return { x: centre - width / 2, y: run.y + (run.height - height) / 2, width, height };
  });
}

/** A face longer than the top is cut into runs that lie under one another, each no longer than the top. */
function inRuns(faces: readonly Face[], longest: number): [number, number][] {
  return faces.flatMap((face) => {
    const [length, height] = [num(face.length_in), num(face.height_in)];
    if (longest <= 0 || length <= longest) return [[length, height] as [number, number]];
    const whole = Math.floor(length / longest);
    const rest = length - whole * longest;
    const runs = Array.from({ length: whole }, (): [number, number] => [longest, height]);
    return rest > 0 ? [...runs, [rest, height] as [number, number]] : runs;
  });
}

/** Faces folded out flat: splash strips above the top, edges below, one under another. */
function unfolded(
  strips: readonly [number, number][],
  left: number,
  start: number,
  gap: number,
  upward: boolean,
): Box[] {
  let y = start;
  return strips.map(([width, height]) => {
    y += upward ? -(gap + height) : gap;
    const box = { x: left, y, width, height };
    if (!upward) y += height;
    return box;
  });
}

function shapeOf(top: TopMeasures): { shape: TopShape; corners: [number, number][]; run: Box } {
  const legs = (top.legs ?? []).map((leg): [number, number] => [num(leg.length_in), num(leg.width_in)]);
  const [a, b, c] = legs;
  if (a && b && c) {
    return {
      shape: "u",
      corners: uShape(a, b, c),
      run: { x: a[1], y: 0, width: b[0] - a[1] - c[1], height: b[1] },
    };
  }
  if (a && b)
    return { shape: "l", corners: lShape(a, b), run: { x: b[1], y: 0, width: a[0] - b[1], height: a[1] } };
  const diameter = num(top.diameter_in);
  if (diameter)
    return { shape: "circle", corners: [], run: { x: 0, y: 0, width: diameter, height: diameter } };
  const length = num(top.length_in) || (a?.[0] ?? 0);
  const width = num(top.width_in) || (a?.[1] ?? 0);
  if (length && width)
    return {
      shape: "rectangle",
      corners: rectangle(length, width),
      run: { x: 0, y: 0, width: length, height: width },
    };
  const side = Math.sqrt(num(top.area_sqft) * 144);
  return {
    shape: "area only",
    corners: rectangle(side, side),
    run: { x: 0, y: 0, width: side, height: side },
  };
}

function dimensionsOf(
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

/** Lays a top out flat, to scale. */
export function drawOutline(top: TopMeasures): OutlineDrawing {
  const { shape, corners, run } = shapeOf(top);
  const box = shape === "circle" ? run : span(corners);
  const gap = Math.max(box.width, box.height) * 0.045;
  const cutouts = spread(top.cutouts ?? [], run);
  const room = gap * 2.6;
  const splash = unfolded(
    inRuns(top.splash ?? [], box.width),
    box.x,
    box.y - (shape === "area only" ? 0 : room),
    gap,
    true,
  );
  const edges = unfolded(
    inRuns(top.edges ?? [], box.width),
    box.x,
    box.y + box.height + (shape === "l" || shape === "u" ? room : 0),
    gap,
    false,
  );
  const all = [box, ...splash, ...edges];
  const x = Math.min(...all.map((each) => each.x));
  const y = Math.min(...all.map((each) => each.y));
  return {
    shape,
    corners,
    circle: shape === "circle" ? { cx: run.width / 2, cy: run.height / 2, r: run.width / 2 } : null,
    cutouts,
    splash,
    edges,
    dimensions: dimensionsOf(shape, corners, box, top.legs ?? []),
    bounds: {
      x,
      y,
      width: Math.max(...all.map((each) => each.x + each.width)) - x,
      height: Math.max(...all.map((each) => each.y + each.height)) - y,
    },
  };
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
