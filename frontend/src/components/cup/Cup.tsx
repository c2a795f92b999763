import { type Amount, converted } from "../figures";
import { toScale } from "../figures/decimal";
import { colourOf } from "../notes/Swatch";
import classes from "./cup.module.css";

export interface CupPart {
  key: string;
  name: string;
  colour: string | null | undefined;
  quantity: Amount;
}

/** Near enough in mL to draw with: what is weighed counts a millilitre for a gram. Nothing for what is not stirred in. */
function size({ quantity }: CupPart): number {
  const volume = converted(quantity, "ml") ?? converted(quantity, "g");
  return volume ? toScale(volume.amount) : 0;
}

const WIDTH = 132;
const HEIGHT = 150;
const FLOOR = 142;
const BRIM = 16;
const LEAST = 2.5;
/** How much the wall leans in from brim to floor. */
const LEAN = 15;

export interface CupLayer extends CupPart {
  top: number;
  bottom: number;
}

/** The parts stacked in their true proportions, the largest lowest; a pinch of colour keeps a line that can be seen. */
export function layersOf(parts: readonly CupPart[], floor = FLOOR, brim = BRIM + 14): CupLayer[] {
  const poured = parts.filter((part) => size(part) > 0).sort((a, b) => size(b) - size(a));
  const whole = poured.reduce((sum, part) => sum + size(part), 0);
  const room = floor - brim - LEAST * poured.length;
  let bottom = floor;
  return poured.map((part) => {
    const top = bottom - LEAST - (room * size(part)) / whole;
    const layer = { ...part, top, bottom };
    bottom = top;
    return layer;
  });
}

function sideAt(y: number): number {
  return (LEAN * (y - BRIM)) / (FLOOR - BRIM);
}

/** What goes into the bucket, as the bucket: its colours stacked in their true proportions. */
export function Cup({ parts, name }: { parts: readonly CupPart[]; name: string }) {
  const layers = layersOf(parts);
  if (layers.length === 0) return null;
  const left = (y: number) => 8 + sideAt(y);
  const right = (y: number) => WIDTH - 8 - sideAt(y);
  return (
    <svg
      className={classes.cup}
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`${name}: ${layers.map((layer) => layer.name).join(", ")}`}
    >
      {layers.map(({ key, colour, top, bottom }) => (
        <path
          key={key}
          d={`M${left(top)} ${top}H${right(top)}L${right(bottom)} ${bottom}H${left(bottom)}Z`}
          fill={colourOf(colour) ?? "var(--face-deep)"}
          className={classes.part}
        />
      ))}
      <path
        d={`M6 ${BRIM}H${left(BRIM)}L${left(FLOOR)} ${FLOOR}H${right(FLOOR)}L${right(BRIM)} ${BRIM}H${WIDTH - 6}`}
        className={classes.wall}
      />
    </svg>
  );
}
