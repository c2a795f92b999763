import { Link } from "react-router";
import { Money } from "@/components/figures";
import { linesPage } from "@/components/figures/linesPage";
import { Reckoning } from "@/components/notes/Why";
import { Answer } from "../Answer";
import { Area } from "../Area";
import classes from "../figures.module.css";
import { type CostRow, useCostLines } from "../queries";
import { kindLabel } from "../words";
import own from "./cost.module.css";
import type { costView } from "./costView";

const PAGES: Record<string, { path: string; label: string }> = {
  job: { path: "/jobs", label: "The job" },
  piece: { path: "/tops", label: "The top" },
};

function has(amount: string | null | undefined): amount is string {
  return Number(amount ?? 0) !== 0;
}

/** How a row's figure came about: the sum, what its materials came to, the dearest first, and the way to every line. */
export function CostBehind({ row, view }: { row: CostRow; view: ReturnType<typeof costView> }) {
  const { group_by, purpose, from, to } = view;
  const state = row.state === "unfinished" ? "unfinished" : "finished";
  const asked = { group_by, purpose, state, key: row.key, ...(from && { from }), ...(to && { to }) } as const;
  const lines = useCostLines(asked, row.movements !== null);
  const page = row.link ? PAGES[row.link.noun] : undefined;
  return (
    <div className={own.behindParts}>
      <div>
        <Reckoning
          lines={[
            ...Object.entries(row.by_kind ?? {}).map(([kind, cost]) => ({
              label: kindLabel(kind),
              figure: <Money value={cost} />,
            })),
          ]}
          total={{ label: "All that its pours took", figure: <Money value={row.cost} /> }}
        />
        <Reckoning
          lines={[
            { label: "Over this area", figure: <Area sqft={row.area_sqft} /> },
            ...(has(row.waste_cost)
              ? [{ label: "Wasted, inside the sum", figure: <Money value={row.waste_cost} /> }]
              : []),
            ...(has(row.redo_cost)
              ? [{ label: "Coats laid again, beside it", figure: <Money value={row.redo_cost} /> }]
              : []),
          ]}
        />
      </div>
      <div>
        <h3>The dearest first</h3>
        <Answer of={lines} lines={4}>
          {({ materials }) => (
            <Reckoning
              lines={materials.map(({ material, name, cost }) => ({
                label: <Link to={`/shelf/materials/${material}`}>{name}</Link>,
                figure: <Money key={material} value={cost} />,
              }))}
            />
          )}
        </Answer>
      </div>
      <p className={classes.ways}>
        {row.movements && <Link to={linesPage(row.movements)}>Every line behind it</Link>}
        {page && row.link && <Link to={`${page.path}/${row.link.id}`}>{page.label}</Link>}
      </p>
    </div>
  );
}
