import { Button } from "@mantine/core";
import { useState } from "react";
import { Link, useSearchParams } from "react-router";
import { useAct } from "@/api/act";
import { api } from "@/api/query";
import type { components } from "@/api/schema.gen";
import { useMayRecord } from "@/api/session";
import { Pager, usePage } from "@/components/entry/Pager";
import { WhyField } from "@/components/entry/WhyField";
import { Moment, Quantity } from "@/components/figures";
import { BigButton, Drawn, Sheet, useSheet } from "@/components/form";
import { EmptyState } from "@/components/notes/EmptyState";
import { StatusMark } from "@/components/notes/StatusMark";
import { Page } from "@/components/page";
import { USUAL_MISTAKES } from "../UndoPosting";
import classes from "./count.module.css";

type Count = components["schemas"]["CountOut"];

const SHOWN = 10;

function UndoCount({ count, onDone }: { count: Count; onDone: () => void }) {
  const sheet = useSheet({
    act: useAct("post", "/api/stock-counts/{id}/undo/", { params: { id: count.id }, onDone }),
    initial: { reason: "" },
    toBody: (typed) => typed,
    check: ({ reason }) => ({ ...(reason.trim() === "" && { reason: "Say what was wrong." }) }),
  });
  return (
    <Sheet
      sheet={sheet}
      acts={
        <BigButton tone="stop" busy={sheet.isPending}>
          Undo the count
        </BigButton>
      }
    >
      <p className="soft">All its lines go back to what the book said.</p>
      <WhyField usual={USUAL_MISTAKES} {...sheet.form.getInputProps("reason")} />
    </Sheet>
  );
}

function CountTable({ count }: { count: Count }) {
  return (
    <table className="figures-table">
      <caption className="only-read-aloud">Count {count.number}</caption>
      <thead>
        <tr>
          <th scope="col">Lot</th>
          <th scope="col" className="right">
            Counted
          </th>
          <th scope="col" className="right">
            Difference
          </th>
        </tr>
      </thead>
      <tbody>
        {count.lines.map(({ lot, material, counted, difference, reason }) => (
          <tr key={lot.id}>
            <th scope="row">
              <Link to={`/shelf/lots/${lot.id}`}>Lot {lot.number}</Link> {material.name}
              {reason && <small className={classes.why}>{reason}</small>}
            </th>
            <td className="right">
              <Quantity value={counted} />
            </td>
            <td className="right">{difference.amount === "0" ? "none" : <Quantity value={difference} />}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The counts that were posted, the latest first, each with its differences and the way to undo it. */
export function CountsPage() {
  const page = usePage();
  const { results, count } = api.useSuspenseQuery("get", "/api/stock-counts/", {
    params: { query: { page, page_size: SHOWN } },
  }).data;
  const [params] = useSearchParams();
  const mayRecord = useMayRecord();
  const [undoing, setUndoing] = useState<Count | null>(null);
  const done = params.get("done");
  return (
    <Page
      title="Counts"
      back={{ to: "/shelf", label: "The shelf" }}
      acts={
        mayRecord && (
          <Button component={Link} to="/shelf/count" h={58} px={28} fz="1.06rem">
            Count a place
          </Button>
        )
      }
    >
      {done && (
        <p role="status">
          <StatusMark mark="ok">{`Count ${done} is posted`}</StatusMark>
        </p>
      )}
      {results.length === 0 && (
        <EmptyState title="Nothing was counted yet">A count mends what the book says.</EmptyState>
      )}
      {results.map((each) => (
        <section key={each.id} aria-label={`Count ${each.number}`} className={classes.count}>
          <div className={classes.head}>
            <h2>
              Count {each.number}, {each.place.name}
            </h2>
            <span className="soft">
              <Moment value={each.counted_at} /> · {each.by.name}
            </span>
            {each.is_undone ? (
              <StatusMark mark="quiet">{`Undone: ${each.undone_because}`}</StatusMark>
            ) : (
              mayRecord && (
                <Button variant="default" onClick={() => setUndoing(each)}>
                  Undo<span className="only-read-aloud"> count {each.number}</span>
                </Button>
              )
            )}
          </div>
          <CountTable count={each} />
        </section>
      ))}
      <Pager label="counts" count={count} pageSize={SHOWN} />
      <Drawn
        title={undoing ? `Undo count ${undoing.number}` : ""}
        isOpen={undoing !== null}
        onClose={() => setUndoing(null)}
      >
        {undoing && <UndoCount count={undoing} onDone={() => setUndoing(null)} />}
      </Drawn>
    </Page>
  );
}
