import { Button } from "@mantine/core";
import { useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { api } from "@/api/query";
import { PickOne } from "@/components/entry/PickOne";
import { dayInWords, dayOf, useWays } from "@/components/figures";
import { ProblemNote } from "@/components/notes/ProblemNote";
import { type Coat, topsInWords } from "@/components/pours/words";
import { type Line, likeBefore, ratioOf } from "../lines/line";
import { type PourRow, usePours } from "../queries";
import { areaOf, nearestFirst } from "./like";
import classes from "./plan.module.css";

interface LikeBeforeProps {
  coat: Coat;
  /** The jobs and customers that are poured for: their own earlier pours are the likeliest. */
  jobs: readonly number[];
  customers: readonly string[];
  /** Square feet to be poured now. */
  area: string;
  onFill: (lines: Line[]) => void;
}

/** Fills in what an earlier pour of this coat took, scaled to the tops. */
export function LikeBefore({ coat, jobs, customers, area, onFill }: LikeBeforeProps) {
  const { timeZone } = useWays();
  const cache = useQueryClient();
  const [problem, setProblem] = useState<unknown>(null);
  const { data } = usePours({
    layer: [coat],
    status: ["completed"],
    ordering: ["-poured_at"],
    page_size: 30,
  });
  const before = nearestFirst(data?.results ?? [], jobs, customers);
  const [first] = before;
  if (!first) return null;

  async function fill(row: PourRow) {
    setProblem(null);
    try {
      const pour = await cache.fetchQuery(
        api.queryOptions("get", "/api/pours/{id}/", { params: { path: { id: row.id } } }),
      );
      onFill(likeBefore(pour.usages, ratioOf(area, areaOf(row))));
    } catch (thrown) {
      setProblem(thrown);
    }
  }

  const day = (row: PourRow) => (row.poured_at ? dayInWords(dayOf(new Date(row.poured_at), timeZone)) : "");
  return (
    <div className={classes.like}>
      <Button h={58} variant="default" onClick={() => void fill(first)}>
        <span className={classes.same}>
          Same as last time
          <small>
            {first.pieces[0]?.job_title}, {day(first)}
          </small>
        </span>
      </Button>
      <PickOne
        label="Or like another pour"
        placeholder="Pick one"
        value=""
        choices={before.slice(1).map((row) => ({
          value: String(row.id),
          label: `${row.pieces[0]?.job_title}`,
          note: `Pour ${row.number}, ${topsInWords(row.pieces)}, ${day(row)}`,
        }))}
        onChange={(id) => {
          const row = before.find((each) => String(each.id) === id);
          if (row) void fill(row);
        }}
      />
      <ProblemNote problem={problem} />
    </div>
  );
}
