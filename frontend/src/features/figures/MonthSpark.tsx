import { toScale } from "@/components/figures/decimal";
import type { CostRow } from "./queries";

const WIDE = 10;
const HIGH = 40;
const MONTHS = 12;

/** The last months as small bars, for the eye alone. */
export function MonthSpark({ rows }: { rows: readonly CostRow[] }) {
  const last = rows.slice(-MONTHS);
  const most = Math.max(...last.map(({ cost_per_sqft }) => toScale(cost_per_sqft ?? "0")), 0.01);
  return (
    <svg width={last.length * WIDE} height={HIGH} aria-hidden="true">
      {last.map(({ key, state, cost_per_sqft }, i) => {
        const height = Math.max(1, (toScale(cost_per_sqft ?? "0") / most) * (HIGH - 2));
        return (
          <rect
            key={`${state} ${key}`}
            x={i * WIDE + 1}
            y={HIGH - height}
            width={WIDE - 3}
            height={height}
            fill={i === last.length - 1 ? "var(--kelp-fill)" : "var(--face-deep)"}
          />
        );
      })}
      <path d={`M0 ${HIGH - 0.5}h${last.length * WIDE}`} stroke="var(--ink)" />
    </svg>
  );
}
