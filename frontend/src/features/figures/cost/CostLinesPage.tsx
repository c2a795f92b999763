import { Link, useSearchParams } from "react-router";
import { Pager, usePage } from "@/components/entry/Pager";
import { Day, Money } from "@/components/figures";
import { EmptyState } from "@/components/notes/EmptyState";
import { Page } from "@/components/page";
import { coatLabel } from "@/components/pours/words";
import { Amount, useAmountRoom } from "../Amount";
import { Answer } from "../Answer";
import { Downloads } from "../Downloads";
import classes from "../figures.module.css";
import { type CostLine, LINES_SHOWN, useCostLines } from "../queries";
import { useSeesMoney } from "../useSeesMoney";
import { LINES, monthLong } from "../words";
import { costView } from "./costView";

function Line({ line, seesMoney }: { line: CostLine; seesMoney: boolean }) {
  const isShared = line.share !== line.value;
  return (
    <li className={classes.line}>
      <Day value={line.happened_on} />
      <span className={classes.lineWhat}>
        <Link to={`/shelf/lots/${line.lot}`}>
          {line.material_name}, {line.lot_number}
        </Link>
        <small>
          {LINES[line.kind as keyof typeof LINES] ?? line.kind} ·{" "}
          <Link to={`/pours/${line.pour}`}>
            {coatLabel(line.layer)}, pour {line.pour_number}
          </Link>
          {line.is_redo && " · laid again"}
          {seesMoney && isShared && (
            <>
              {" · of "}
              <Money value={line.value} />
            </>
          )}
        </small>
      </span>
      <span className={classes.amount}>
        <Amount value={line.quantity} />
      </span>
      {seesMoney && (
        <span className={classes.amount}>
          <Money value={line.share} />
        </span>
      )}
    </li>
  );
}

function Lines({ lines, seesMoney }: { lines: readonly CostLine[]; seesMoney: boolean }) {
  const page = usePage();
  const shown = lines.slice((page - 1) * LINES_SHOWN, page * LINES_SHOWN);
  const room = useAmountRoom(shown.map(({ quantity }) => quantity));
  if (lines.length === 0) return <EmptyState title="No line of the ledger stands behind this figure" />;
  return (
    <>
      <ol className={classes.lines} style={room} data-money={seesMoney} aria-label="Lines behind the figure">
        {shown.map((line) => (
          <Line key={line.movement} line={line} seesMoney={seesMoney} />
        ))}
      </ol>
      <Pager label="lines" count={lines.length} pageSize={LINES_SHOWN} />
    </>
  );
}

/** The lines of the ledger behind one row of cost per square foot, each with the part of it that falls on the row's tops. */
export function CostLinesPage() {
  const [params] = useSearchParams();
  const view = costView(params);
  const asked = {
    ...view,
    state: view.state === "unfinished" ? ("unfinished" as const) : ("finished" as const),
    key: params.get("key") ?? "",
  };
  const behind = useCostLines(asked);
  const seesMoney = useSeesMoney();
  const { data } = behind;
  const back = new URLSearchParams(params);
  for (const name of ["key", "page"]) back.delete(name);
  if (view.group_by === "month") back.delete("group_by");
  return (
    <Page
      title={view.group_by === "month" ? `Lines behind ${monthLong(asked.key)}` : "Lines behind this cost"}
      back={{ to: `/figures/cost?${back}`, label: "Cost per square foot" }}
      facts={[
        { label: "Lines", value: data?.lines.length },
        ...(seesMoney
          ? [
              { label: "They come to", value: <Money value={data?.cost} /> },
              { label: "Laid again, beside it", value: <Money value={data?.redo_cost} /> },
            ]
          : []),
      ]}
    >
      <Answer of={{ ...behind, isPlaceholderData: false }}>
        {({ lines }) => <Lines lines={lines} seesMoney={seesMoney} />}
      </Answer>
      <Downloads
        isReady={behind.isSuccess}
        report="reports/cost-per-sqft/movements"
        name="lines behind this cost"
        asked={asked}
      />
    </Page>
  );
}
