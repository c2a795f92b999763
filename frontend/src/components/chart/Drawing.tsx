import { Bar, BarChart, CartesianGrid, Line, LineChart, ResponsiveContainer, XAxis, YAxis } from "recharts";
import type { ChartProps } from "./Chart";

const INKS = ["var(--kelp-fill)", "var(--ink-soft)", "var(--rule-strong)", "var(--amber-fill)"];
const LETTERING = { fill: "var(--ink-soft)", fontSize: 13 };

/** The drawing itself, in a file of its own because its library is heavy and loads only here. */
export default function Drawing({ kind, series, rows, axis }: ChartProps) {
  const data = rows.map((row) => ({ label: row.label, ...row.values }));
  const axes = (
    <>
      <CartesianGrid vertical={false} stroke="var(--rule)" />
      <XAxis
        dataKey="label"
        tick={LETTERING}
        stroke="var(--ink)"
        tickLine={false}
        interval="preserveStartEnd"
      />
      <YAxis
        tick={LETTERING}
        stroke="var(--rule-strong)"
        tickLine={false}
        width={56}
        {...(axis ? { label: { value: axis, angle: -90, position: "insideLeft", style: LETTERING } } : {})}
      />
    </>
  );
  return (
    <ResponsiveContainer width="100%" height="100%">
      {kind === "bars" ? (
        <BarChart data={data} accessibilityLayer={false}>
          {axes}
          {series.map((each, i) => (
            <Bar
              key={each.key}
              dataKey={each.key}
              stackId="all"
              fill={INKS[i % INKS.length] ?? "var(--ink)"}
              stroke="var(--ink)"
              strokeWidth={1}
              maxBarSize={44}
              isAnimationActive={false}
            />
          ))}
        </BarChart>
      ) : (
        <LineChart data={data} accessibilityLayer={false}>
          {axes}
          {series.map((each, i) => (
            <Line
              key={each.key}
              dataKey={each.key}
              stroke={INKS[i % INKS.length] ?? "var(--ink)"}
              strokeWidth={2.5}
              dot={{ r: 3 }}
              isAnimationActive={false}
            />
          ))}
        </LineChart>
      )}
    </ResponsiveContainer>
  );
}
