import { useId, useState } from "react";
import { Money } from "@/components/figures";
import { toScale } from "@/components/figures/decimal";
import { StatusMark } from "@/components/notes/StatusMark";
import { Area } from "../Area";
import classes from "../figures.module.css";
import type { CostReport, CostRow } from "../queries";
import { CostBehind } from "./CostBehind";
import own from "./cost.module.css";
import type { costView } from "./costView";
import { byGroup } from "./MonthChart";
import { SplitBar } from "./SplitBar";

interface RowProps {
  row: CostRow;
  view: ReturnType<typeof costView>;
  /** The dearest square foot of all rows: the length of a whole bar. */
  most: number;
  seesMoney: boolean;
}

/** Notes that a reader must know of; "materials only" holds for all and stands in the head. */
function Notes({ row }: { row: CostRow }) {
  return (
    <>
      {row.notes
        .filter((note) => note !== "materials only")
        .map((note) => (
          <StatusMark key={note} mark={note === "provisional" ? "look" : "quiet"}>
            {note === "provisional" ? "Price to follow" : note.charAt(0).toUpperCase() + note.slice(1)}
          </StatusMark>
        ))}
    </>
  );
}

function Row({ row, view, most, seesMoney }: RowProps) {
  const [isOpen, setOpen] = useState(false);
  const id = useId();
  const perSqft = row.cost_per_sqft ?? null;
  const share = perSqft && most > 0 ? toScale(perSqft) / most : 0;
  return (
    <li className={own.costRow}>
      <div className={own.costLine}>
        <span className={own.costWhat}>
          <strong>{row.label}</strong>
          <small>
            <Area sqft={row.area_sqft} />
            {" · "}
            {row.tops === 1 ? "1 top" : `${row.tops} tops`}
            {row.scrapped > 0 && ` · ${row.scrapped} scrapped`}
            {view.state === "all" && (row.state === "unfinished" ? " · not finished yet" : " · finished")}
          </small>
          <Notes row={row} />
        </span>
        {seesMoney && (
          <>
            <span className={own.costBar}>
              {share > 0 && <SplitBar parts={byGroup(row)} share={share} />}
            </span>
            <span className={own.costAll}>
              <Money value={row.cost} />
            </span>
            {perSqft === null ? (
              <span className={own.costNone}>{row.reason}</span>
            ) : (
              <button
                type="button"
                className={own.costOpen}
                aria-expanded={isOpen}
                aria-controls={id}
                onClick={() => setOpen(!isOpen)}
              >
                <Money value={perSqft} />
                <span className="only-read-aloud"> per square foot, {row.label}: how it came about</span>
                <svg viewBox="0 0 16 16" aria-hidden="true">
                  <path d="M4 6l4 4 4-4" />
                </svg>
              </button>
            )}
          </>
        )}
      </div>
      <section id={id} hidden={!isOpen} aria-label={`How ${row.label} came about`} className={own.behind}>
        {isOpen && <CostBehind row={row} view={view} />}
      </section>
    </li>
  );
}

/** Each row with a bar as long as its square foot is dear; its figure opens into what is behind it. */
export function CostRows({
  report,
  view,
  seesMoney,
}: Omit<RowProps, "row" | "most"> & { report: CostReport }) {
  const most = Math.max(0, ...report.rows.map(({ cost_per_sqft }) => toScale(cost_per_sqft ?? "0")));
  const rows =
    view.group_by === "month" || view.group_by === "job" ? [...report.rows].reverse() : report.rows;
  return (
    <div className={own.costRows}>
      {seesMoney && (
        <div className={own.costHead} aria-hidden="true">
          <span />
          <span>What a square foot is made of</span>
          <span>Materials</span>
          <span>Per sq ft</span>
        </div>
      )}
      <ol className={classes.plain} aria-label="Cost per square foot, row by row">
        {rows.map((row) => (
          <Row key={`${row.state} ${row.key}`} row={row} view={view} most={most} seesMoney={seesMoney} />
        ))}
      </ol>
    </div>
  );
}
