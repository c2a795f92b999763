import { Chart, type ChartRow, type Series } from "@/components/chart/Chart";
import { Money, useWays } from "@/components/figures";
import { toScale } from "@/components/figures/decimal";
import { currencySign } from "@/components/figures/Money";
import type { CostRow } from "../queries";
import { sumOf } from "../sums";
import { KIND_GROUPS, monthShort } from "../words";

const SERIES: Series[] = [
  ...KIND_GROUPS.map(({ key, label }) => ({ key, label })),
  { key: "per_sqft", label: "Per sq ft", as: "line" },
];

/** What each group of materials came to in a row. */
export function byGroup(row: Pick<CostRow, "by_kind">): { key: string; label: string; cost: string }[] {
  return KIND_GROUPS.map(({ key, label, kinds }) => ({
    key,
    label,
    cost: sumOf(kinds.map((kind) => row.by_kind?.[kind])),
  }));
}

function chartRow(row: CostRow): ChartRow {
  const groups = byGroup(row);
  return {
    key: `${row.state} ${row.key}`,
    label: monthShort(row.key),
    values: {
      ...Object.fromEntries(groups.map(({ key, cost }) => [key, toScale(cost)])),
      ...(row.cost_per_sqft ? { per_sqft: toScale(row.cost_per_sqft) } : {}),
    },
    figures: {
      ...Object.fromEntries(groups.map(({ key, cost }) => [key, <Money key={key} value={cost} />])),
      per_sqft: <Money value={row.cost_per_sqft} />,
    },
  };
}

function summaryOf(rows: readonly CostRow[], sign: string): string {
  const told = rows.filter(({ cost_per_sqft }) => cost_per_sqft);
  const figures = told.map(({ cost_per_sqft }) => toScale(cost_per_sqft ?? "0"));
  if (figures.length === 0) return "No month has a figure yet.";
  const [low, high] = [Math.min(...figures), Math.max(...figures)].map((each) => `${sign}${each.toFixed(2)}`);
  return `Materials by month as bars, and over them what a square foot cost: between ${low} and ${high} over ${told.length} months, last ${sign}${(figures.at(-1) ?? 0).toFixed(2)}.`;
}

/** Month by month: the materials as bars, each kind in its own hatch, and the cost of a square foot as the line above. */
export function MonthChart({ rows }: { rows: readonly CostRow[] }) {
  const { currency } = useWays();
  const months = rows.filter(({ key }) => /^\d{4}-\d{2}$/.test(key));
  if (months.length === 0) return null;
  const sign = currencySign(currency);
  return (
    <Chart
      title="Materials of the tops finished in each month"
      summary={summaryOf(months, sign)}
      kind="bars"
      series={SERIES}
      rows={months.map(chartRow)}
      rowLabel="Month"
      axis={`${sign} of materials`}
      lineAxis={`${sign} per sq ft`}
    />
  );
}
