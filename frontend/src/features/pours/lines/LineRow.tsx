import { type ReactNode, useId } from "react";
import { Swatch } from "@/components/notes/Swatch";
import type { Line } from "./line";
import classes from "./lines.module.css";

interface LineRowProps {
  line: Line;
  name: string;
  swatch: string | null | undefined;
  isOpen: boolean;
  onToggle: () => void;
  under?: ReactNode;
  error?: ReactNode;
  /** How an amount is called that nobody has touched. */
  assumed: string;
}

/** The amount in words; two weighings where the container was put on the scale. */
function amountIn({ quantity, weighed }: Line): string {
  if (!weighed) return quantity.text || "how much?";
  const [before, after] = [weighed.before.text, weighed.after.text];
  return before && after ? `${before} → ${after}` : "on the scale";
}

function Known({ line, assumed }: { line: Line; assumed: string }) {
  if (line.weighed) return <span className={classes.known}>weighed</span>;
  if (!line.is_touched) return <span className={classes.known}>{assumed}</span>;
  return (
    <span className={classes.known} data-said="">
      ✓ said
    </span>
  );
}

/** One amount, closed: what, how much, how that is known, and from where. */
export function LineRow({ line, name, swatch, isOpen, onToggle, under, error, assumed }: LineRowProps) {
  const id = useId();
  return (
    <div className={classes.row}>
      <button
        type="button"
        aria-expanded={isOpen}
        aria-describedby={`${id}under`}
        onClick={onToggle}
        className={classes.open}
      >
        <Swatch colour={swatch} />
        <span className={classes.name}>
          {name}
          {line.is_waste && <em> wasted</em>}
        </span>
        <span className={classes.amount} data-assumed={(!line.is_touched && !line.weighed) || undefined}>
          {amountIn(line)}
        </span>
        <svg viewBox="0 0 16 16" aria-hidden="true">
          <path d="M4 6l4 4 4-4" />
        </svg>
      </button>
      <div className={classes.under} id={`${id}under`}>
        <span>{under}</span>
        <Known line={line} assumed={assumed} />
      </div>
      {error && (
        <p className={classes.wrong} role="alert">
          {error}
        </p>
      )}
    </div>
  );
}
