import { lazy, type ReactNode, Suspense, useState } from "react";
import classes from "./chart.module.css";

export interface ChartRow {
  key: string;
  label: string;
  /** For drawing only; the table shows `figures`. */
  values: Record<string, number>;
  /** The same values as they are read, by series. */
  figures: Record<string, ReactNode>;
}

export interface Series {
  key: string;
  label: string;
}

export interface ChartProps {
  title: string;
  /** What the drawing shows, in a sentence: read aloud in its place. */
  summary: string;
  kind: "bars" | "line";
  series: readonly Series[];
  rows: readonly ChartRow[];
  /** What the rows are: "Job", "Month". */
  rowLabel: string;
  /** Written on the axis: "$ per sq ft". */
  axis?: string;
}

const Drawing = lazy(() => import("./Drawing"));

function ChartTable({ title, series, rows, rowLabel }: ChartProps) {
  return (
    <table className="figures-table">
      <caption className="only-read-aloud">{title}</caption>
      <thead>
        <tr>
          <th scope="col">{rowLabel}</th>
          {series.map((each) => (
            <th key={each.key} scope="col" className="right">
              {each.label}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.key}>
            <th scope="row">{row.label}</th>
            {series.map((each) => (
              <td key={each.key} className="right">
                {row.figures[each.key]}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** A drawing of figures with its table twin: one button changes between them, and paper gets both. */
export function Chart(props: ChartProps) {
  const [asTable, setAsTable] = useState(false);
  return (
    <figure className={classes.chart}>
      <figcaption className={classes.caption}>
        <span>{props.title}</span>
        <button type="button" aria-pressed={asTable} onClick={() => setAsTable(!asTable)}>
          {asTable ? "Show as drawing" : "Show as table"}
        </button>
      </figcaption>
      {asTable ? (
        <ChartTable {...props} />
      ) : (
        <div role="img" aria-label={props.summary} className={classes.drawing}>
          <Suspense fallback={null}>
            <Drawing {...props} />
          </Suspense>
        </div>
      )}
    </figure>
  );
}
