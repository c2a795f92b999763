import { useId } from "react";
import { fillOf, HATCHES, Hatches } from "@/components/chart/Hatch";
import { toScale } from "@/components/figures/decimal";
import type { ExpiringLot, Mixable, ShelfValue } from "./queries";
import { useBySpans } from "./shelf/useBySpans";
import { sumOf } from "./sums";
import { KIND_GROUPS } from "./words";

const WIDE = 120;
const HIGH = 40;

/** The resin systems as what goes together of their parts, and hatched above it what stays over. */
export function MixableMarks({ systems }: { systems: readonly Mixable[] }) {
  const name = useId();
  const parts = systems.flatMap(({ stranded }) => stranded).slice(0, 8);
  const most = Math.max(0.01, ...parts.map(({ usable }) => toScale(usable.amount)));
  const step = WIDE / Math.max(parts.length, 1);
  return (
    <svg width={WIDE} height={HIGH} aria-hidden="true">
      <Hatches name={name} />
      {parts.map(({ material, role, usable, stranded }, i) => {
        const whole = (toScale(usable.amount) / most) * (HIGH - 4);
        const left = (toScale(stranded?.amount ?? "0") / most) * (HIGH - 4);
        const box = { x: i * step + 1, width: step - 4, stroke: "var(--ink)" };
        return (
          <g key={`${role} ${material}`}>
            <rect {...box} y={HIGH - 1 - whole} height={left} fill={fillOf(name, "slanted")} />
            <rect {...box} y={HIGH - 1 - whole + left} height={whole - left} fill="var(--kelp-fill)" />
          </g>
        );
      })}
      <path d={`M0 ${HIGH - 0.5}h${WIDE}`} stroke="var(--ink)" />
    </svg>
  );
}

/** Lots by how soon they pass their use-by; those past it in brick. */
export function SpanMarks({ rows, days }: { rows: readonly ExpiringLot[]; days: number }) {
  const spans = useBySpans(rows, days);
  const most = Math.max(1, ...spans.map(({ lots }) => lots));
  const step = WIDE / spans.length;
  return (
    <svg width={WIDE} height={HIGH} aria-hidden="true">
      {spans.map(({ key, lots }, i) => {
        const height = (lots / most) * (HIGH - 4);
        const fill = key === "past" ? "var(--brick-fill)" : "var(--face-deep)";
        return (
          <rect key={key} x={i * step + 1} y={HIGH - height} width={step - 4} height={height} fill={fill} />
        );
      })}
      <path d={`M0 ${HIGH - 0.5}h${WIDE}`} stroke="var(--ink)" />
    </svg>
  );
}

/** The value of the shelf as one bar, by what it is for. */
export function ValueMarks({ kinds }: { kinds: ShelfValue["kinds"] }) {
  const name = useId();
  const worth = new Map<string, string>(kinds.map(({ kind, value }) => [kind, value]));
  const groups = KIND_GROUPS.map((group) => toScale(sumOf(group.kinds.map((kind) => worth.get(kind)))));
  const total = groups.reduce((sum, each) => sum + each, 0) || 1;
  let x = 0.5;
  return (
    <svg width={WIDE} height={HIGH} aria-hidden="true">
      <Hatches name={name} />
      {groups.map((each, i) => {
        const width = (each / total) * (WIDE - 1);
        const at = x;
        x += width;
        return (
          <rect
            key={KIND_GROUPS[i]?.key}
            x={at}
            y={HIGH / 2 - 9}
            width={width}
            height={18}
            fill={fillOf(name, HATCHES[i % HATCHES.length] ?? "solid")}
            stroke="var(--ink)"
          />
        );
      })}
    </svg>
  );
}

const SKETCHES = {
  uses: "M10 12h16l-2 18H12zM28 21h30M58 21v-12h16M58 21v12h16M80 5h30v8H80zM80 29h30v8H80z",
  sources: "M10 5h14l-2 10H12zM10 25h14l-2 10H12zM28 10h22v20H28M50 20h24M80 14h30v12H80z",
  balance: "M8 34V10h22v24M34 34V10h22M60 34V22h22M86 34V28h22v6M4 35h112",
  lines: "M8 8h104M8 16h76M8 24h92M8 32h60",
};

/** What a report is about, in a few strokes. */
export function Sketch({ of }: { of: keyof typeof SKETCHES }) {
  return (
    <svg
      width={WIDE}
      height={HIGH}
      aria-hidden="true"
      fill="none"
      stroke="var(--ink-soft)"
      strokeWidth="1.6"
      strokeLinejoin="round"
    >
      <path d={SKETCHES[of]} />
    </svg>
  );
}
