import { useId } from "react";
import { fillOf, HATCHES, Hatches } from "@/components/chart/Hatch";
import { toScale } from "@/components/figures/decimal";

interface SplitBarProps {
  parts: readonly { key: string; cost: string }[];
  /** How long the bar is, of the longest there is: 0 to 1. */
  share: number;
}

const HEIGHT = 18;

/** One bar in its parts, each in its own hatch; the figures beside it say the same in words. */
export function SplitBar({ parts, share }: SplitBarProps) {
  const name = useId();
  const total = parts.reduce((sum, { cost }) => sum + Math.max(0, toScale(cost)), 0);
  let x = 0;
  return (
    <svg width="100%" height={HEIGHT} aria-hidden="true">
      <Hatches name={name} />
      {parts.map(({ key, cost }, i) => {
        const width = total > 0 ? (Math.max(0, toScale(cost)) / total) * share * 99.7 : 0;
        const at = x;
        x += width;
        return width > 0 ? (
          <rect
            key={key}
            x={`${at}%`}
            y="0.5"
            width={`${width}%`}
            height={HEIGHT - 1}
            fill={fillOf(name, HATCHES[i % HATCHES.length] ?? "solid")}
            stroke="var(--ink)"
          />
        ) : null;
      })}
    </svg>
  );
}
