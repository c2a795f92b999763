import type { ReactNode } from "react";
import { Link } from "react-router";
import { Money, Quantity } from "@/components/figures";
import { Page } from "@/components/page";
import { MixableMarks, Sketch, SpanMarks, ValueMarks } from "./IndexDrawings";
import own from "./index.module.css";
import { MonthSpark } from "./MonthSpark";
import { useCost, useExpiring, useReorder, useValue } from "./queries";
import { useSeesMoney } from "./useSeesMoney";

interface EntryProps {
  to: string;
  title: string;
  says: string;
  /** The figure as it stands now; the room for it is kept while it loads. */
  figure?: ReactNode;
  drawing?: ReactNode;
}

/** One report: what it answers, and how it stands now. */
function Entry({ to, title, says, figure, drawing }: EntryProps) {
  return (
    <li className={own.entry}>
      <Link to={to}>
        <strong>{title}</strong>
        <span className="soft">{says}</span>
      </Link>
      <span className={own.entryFigure}>{figure}</span>
      {drawing && <span className={own.entryDrawing}>{drawing}</span>}
    </li>
  );
}

function CostEntry({ seesMoney }: { seesMoney: boolean }) {
  const { data } = useCost({ group_by: "month" });
  if (!seesMoney) {
    return (
      <Entry
        to="/figures/cost"
        title="Finished area"
        says="Square feet and tops, by month, job, customer."
        figure={data && <Quantity value={{ amount: data.total.area_sqft, unit: "sqft" }} places={0} />}
      />
    );
  }
  return (
    <Entry
      to="/figures/cost"
      title="Cost per square foot"
      says="Materials of finished tops, by month, job, top, customer or kind."
      figure={data && <Money value={data.total.cost_per_sqft} per="per sq ft" />}
      drawing={data && <MonthSpark rows={data.rows} />}
    />
  );
}

function ReorderEntry() {
  const { data } = useReorder();
  const below = data?.rows.filter(({ is_below }) => is_below).length ?? 0;
  return (
    <Entry
      to="/figures/reorder"
      title="What to order"
      says="Each material against its reorder point, and what resin mixes in ratio."
      figure={data && (below === 0 ? "none below" : `${below} below`)}
      drawing={data && <MixableMarks systems={data.systems} />}
    />
  );
}

function ExpiringEntry({ seesMoney }: { seesMoney: boolean }) {
  const { data } = useExpiring(60);
  const lots = data?.rows.length ?? 0;
  return (
    <Entry
      to="/figures/expiring"
      title="Use-by days"
      says="Lots past their use-by, or within 60 days of it."
      figure={data && (seesMoney ? <Money value={data.value} /> : lots === 1 ? "1 lot" : `${lots} lots`)}
      drawing={data && <SpanMarks rows={data.rows} days={data.days} />}
    />
  );
}

function ValueEntry({ seesMoney }: { seesMoney: boolean }) {
  const { data } = useValue(undefined);
  return (
    <Entry
      to="/figures/value"
      title={seesMoney ? "Value of the shelf" : "The shelf on a day"}
      says="What lay there when a day ended, by material and kind."
      figure={data && (seesMoney ? <Money value={data.total} places={0} /> : `${data.rows.length} materials`)}
      drawing={data && seesMoney && <ValueMarks kinds={data.kinds} />}
    />
  );
}

/** The figures of the shop: each opens into what it is made of. */
export function FiguresPage() {
  const seesMoney = useSeesMoney();
  return (
    <Page title="Figures">
      <ul className={own.entries} aria-label="Figures">
        <CostEntry seesMoney={seesMoney} />
        <ReorderEntry />
        <ExpiringEntry seesMoney={seesMoney} />
        <ValueEntry seesMoney={seesMoney} />
        <Entry
          to="/figures/uses"
          drawing={<Sketch of="uses" />}
          title="Where a lot went"
          says="From a lot number to its pours, tops and customers."
        />
        <Entry
          to="/figures/sources"
          drawing={<Sketch of="sources" />}
          title="What is in a top"
          says="From a top, job or pour back to every lot in it."
        />
        <Entry
          to="/figures/balance"
          drawing={<Sketch of="balance" />}
          title="Does it add up?"
          says="What came in against what is here and what went, to the last digit."
        />
        <Entry
          to="/figures/movements"
          drawing={<Sketch of="lines" />}
          title="In and out"
          says="Every line of the shelf's book, the latest first."
        />
      </ul>
    </Page>
  );
}
