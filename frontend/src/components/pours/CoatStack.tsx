import classes from "./pours.module.css";
import { coatLabel } from "./words";

export interface LaidCoat {
  pour: number;
  coat: string;
  isPoured: boolean;
}

/** How thick a coat is drawn, in px: a flood coat is what one sees of a top, paint is a film. */
const THICK: Record<string, number> = { flood_coat: 12, top_coat: 6, seal_coat: 5, base_coat: 4, primer: 3 };
const BOARD = 12;
const GAP = 1.5;

/** A section through a top: the board below, and over it each coat in the order in which it was laid. */
export function CoatStack({ coats, name }: { coats: readonly LaidCoat[]; name: string }) {
  const heights = coats.map(({ coat }) => THICK[coat] ?? 4);
  const height = heights.reduce((sum, each) => sum + each + GAP, BOARD) + 2;
  const words = coats.map(({ coat, isPoured }) => `${coatLabel(coat)}${isPoured ? "" : ", planned"}`);
  let y = height - BOARD - 1;
  return (
    <div className={classes.stack}>
      <svg
        viewBox={`0 0 120 ${height}`}
        preserveAspectRatio="none"
        style={{ height }}
        role="img"
        aria-label={`Section through ${name}: ${words.length ? words.join(", ") : "no coat yet"}`}
      >
        <rect x="1" y={y} width="118" height={BOARD} className={classes.board} />
        {coats.map(({ pour, isPoured }, i) => {
          y -= (heights[i] ?? 0) + GAP;
          return (
            <rect
              key={pour}
              x="1"
              y={y}
              width="118"
              height={heights[i]}
              className={isPoured ? classes.coat : classes.coming}
            />
          );
        })}
      </svg>
      <small aria-hidden="true">{words.length ? words.toReversed().join(" · ") : "No coat yet"}</small>
    </div>
  );
}
