import type { Dimension, OutlineDrawing } from "./measures";
import classes from "./outline.module.css";

interface DimensionsProps {
  drawing: OutlineDrawing;
  /** Height of the lettering, in inches of the drawing. */
  text: number;
  format: (inches: number) => string;
}

const AWAY: Record<Dimension["side"], [number, number]> = {
  above: [0, -1],
  below: [0, 1],
  left: [-1, 0],
  right: [1, 0],
};

/** One dimension line with slashed ends, standing off its edge, the measure in a gap of the line. */
function DimensionLine({
  dimension,
  text,
  format,
}: {
  dimension: Dimension;
  text: number;
  format: DimensionsProps["format"];
}) {
  const [dx, dy] = AWAY[dimension.side];
  const off = text * 1.5;
  const [x1, y1] = [dimension.from[0] + dx * off, dimension.from[1] + dy * off];
  const [x2, y2] = [dimension.to[0] + dx * off, dimension.to[1] + dy * off];
  const isUpright = dx !== 0;
  const label = format(dimension.inches);
  const room = (label.length * text * 0.6 + text) / 2;
  const [mx, my] = [(x1 + x2) / 2, (y1 + y2) / 2];
  const isShort = Math.abs(x2 - x1) + Math.abs(y2 - y1) < room * 3;
  const gap = isUpright
    ? `M${x1} ${y1}V${my - room}M${x1} ${my + room}V${y2}`
    : `M${x1} ${y1}H${mx - room}M${mx + room} ${y1}H${x2}`;
  const line = isShort ? `M${x1} ${y1}L${x2} ${y2}` : gap;
  const at: [number, number] = isShort ? [mx + dx * text * 0.9, my + dy * text * 0.9] : [mx, my];
  const tick = (x: number, y: number) =>
    `M${x - text * 0.28} ${y + text * 0.28}l${text * 0.56} ${-text * 0.56}`;
  const witness = (x: number, y: number) =>
    `M${x + dx * text * 0.5} ${y + dy * text * 0.5}l${dx * (off - text * 0.1)} ${dy * (off - text * 0.1)}`;
  return (
    <g>
      <path
        className={classes.dimension}
        d={`${line}${witness(...dimension.from)}${witness(...dimension.to)}`}
      />
      <path className={classes.tick} d={`${tick(x1, y1)}${tick(x2, y2)}`} />
      <text
        x={at[0]}
        y={at[1]}
        fontSize={text}
        className={classes.text}
        transform={isUpright ? `rotate(-90 ${at[0]} ${at[1]})` : undefined}
      >
        {label}
      </text>
    </g>
  );
}

export function DimensionLines({ drawing, text, format }: DimensionsProps) {
  return (
    <g>
      {drawing.dimensions.map((dimension) => (
        <DimensionLine
          key={`${dimension.side} ${dimension.from}`}
          dimension={dimension}
          text={text}
          format={format}
        />
      ))}
    </g>
  );
}
