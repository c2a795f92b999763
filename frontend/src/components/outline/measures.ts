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

/** For drawing only: a measure as a number, 0 where there is none. */
export const num = (text: string | null | undefined) => Number(text ?? 0) || 0;
