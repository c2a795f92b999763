import { expect, it } from "vitest";
import { show } from "@/test/render";
import { Chart } from "./Chart";

it("has a table twin with the figures as they are read", async () => {
  const { user, getByRole } = show(
    <Chart
      title="Materials per square foot"
      summary="Between 6.10 and 8.90."
      kind="bars"
      rowLabel="Month"
      series={[{ key: "cost", label: "Cost" }]}
      rows={[{ key: "6", label: "Jun", values: { cost: 7.3 }, figures: { cost: "7.30" } }]}
    />,
  );
  expect(getByRole("img", { name: "Between 6.10 and 8.90." })).toBeInTheDocument();
  await user.click(getByRole("button", { name: "Show as table" }));
  expect(getByRole("table", { name: "Materials per square foot" })).toHaveTextContent("MonthCostJun7.30");
});
