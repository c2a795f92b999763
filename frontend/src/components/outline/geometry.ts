import { dimensionsOf } from "./dimensions";
import {
  type Box,
  type Face,
  num,
  type OutlineDrawing,
  type Strip,
  type TopMeasures,
  type TopShape,
} from "./measures";

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
