import { dimensionOf, type PreferredUnits } from "../figures/units";

/** Of a material, what decides how amounts of it may be said. */
export interface MeasuredMaterial {
  id: number;
  stock_unit: string;
  density_g_per_ml?: string | null;
  grams_per_tsp?: string | null;
  measures?: readonly { name: string }[];
}

/** The units to offer for a material, the shop's own first: those that can be turned into its stock unit. */
export function unitsOf(material: MeasuredMaterial, preferred: PreferredUnits): string[] {
  const dimension = dimensionOf(material.stock_unit);
  const offered: string[] = [];
  if (dimension === "volume") {
    offered.push(preferred.volume, "gal", "qt", "ml");
    if (material.density_g_per_ml) offered.push("g");
  } else if (dimension === "mass") {
    offered.push(preferred.mass, "g", "lb");
    if (material.grams_per_tsp) offered.push("tsp");
  } else if (dimension === "length") offered.push("ft", "in");
  else offered.push(material.stock_unit);
  return [...new Set(offered)];
}
