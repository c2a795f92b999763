import { type ReactNode, useState } from "react";
import type { Problem, Remedy } from "@/api/problem";
import { Drawn } from "@/components/form";
import type { Line } from "../lines/line";
import { lotIn, type Shortage, shortagesOf, takeFromLot } from "../lines/short";
import { FoundForm } from "./FoundForm";
import type { Found } from "./found";
import { ReceiveForm } from "./ReceiveForm";

interface ShortOptions {
  problem: Problem | null;
  /** Takes the refusal away: what it asked for has been mended. */
  onMended: () => void;
  lines: readonly Line[];
  setLines: (lines: Line[]) => void;
  addFound: (found: Found) => void;
  place: number;
  /** Brings the field for the time into view. */
  askTime: () => void;
}

type Opened = { what: "found" | "receive"; remedy: Remedy; shortages: Shortage[] };

interface Short {
  /** What each remedy does here, by its kind. */
  remedies: Record<string, (remedy: Remedy) => void>;
  /** The short forms that some of them open. */
  drawn: ReactNode;
}

/** The row that a refusal's error is about: "/usages/1/quantity" and "/planned/1" are row 1. */
function rowsOf(problem: Problem | null): number[] {
  return (problem?.errors ?? []).map(({ pointer }) =>
    Number(/^\/(?:usages|planned)\/(\d+)/.exec(pointer)?.[1] ?? "-1"),
  );
}

/** Where the book is short of what was poured: another lot, more than the book said, or not booked yet. */
export function useShort(options: ShortOptions): Short {
  const { problem, onMended, lines, setLines, addFound, place, askTime } = options;
  const [opened, setOpened] = useState<Opened | null>(null);
  const shortages = shortagesOf(problem);

  function takeLot(remedy: Remedy) {
    const named = lotIn(remedy);
    const at = shortages.findIndex(({ material }) => material === named?.material);
    const shortage = shortages[at];
    if (!named || !shortage) return;
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

  return {
    remedies: {
      other_lot: takeLot,
      other_place: takeLot,
      found_more: open("found"),
      receive_first: open("receive"),
      change_time: askTime,
    },
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
              addFound(found);
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
