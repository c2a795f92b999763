import { type ReactNode, useMemo, useState } from "react";
import { Problem, type Remedy } from "@/api/problem";
import { Drawn } from "@/components/form";
import type { SheetPart } from "@/components/form/useSheet";
import type { Line } from "../lines/line";
import { lotIn, type Shortage, shortagesOf, takeFromLot } from "../lines/short";
import { FoundForm } from "./FoundForm";
import type { Found } from "./found";
import { ReceiveForm } from "./ReceiveForm";
import { ShortNote } from "./ShortNote";

interface ShortOptions {
  problem: Problem | null;
  /** Takes the refusal away: what it asked for has been mended. */
  onMended: () => void;
  lines: readonly Line[];
  setLines: (lines: Line[]) => void;
  /** Left out of a plan: what was found is known once it has happened. */
  addFound?: (found: Found) => void;
  /** Of a plan only: plans it although not all of it can be had. */
  planShort?: () => void;
  place: number;
  /** Brings the field for the time into view. */
  askTime: () => void;
}

type Opened = { what: "found" | "receive"; remedy: Remedy; shortages: Shortage[] };

interface Short {
  /** The refusal with what would help, to stand above the amounts. */
  note: ReactNode;
  /** The form without the refusal that the note shows already. */
  quiet: <Part extends SheetPart>(sheet: Part) => Part;
  /** The short forms that some of them open. */
  drawn: ReactNode;
}

/** Whether a refusal is about what went in, and says what would help. */
function isAboutLines(problem: Problem): boolean {
  const isLine = /^\/(usages|planned)\b/;
  return problem.remedies.length > 0 && problem.errors.some(({ pointer }) => isLine.test(pointer));
}

/** The refusal without a remedy that is of no use to a plan. */
function offered(problem: Problem, mayFind: boolean): Problem {
  if (mayFind) return problem;
  const remedies = problem.remedies.filter(({ kind }) => kind !== "found_more");
  const { slug, title, status, detail, errors, extra } = problem;
  return new Problem({ slug, title, status, detail, errors, extra, remedies });
}

/** The row that a refusal's error is about: "/usages/1/quantity" and "/planned/1" are row 1. */
function rowsOf(problem: Problem | null): number[] {
  return (problem?.errors ?? []).map(({ pointer }) =>
    Number(/^\/(?:usages|planned)\/(\d+)/.exec(pointer)?.[1] ?? "-1"),
  );
}

/** Where the book is short of what was poured: another lot, more than the book said, or not booked yet. */
export function useShort(options: ShortOptions): Short {
  const { problem, onMended, lines, setLines, addFound, planShort, place, askTime } = options;
  const [opened, setOpened] = useState<Opened | null>(null);
  const shortages = shortagesOf(problem);

  function letShelfDecide() {
    const wrong = new Set(rowsOf(problem));
    setLines(lines.map((line, i) => (wrong.has(i) ? { ...line, lot: "", is_lot_touched: false } : line)));
    onMended();
  }

  function takeLot(remedy: Remedy) {
    const named = lotIn(remedy);
    if (!named) return letShelfDecide();
    const at = shortages.findIndex(({ material }) => material === named.material);
    const shortage = shortages[at];
    if (!shortage) return;
    const row = rowsOf(problem)[at];
    setLines(takeFromLot(lines, named, shortage, row === undefined || row < 0 ? undefined : row));
    onMended();
  }

  const open = (what: Opened["what"]) => (remedy: Remedy) => setOpened({ what, remedy, shortages });
  const close = () => setOpened(null);

  function finish() {
    close();
    onMended();
  }

  const mayFind = addFound !== undefined;
  const shown = useMemo(
    () => (problem && isAboutLines(problem) ? offered(problem, mayFind) : null),
    [problem, mayFind],
  );
  const remedies = {
    other_lot: takeLot,
    other_place: takeLot,
    found_more: open("found"),
    receive_first: open("receive"),
    change_time: askTime,
    ...(planShort && { plan_short: planShort }),
  };
  return {
    note: <ShortNote problem={shown} remedies={remedies} />,
    quiet: (sheet) => (shown ? { ...sheet, problem: null, strayErrors: [], refusals: 0 } : sheet),
    drawn: (
      <Drawn
        title={opened?.what === "receive" ? "Here, and not booked yet" : "There was more than the book said"}
        isOpen={opened !== null}
        onClose={close}
      >
        {opened?.what === "found" && (
          <FoundForm
            shortages={opened.shortages}
            place={place}
            onDone={(found) => {
              addFound?.(found);
              finish();
            }}
          />
        )}
        {opened?.what === "receive" && (
          <ReceiveForm
            shortages={opened.shortages}
            place={place}
            receivedOn={String(opened.remedy.received_on ?? "")}
            onDone={finish}
          />
        )}
      </Drawn>
    ),
  };
}
