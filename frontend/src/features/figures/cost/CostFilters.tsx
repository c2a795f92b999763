import { useState } from "react";
import { useSearchParams } from "react-router";
import { FilterRow } from "@/components/entry/FilterRow";
import { dayInWords } from "@/components/figures";
import classes from "../figures.module.css";
import { Period } from "../Period";
import { type costView, GROUPINGS, PURPOSES, STATES } from "./costView";

function said(view: ReturnType<typeof costView>): string {
  const purpose = PURPOSES.find(
    ([value]) => value === (view.purpose === "customer" ? "" : view.purpose),
  )?.[1];
  const state = { finished: "finished tops", unfinished: "tops not finished yet", all: "all tops" }[
    view.state
  ];
  const from = view.from ? ` from ${dayInWords(view.from)}` : "";
  const to = view.to ? ` to ${dayInWords(view.to)}` : "";
  return `${purpose}, ${state}${from || to ? `, finished${from}${to}` : ""}`;
}

/** How the rows are grouped; which tops count stands one tap deeper. */
export function CostFilters({ view }: { view: ReturnType<typeof costView> }) {
  const [params] = useSearchParams();
  const [isOpen, setOpen] = useState(["state", "purpose", "from", "to"].some((name) => params.has(name)));
  return (
    <div className={`${classes.filters} no-print`}>
      <FilterRow label="By" name="group_by" choices={GROUPINGS} />
      <details open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>
          <u>Which tops</u> <span className="soft">{said(view)}</span>
        </summary>
        <div className={classes.filterParts}>
          <FilterRow label="State" name="state" choices={STATES} />
          <FilterRow label="Purpose" name="purpose" choices={PURPOSES} />
          <Period from="Finished from" to="Finished up to" />
        </div>
      </details>
    </div>
  );
}
