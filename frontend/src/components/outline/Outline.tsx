import { useId } from "react";
import { DimensionLines } from "./DimensionLines";
import { inchesShown } from "./dimensions";
import { drawOutline } from "./geometry";
import type { TopMeasures } from "./measures";
import classes from "./outline.module.css";

interface OutlineProps {
  top: TopMeasures;
  /** What this top is called: said first to whoever cannot see the drawing. */
  name: string;
  /** The colour it is poured in, where that is known. */
  colour?: string | undefined;
  /** Draw the measures beside it. */
  hasDimensions?: boolean;
}

const SHAPES = {
  rectangle: "top",
  l: "L-shaped top",
  u: "U-shaped top",
  circle: "round top",
  "area only": "top known by its area only",
};

/** The drawing in words: what a screen reader says, and what stands under it in print. */
export function outlineInWords(top: TopMeasures, name: string): string {
  const { shape } = drawOutline(top);
  const legs = (top.legs ?? []).map((leg) => `${leg.length_in} by ${leg.width_in} in`).join(" and ");
  const size =
    shape === "circle"
      ? `${top.diameter_in} in across`
      : shape === "area only"
        ? top.area_sqft
          ? `${top.area_sqft} sq ft`
          : "no size yet"
        : legs || `${top.length_in} by ${top.width_in} in`;
  const counted = (what: string, faces: readonly unknown[] | null | undefined) =>
    faces?.length ? [`${faces.length} ${what}${faces.length > 1 ? "s" : ""}`] : [];
  const extras = [
    ...counted("cut-out", top.cutouts),
    ...counted("edge", top.edges),
    ...counted("splash strip", top.splash),
  ];
  return [`${name}: ${SHAPES[shape]}, ${size}`, ...extras].join("; ");
}

/** A top laid out flat and to scale: its faces folded open, its cut-outs dashed, its measures on dimension lines. */
export function Outline({ top, name, colour, hasDimensions = true }: OutlineProps) {
  const hatch = useId();
  const drawing = drawOutline(top);
  const { bounds, corners, circle } = drawing;
  const size = Math.max(bounds.width, bounds.height) || 1;
  const text = size * 0.042;
  const margin = hasDimensions ? text * 3.4 : size * 0.01;
  const box = [bounds.x - margin, bounds.y - margin, bounds.width + 2 * margin, bounds.height + 2 * margin];
  const isGuess = drawing.shape === "area only";
  const face = { fill: colour ?? "var(--face)", className: isGuess ? classes.guess : classes.top };
  return (
    <figure className={classes.outline}>
      <svg
        viewBox={box.join(" ")}
        role="img"
        aria-label={outlineInWords(top, name)}
        preserveAspectRatio="xMidYMid meet"
      >
        <defs>
          <pattern
            id={hatch}
            width={size / 60}
            height={size / 60}
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <line x1="0" y1="0" x2="0" y2={size / 60} className={classes.hatch} />
          </pattern>
        </defs>
        {circle ? (
          <circle {...circle} {...face} />
        ) : (
          <polygon points={corners.map((point) => point.join(",")).join(" ")} {...face} />
        )}
        {[...drawing.splash, ...drawing.edges].map((strip) => (
          <g key={`${strip.x} ${strip.y}`}>
            <rect {...strip} {...face} />
            <rect {...strip} fill={`url(#${hatch})`} className={classes.folded} />
          </g>
        ))}
        {drawing.cutouts.map((cutout) => (
          <g key={cutout.x}>
            <rect {...cutout} className={classes.cutout} />
            <path
              d={`M${cutout.x} ${cutout.y}l${cutout.width} ${cutout.height}m0 ${-cutout.height}l${-cutout.width} ${cutout.height}`}
              className={classes.cross}
            />
          </g>
        ))}
        {isGuess && (
          <text
            x={bounds.x + bounds.width / 2}
            y={bounds.y + bounds.height / 2}
            fontSize={text * 1.3}
            className={classes.text}
          >
            {top.area_sqft ? `${top.area_sqft} sq ft` : "no size yet"}
          </text>
        )}
        {hasDimensions && <DimensionLines drawing={drawing} text={text} format={inchesShown} />}
      </svg>
    </figure>
  );
}
