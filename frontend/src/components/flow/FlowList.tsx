import type { ReactNode } from "react";
import { Link } from "react-router";
import { type Amount, Quantity, useAlignment } from "../figures";
import { toScale } from "../figures/decimal";
import classes from "./flow.module.css";

export type FlowKind = "lot" | "blend" | "pour" | "piece" | "board";

/** One stop of a trace: what it is, how much flowed into it, and where it went on to. */
export interface FlowStop {
  key: string;
  kind: FlowKind;
  title: ReactNode;
  /** The page of this lot, pour or top. */
  to?: string;
  quantity?: Amount | null;
  note?: ReactNode;
  marks?: ReactNode;
  next?: readonly FlowStop[];
}

const SIGNS: Record<FlowKind, string> = {
  lot: "M5 5h14l-1.5 15h-11zM6 10h12",
  blend: "M4 4l6 8v8h4v-8l6-8",
  pour: "M4 5h10l-2 7H6zM14 6l5 4M19 10v6M4 20h16",
  piece: "M3 8h18v5h-9v7H3z",
  board: "M5 4h14v14H5zM9 18v3M15 18v3",
};

/** The share of the widest stop, as the width of the line that leads to it: 2 to 9 px. */
export function strength(quantity: Amount | null | undefined, most: number): number {
  if (!quantity || most <= 0) return 2;
  return 2 + Math.round((7 * Math.min(toScale(quantity.amount), most)) / most);
}

function Stop({ stop, most }: { stop: FlowStop; most: number }) {
  return (
    <li
      className={classes.stop}
      style={{ "--strength": `${strength(stop.quantity, most)}px` } as React.CSSProperties}
    >
      <div className={classes.line}>
        <svg viewBox="0 0 24 24" aria-hidden="true">
          <path d={SIGNS[stop.kind]} />
        </svg>
        <span className={classes.what}>
          {stop.to ? <Link to={stop.to}>{stop.title}</Link> : <span>{stop.title}</span>}
          {stop.note && <small>{stop.note}</small>}
          {stop.marks}
        </span>
        <Quantity value={stop.quantity} />
      </div>
      {stop.next && stop.next.length > 0 && <Stops stops={stop.next} most={most} />}
    </li>
  );
}

function Stops({ stops, most }: { stops: readonly FlowStop[]; most: number }) {
  return (
    <ol className={classes.stops}>
      {stops.map((stop) => (
        <Stop key={stop.key} stop={stop} most={most} />
      ))}
    </ol>
  );
}

function quantitiesIn(stops: readonly FlowStop[]): (Amount | null | undefined)[] {
  return stops.flatMap((stop) => [stop.quantity, ...quantitiesIn(stop.next ?? [])]);
}

/** A trace as a list: each stop hangs from the one it came from, by a line as thick as what flowed. */
export function FlowList({ label, stops }: { label: string; stops: readonly FlowStop[] }) {
  const room = useAlignment(quantitiesIn(stops));
  const most = Math.max(0, ...stops.map((stop) => toScale(stop.quantity?.amount ?? "0")));
  return (
    <section aria-label={label} className={classes.flow} style={room}>
      <Stops stops={stops} most={most} />
    </section>
  );
}
