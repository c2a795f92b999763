import { useSearchParams } from "react-router";
import { FilterRow } from "@/components/entry/FilterRow";
import { EmptyState } from "@/components/notes/EmptyState";
import { Columns, Page, Part } from "@/components/page";
import { Answer } from "../Answer";
import { Downloads } from "../Downloads";
import classes from "../figures.module.css";
import { useReorder } from "../queries";
import { useSeesMoney } from "../useSeesMoney";
import { inOrder, runOutWithin } from "./inOrder";
import { MixableParts } from "./MixableParts";
import { Orders } from "./Orders";
import { BarKey } from "./PointBar";
import { StockRow } from "./StockRow";

const SHOWN = [
  ["", "All"],
  ["below", "Below the reorder point"],
  ["soon", "Runs out in 60 days"],
] as const;

/** What must be ordered and why; beside it what resin can be mixed in ratio, and what of it is stranded. */
export function ReorderPage() {
  const [params] = useSearchParams();
  const reorder = useReorder();
  const seesMoney = useSeesMoney();
  const { data } = reorder;
  const below = data?.rows.filter(({ is_below }) => is_below).length;
  return (
    <Page
      title="What to order"
      back={{ to: "/figures", label: "Figures" }}
      facts={[
        { label: "Below the reorder point", value: below },
        { label: "Runs out in 30 days", value: data && runOutWithin(data.rows, data.on, 30).length },
        { label: "Materials", value: data?.rows.length },
        { label: "Resin systems", value: data?.systems.length },
      ]}
    >
      <Answer of={{ ...reorder, isPlaceholderData: false }}>
        {({ rows, orders, systems, on }) => {
          const show = params.get("show") ?? "";
          const kept =
            show === "below"
              ? rows.filter(({ is_below }) => is_below)
              : show === "soon"
                ? runOutWithin(rows, on, 60)
                : rows;
          return (
            <Columns lead>
              <Part title="Materials against their reorder points">
                <div className={classes.under}>
                  <FilterRow label="Which materials" name="show" choices={SHOWN} />
                </div>
                <BarKey />
                {kept.length === 0 ? (
                  <EmptyState title="Nothing here">
                    {rows.length === 0 ? "No material is kept yet." : "No material stands that low."}
                  </EmptyState>
                ) : (
                  <ul className={classes.plain} aria-label="Materials">
                    {inOrder(kept).map((row) => (
                      <StockRow key={row.material.id} row={row} />
                    ))}
                  </ul>
                )}
              </Part>
              <div className={classes.stack}>
                <Part title="To order">
                  <Orders orders={orders} seesMoney={seesMoney} />
                </Part>
                {systems.length > 0 && (
                  <Part title="Can be mixed in ratio">
                    <MixableParts systems={systems} />
                  </Part>
                )}
              </div>
            </Columns>
          );
        }}
      </Answer>
      <Downloads isReady={reorder.isSuccess} report="reports/reorder" name="what to order" />
    </Page>
  );
}
