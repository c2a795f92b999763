import { useSearchParams } from "react-router";
import { Chart } from "@/components/chart/Chart";
import { FilterRow } from "@/components/entry/FilterRow";
import { Money, useWays } from "@/components/figures";
import { toScale } from "@/components/figures/decimal";
import { currencySign } from "@/components/figures/Money";
import { EmptyState } from "@/components/notes/EmptyState";
import { Columns, type Fact, Page, Part } from "@/components/page";
import { Answer } from "../Answer";
import { Downloads } from "../Downloads";
import classes from "../figures.module.css";
import { type Expiring, useExpiring } from "../queries";
import { useSeesMoney } from "../useSeesMoney";
import { ExpiringRows } from "./ExpiringRows";
import { useBySpans } from "./useBySpans";

const DAYS = [
  ["14", "14 days"],
  ["", "60 days"],
  ["180", "180 days"],
  ["365", "A year"],
] as const;

function SpansChart({ report, seesMoney }: { report: Expiring; seesMoney: boolean }) {
  const sign = currencySign(useWays().currency);
  const spans = useBySpans(report.rows, report.days);
  const told = spans.map(({ label, lots }) => `${label}: ${lots === 1 ? "1 lot" : `${lots} lots`}`);
  return (
    <Chart
      title={seesMoney ? "Money on the shelf by its use-by" : "Lots by their use-by"}
      summary={`By how soon they pass their use-by: ${told.join(", ")}.`}
      kind="bars"
      rowLabel="Use-by within"
      axis={seesMoney ? sign : "lots"}
      series={[seesMoney ? { key: "value", label: "Value" } : { key: "lots", label: "Lots" }]}
      rows={spans.map(({ key, label, lots, value }) => ({
        key,
        label,
        values: seesMoney ? { value: toScale(value) } : { lots },
        figures: { value: <Money value={value} />, lots },
      }))}
    />
  );
}

function factsOf(report: Expiring | undefined, seesMoney: boolean): Fact[] {
  const expired = report?.rows.filter(({ is_expired }) => is_expired).length;
  const lots = { label: "Past their use-by", value: expired };
  const soon = {
    label: `Within ${report?.days ?? 60} days`,
    value: report && report.rows.length - (expired ?? 0),
  };
  if (!seesMoney) return [lots, soon];
  return [
    lots,
    { label: "Their value", value: <Money value={report?.expired_value} /> },
    soon,
    { label: "Value of all", value: <Money value={report?.value} /> },
  ];
}

/** Lots that are past their use-by or near it, the oldest first. */
export function ExpiringPage() {
  const [params] = useSearchParams();
  const said = Number(params.get("days") ?? "60");
  const days = Number.isInteger(said) && said >= 0 && said <= 3660 ? said : 60;
  const report = useExpiring(days);
  const seesMoney = useSeesMoney();
  return (
    <Page
      title="Use-by days"
      back={{ to: "/figures", label: "Figures" }}
      facts={factsOf(report.data, seesMoney)}
    >
      <FilterRow label="How far ahead" name="days" choices={DAYS} />
      <Answer of={report}>
        {(answer) =>
          answer.rows.length === 0 ? (
            <EmptyState title="Nothing nears its use-by">
              No lot of which something is left passes its use-by in the next {answer.days} days.
            </EmptyState>
          ) : (
            <Columns lead>
              <Part title="Lots, the oldest first">
                <ExpiringRows rows={answer.rows} seesMoney={seesMoney} />
              </Part>
              <div className={classes.stack}>
                <Part title="How soon">
                  <SpansChart report={answer} seesMoney={seesMoney} />
                </Part>
              </div>
            </Columns>
          )
        }
      </Answer>
      <Downloads isReady={report.isSuccess} report="reports/expiring" name="use-by days" asked={{ days }} />
    </Page>
  );
}
