import { Link } from "react-router";
import { Day, Money, Quantity } from "@/components/figures";
import { EmptyState } from "@/components/notes/EmptyState";
import { ProblemNote } from "@/components/notes/ProblemNote";
import { Reckoning, Why } from "@/components/notes/Why";
import { LinesSkeleton } from "@/components/page";
import { coatLabel } from "@/components/pours/words";
import classes from "./jobs.module.css";
import { type CostLines, type Job, useCostLines, useJobCost } from "./queries";
import { Area } from "./top/TopPreview";

type Line = CostLines["lines"][number];

/** The lines of the ledger for one material: each pour that took some of it. */
function LinesOf({ lines }: { lines: readonly Line[] }) {
  return (
    <Reckoning
      lines={lines.map((line) => ({
        label: (
          <>
            <Link to={`/pours/${line.pour}`}>
              {coatLabel(line.layer)}, pour {line.pour_number}
            </Link>
          </>
        ),
        figure: <Money value={line.share} />,
        note: (
          <>
            <Quantity value={line.quantity} /> from{" "}
            <Link to={`/shelf/lots/${line.lot}`}>{line.lot_number}</Link>, <Day value={line.happened_on} />
          </>
        ),
      }))}
    />
  );
}

/** What each material came to, the dearest first; each opens into its lines. */
function ByMaterial({ job }: { job: Job }) {
  const { data, error, isPending } = useCostLines(job);
  if (isPending) return <LinesSkeleton lines={3} />;
  if (!data) return <ProblemNote problem={error} />;
  return (
    <ul className={classes.materials} aria-label="Materials, the dearest first">
      {data.materials.map(({ material, name, cost, redo_cost }) => (
        <li key={material}>
          <span>{name}</span>
          <Why figure={<Money value={cost} />} label={`what went in of ${name}`}>
            <LinesOf lines={data.lines.filter((line) => line.material === material)} />
          </Why>
          {Number(redo_cost) > 0 && (
            <small>
              and <Money value={redo_cost} /> for coats laid again
            </small>
          )}
        </li>
      ))}
    </ul>
  );
}

/** Materials per square foot, down to the last line of the ledger. */
export function JobCost({ job }: { job: Job }) {
  const row = useJobCost(job);
  if (!row)
    return <EmptyState title="Nothing to reckon yet">A completed pour brings the first cost.</EmptyState>;
  return (
    <div className={classes.cost}>
      {row.cost_per_sqft === null ? (
        <p className="soft">{row.reason}</p>
      ) : (
        <Why
          figure={
            <span className={classes.bigFigure}>
              <Money value={row.cost_per_sqft} per="per sq ft" />
            </span>
          }
          label="how this cost came about"
        >
          <Reckoning
            lines={[
              { label: "All that its pours took", figure: <Money value={row.cost} /> },
              { label: job.finished_on ? "Finished area" : "Area", figure: <Area sqft={row.area_sqft} /> },
            ]}
            total={{ label: "Per square foot", figure: <Money value={row.cost_per_sqft} /> }}
          />
          <ByMaterial job={job} />
        </Why>
      )}
      <Reckoning
        lines={[
          ...(row.cost === null ? [] : [{ label: "Materials in all", figure: <Money value={row.cost} /> }]),
          ...(Number(row.waste_cost) > 0
            ? [{ label: "of it wasted", figure: <Money value={row.waste_cost} /> }]
            : []),
          ...(Number(row.redo_cost) > 0
            ? [{ label: "Coats laid again, beside it", figure: <Money value={row.redo_cost} /> }]
            : []),
        ]}
      />
      <p className={classes.costNotes}>{row.notes.join(" · ")}</p>
    </div>
  );
}
