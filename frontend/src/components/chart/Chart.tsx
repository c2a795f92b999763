import { lazy, type ReactNode, Suspense, useId, useState } from "react";
import classes from "./chart.module.css";
import { HATCHES, HatchSign } from "./Hatch";

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
  /** Among bars: drawn over them as a line, on the right-hand axis where `lineAxis` names one. */
  as?: "line";
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
  /** Written on the right-hand axis, by which lines among bars are read. */
  lineAxis?: string;
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

/** What each hatch and line stands for; nothing to tell apart where there is one series. */
function Key({ series, kind }: ChartProps) {
  const name = useId();
  if (series.length < 2 || kind === "line") return null;
  const bars = series.filter((each) => each.as !== "line");
  return (
    <ul className={classes.key} aria-label="What is drawn how">
      {series.map((each) => (
        <li key={each.key}>
          <HatchSign
            hatch={each.as === "line" ? "line" : (HATCHES[bars.indexOf(each) % HATCHES.length] ?? "solid")}
            name={`${name}-${each.key}`}
          />
          {each.label}
        </li>
      ))}
    </ul>
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
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table scrolls, also by keyboard
        <section className={classes.table} aria-label={props.title} tabIndex={0}>
          <ChartTable {...props} />
        </section>
      ) : (
        <>
          <div role="img" aria-label={props.summary} className={classes.drawing}>
            <Suspense fallback={null}>
              <Drawing {...props} />
            </Suspense>
          </div>
          <Key {...props} />
        </>
      )}
    </figure>
  );
}
