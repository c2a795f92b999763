import { useSearchParams } from "react-router";
import { Chart } from "@/components/chart/Chart";
import { DayField } from "@/components/entry/DayField";
import { Day, Money, useToday, useWays } from "@/components/figures";
import { toScale } from "@/components/figures/decimal";
import { currencySign } from "@/components/figures/Money";
import { EmptyState } from "@/components/notes/EmptyState";
import { Columns, Page, Part } from "@/components/page";
import { Answer } from "../Answer";
import { Downloads } from "../Downloads";
import classes from "../figures.module.css";
import { type ShelfValue, useValue } from "../queries";
import { sumOf } from "../sums";
import { useSeesMoney } from "../useSeesMoney";
import { KIND_GROUPS } from "../words";
import { ValueRows } from "./ValueRows";

function KindsChart({ report }: { report: ShelfValue }) {
  const sign = currencySign(useWays().currency);
  const worth = new Map<string, string>(report.kinds.map(({ kind, value }) => [kind, value]));
  const groups = KIND_GROUPS.map(({ key, label, short, kinds }) => ({
    key,
    label,
    short,
    value: sumOf(kinds.map((kind) => worth.get(kind))),
  }));
  const told = groups.map(({ label, value }) => `${label} ${sign}${toScale(value).toFixed(0)}`);
  return (
    <Chart
      title="Value by what it is for"
      summary={`Value of the shelf by kind of material: ${told.join(", ")}.`}
      kind="bars"
      rowLabel="Kind"
      axis={sign}
      series={[{ key: "value", label: "Value" }]}
      rows={groups.map(({ key, short, value }) => ({
        key,
        label: short,
        values: { value: toScale(value) },
        figures: { value: <Money value={value} /> },
      }))}
    />
  );
}

/** What the shelf was worth when a day ended. */
export function ValuePage() {
  const [params, setParams] = useSearchParams();
  const today = useToday();
  const said = params.get("on") ?? "";
  const on = /^\d{4}-\d{2}-\d{2}$/.test(said) ? said : undefined;
  const report = useValue(on);
  const seesMoney = useSeesMoney();
  function choose(day: string) {
    setParams(day ? { on: day } : {}, { replace: true, preventScrollReset: true });
  }
  return (
    <Page
      title={seesMoney ? "Value of the shelf" : "The shelf on a day"}
      back={{ to: "/figures", label: "Figures" }}
      facts={[
        ...(seesMoney ? [{ label: "In all", value: <Money value={report.data?.total} /> }] : []),
        { label: "When this day ended", value: <Day value={report.data?.on} /> },
        { label: "Materials", value: report.data?.rows.length },
      ]}
    >
      <div className={`${classes.oneField} no-print`}>
        <DayField label="On which day" value={on ?? today} max={today} onChange={choose} />
      </div>
      <Answer of={report}>
        {(answer) =>
          answer.rows.length === 0 ? (
            <EmptyState title="The shelf was empty">Nothing lay there when that day ended.</EmptyState>
          ) : (
            <Columns lead>
              <Part title="By material">
                <ValueRows report={answer} seesMoney={seesMoney} />
              </Part>
              {seesMoney && (
                <div className={classes.stack}>
                  <Part title="By kind">
                    <KindsChart report={answer} />
                  </Part>
                </div>
              )}
            </Columns>
          )
        }
      </Answer>
      <Downloads isReady={report.isSuccess} report="reports/value" name="value of the shelf" asked={{ on }} />
    </Page>
  );
}
