import { type ReactNode, useId, useState } from "react";
import classes from "./notes.module.css";

interface WhyProps {
  /** The figure itself. */
  figure: ReactNode;
  /** What is opened: "how this cost came about". */
  label: string;
  children: ReactNode;
}

/** A figure that can be asked why: a tap opens how it came about, right beneath it. */
export function Why({ figure, label, children }: WhyProps) {
  const [isOpen, setOpen] = useState(false);
  const id = useId();
  return (
    <div className={classes.why}>
      <button type="button" aria-expanded={isOpen} aria-controls={id} onClick={() => setOpen(!isOpen)}>
        {figure}
        <span className="only-read-aloud">, {label}</span>
        <svg viewBox="0 0 16 16" aria-hidden="true">
          <path d="M4 6l4 4 4-4" />
        </svg>
      </button>
      <section id={id} hidden={!isOpen} aria-label={label} className={classes.because}>
        {isOpen && children}
      </section>
    </div>
  );
}

export interface ReckoningLine {
  label: ReactNode;
  figure: ReactNode;
  note?: ReactNode;
}

/** A sum as it is done on paper: its lines, a rule, and what they come to. */
export function Reckoning({ lines, total }: { lines: readonly ReckoningLine[]; total?: ReckoningLine }) {
  return (
    <dl className={classes.reckoning}>
      {lines.map((line, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the lines of one sum never change places
        <div key={i}>
          <dt>
            {line.label}
            {line.note && <small>{line.note}</small>}
          </dt>
          <dd>{line.figure}</dd>
        </div>
      ))}
      {total && (
        <div className={classes.total}>
          <dt>
            {total.label}
            {total.note && <small>{total.note}</small>}
          </dt>
          <dd>{total.figure}</dd>
        </div>
      )}
    </dl>
  );
}
