import { useSearchParams } from "react-router";
import { Money } from "@/components/figures";
import { EmptyState } from "@/components/notes/EmptyState";
import { type Fact, Page, Part } from "@/components/page";
import { Answer } from "../Answer";
import { Area } from "../Area";
import { Downloads } from "../Downloads";
import classes from "../figures.module.css";
import { type CostReport, useCost } from "../queries";
import { useSeesMoney } from "../useSeesMoney";
import { CostFilters } from "./CostFilters";
import { CostRows } from "./CostRows";
import { costView, PART_TITLES } from "./costView";
import { MonthChart } from "./MonthChart";

function factsOf(report: CostReport | undefined, seesMoney: boolean): Fact[] {
  const total = report?.total;
  const area = { label: "Area", value: total && <Area sqft={total.area_sqft} /> };
  const tops = { label: "Tops", value: total?.tops };
  if (!seesMoney) return [area, tops];
  return [
    {
      label: "In all, materials only",
      value: total?.cost_per_sqft ? (
        <Money value={total.cost_per_sqft} per="per sq ft" />
      ) : (
        total && "none yet"
      ),
    },
    { label: "Materials", value: <Money value={total?.cost} /> },
    area,
    tops,
  ];
}

/** What a square foot cost in materials, month by month or by job, top, customer or kind of material. */
export function CostPage() {
  const [params] = useSearchParams();
  const view = costView(params);
  const cost = useCost(view);
  const seesMoney = useSeesMoney();
  return (
    <Page
      title={seesMoney ? "Cost per square foot" : "Finished area"}
      back={{ to: "/figures", label: "Figures" }}
      facts={factsOf(cost.data, seesMoney)}
    >
      <CostFilters view={view} />
      <Answer of={cost}>
        {(report) =>
          report.rows.length === 0 ? (
            <EmptyState title="No tops here">
              A job that is finished brings its tops into this figure. Other tops may be chosen above.
            </EmptyState>
          ) : (
            <div className={classes.stack}>
              {seesMoney && view.group_by === "month" && <MonthChart rows={report.rows} />}
              {!seesMoney && (
                <p className="soft">What it cost is for owners to see; area and tops stand here.</p>
              )}
              <Part title={PART_TITLES[view.group_by]}>
                <CostRows report={report} view={view} seesMoney={seesMoney} />
              </Part>
            </div>
          )
        }
      </Answer>
      <Downloads
        isReady={cost.isSuccess}
        report="reports/cost-per-sqft"
        name="cost per square foot"
        asked={view}
      />
    </Page>
  );
}
