import { useId } from "react";
import { Bar, CartesianGrid, ComposedChart, Line, ResponsiveContainer, XAxis, YAxis } from "recharts";
import type { ChartProps, Series } from "./Chart";
import { fillOf, HATCHES, type Hatch, Hatches } from "./Hatch";

const LETTERING = { fill: "var(--ink-soft)", fontSize: 13 };
const INKS = ["var(--kelp)", "var(--ink-soft)", "var(--rule-strong)", "var(--amber-fill)"];

/** How the series of a chart are drawn: which as bars with which hatch, which as a line. */
export function drawnAs(kind: ChartProps["kind"], series: readonly Series[]) {
  const isLine = (each: Series) => kind === "line" || each.as === "line";
  const bars = series.filter((each) => !isLine(each));
  return {
    lines: series.filter(isLine),
    bars: bars.map((each, i) => ({ ...each, hatch: HATCHES[i % HATCHES.length] as Hatch })),
  };
}

function written(axis: string | undefined, position: "insideLeft" | "insideRight") {
  const angle = position === "insideLeft" ? -90 : 90;
  return axis ? { value: axis, angle, position, style: { ...LETTERING, textAnchor: "middle" as const } } : "";
}

/** The drawing itself, in a file of its own because its library is heavy and loads only here. */
export default function Drawing({ kind, series, rows, axis, lineAxis }: ChartProps) {
  const name = useId();
  const { bars, lines } = drawnAs(kind, series);
  const onRight = lineAxis !== undefined && lines.length > 0;
  return (
    <ResponsiveContainer width="100%" height="100%" initialDimension={{ width: 320, height: 280 }}>
      <ComposedChart
        data={rows.map((row) => ({ label: row.label, ...row.values }))}
        accessibilityLayer={false}
        margin={{ top: 10, right: onRight ? 0 : 8, bottom: 0, left: 0 }}
      >
        <Hatches name={name} />
        <CartesianGrid vertical={false} stroke="var(--rule)" />
        <XAxis dataKey="label" tick={LETTERING} stroke="var(--ink)" tickLine={false} minTickGap={12} />
        <YAxis
          yAxisId="left"
          tick={LETTERING}
          stroke="var(--rule-strong)"
          tickLine={false}
          width={60}
          label={written(axis, "insideLeft")}
        />
        {onRight && (
          <YAxis
            yAxisId="right"
            orientation="right"
            tick={LETTERING}
            stroke="var(--rule-strong)"
            tickLine={false}
            width={52}
            label={written(lineAxis, "insideRight")}
          />
        )}
        {bars.map(({ key, hatch }) => (
          <Bar
            key={key}
            yAxisId="left"
            dataKey={key}
            stackId="all"
            fill={fillOf(name, hatch)}
            stroke="var(--ink)"
            strokeWidth={1}
            maxBarSize={44}
            isAnimationActive={false}
          />
        ))}
        {lines.map(({ key }, i) => (
          <Line
            key={key}
            yAxisId={onRight ? "right" : "left"}
            dataKey={key}
            stroke={onRight ? "var(--ink)" : (INKS[i % INKS.length] ?? "var(--ink)")}
            strokeWidth={2.5}
            dot={{ r: 3.5, fill: "var(--sheet)", strokeWidth: 2 }}
            connectNulls
            isAnimationActive={false}
          />
        ))}
      </ComposedChart>
    </ResponsiveContainer>
  );
}
