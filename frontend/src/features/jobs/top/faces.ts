import { num, type TopMeasures } from "@/components/outline/measures";

/** Which faces count as area on a job. */
export interface CountingRule {
  counts_top: boolean;
  counts_edges: boolean;
  counts_splash: boolean;
  deducts_cutouts: boolean;
}

/** Square feet of each face, and what counts. To look at while typing; what is kept is reckoned on the server. */
export interface Faces {
  top: number;
  edges: number;
  splash: number;
  cutouts: number;
  counted: number;
}

const SQUARE_INCHES = 144;

function topInches(top: TopMeasures): number {
  const [a, b] = top.legs ?? [];
  if (a && b) {
    // The corner lies in both legs and counts once.
    const corner = num(a.width_in) * num(b.width_in);
    return num(a.length_in) * num(a.width_in) + num(b.length_in) * num(b.width_in) - corner;
  }
  if (num(top.diameter_in)) return (Math.PI * num(top.diameter_in) ** 2) / 4;
  if (num(top.area_sqft)) return num(top.area_sqft) * SQUARE_INCHES;
  return num(top.length_in) * num(top.width_in);
}

/** The faces of a top under a counting rule. */
export function facesOf(top: TopMeasures, rule: CountingRule): Faces {
  const upright = (faces: TopMeasures["edges"]) =>
    (faces ?? []).reduce((sum, face) => sum + num(face.length_in) * num(face.height_in), 0) / SQUARE_INCHES;
  const cut = (top.cutouts ?? []).reduce((sum, strip) => sum + num(strip.length_in) * num(strip.width_in), 0);
  const faces = {
    top: topInches(top) / SQUARE_INCHES,
    edges: upright(top.edges),
    splash: upright(top.splash),
    cutouts: cut / SQUARE_INCHES,
  };
  const counted =
    (rule.counts_top ? faces.top - (rule.deducts_cutouts ? faces.cutouts : 0) : 0) +
    (rule.counts_edges ? faces.edges : 0) +
    (rule.counts_splash ? faces.splash : 0);
  return { ...faces, counted: Math.max(0, counted) };
}
