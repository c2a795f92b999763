import { Figure } from "@/components/figures";
import { asPreferred, unitShown, unitSpoken } from "@/components/figures/units";
import { useWays } from "@/components/figures/ways";
import type { TopMeasures } from "@/components/outline/measures";
import { Outline } from "@/components/outline/Outline";
import { type CountingRule, type Faces, facesOf } from "./faces";
import classes from "./top.module.css";

/** An area in the shop's unit, to a hundredth. */
export function Area({ sqft }: { sqft: number | string }) {
  const { units } = useWays();
  const shown = asPreferred({ amount: Number(sqft).toFixed(6), unit: "sqft" }, units);
  const [whole = "0", fraction = ""] = Number(shown.amount).toFixed(2).split(".");
  return (
    <Figure
      whole={whole}
      fraction={`.${fraction}`}
      unit={unitShown(shown.unit)}
      spoken={unitSpoken(shown.unit)}
    />
  );
}

const NAMES = { top: "Top", edges: "Edges", splash: "Splash", cutouts: "Cut-outs" } as const;

function isCounted(face: keyof typeof NAMES, rule: CountingRule): boolean {
  return {
    top: rule.counts_top,
    edges: rule.counts_edges,
    splash: rule.counts_splash,
    cutouts: rule.deducts_cutouts,
  }[face];
}

/** Each face by itself, and what counts of them. */
export function FacesList({ faces, rule }: { faces: Faces; rule: CountingRule }) {
  const shown = (["top", "edges", "splash", "cutouts"] as const).filter(
    (face) => face === "top" || faces[face] > 0,
  );
  return (
    <dl className={classes.faces}>
      {shown.map((face) => (
        <div key={face} data-left-out={!isCounted(face, rule) || undefined}>
          <dt>
            {NAMES[face]}
            {!isCounted(face, rule) && (face === "cutouts" ? ", not taken off" : ", not counted")}
            {face === "cutouts" && isCounted(face, rule) && ", taken off"}
          </dt>
          <dd>
            <Area sqft={faces[face]} />
          </dd>
        </div>
      ))}
      <div>
        <dt>Counted</dt>
        <dd>
          <Area sqft={faces.counted} />
        </dd>
      </div>
    </dl>
  );
}

interface TopPreviewProps {
  top: TopMeasures;
  name: string;
  rule: CountingRule;
  count?: number;
}

/** A top while it is being typed: to scale, with its square feet. */
export function TopPreview({ top, name, rule, count = 1 }: TopPreviewProps) {
  const faces = facesOf(top, rule);
  return (
    <div className={classes.preview}>
      {faces.top > 0 ? (
        <Outline top={top} name={name || "The top"} />
      ) : (
        <p className={classes.blank}>Drawn to scale as you type</p>
      )}
      <FacesList faces={faces} rule={rule} />
      {count > 1 && (
        <p className={classes.times}>
          {count} alike: <Area sqft={faces.counted * count} />
        </p>
      )}
    </div>
  );
}
