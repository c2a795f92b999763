import { Moment } from "@/components/figures";
import type { Lot } from "../queries";
import classes from "./lot.module.css";

const STOOD = { on_hold: "Put on hold", rejected: "Rejected", usable: "OK again" } as const;

interface Entry {
  key: string;
  at: string;
  title: string;
  text: string;
  by: string;
}

/** What was seen and decided about a lot, the latest first. */
export function History({ lot }: { lot: Lot }) {
  const entries: Entry[] = [
    ...lot.notes.map((note) => ({
      key: `note ${note.id}`,
      at: note.noted_at,
      title: "Noted",
      text: note.text,
      by: note.by.name,
    })),
    ...lot.status_events.map((event) => ({
      key: `stand ${event.recorded_at} ${event.named}`,
      at: event.since,
      title: event.whole_number ? `${STOOD[event.status]}, the whole number` : STOOD[event.status],
      text: event.reason,
      by: event.by.name,
    })),
  ].sort((a, b) => b.at.localeCompare(a.at));
  if (entries.length === 0) return <p className="soft">Nothing was noted.</p>;
  return (
    <ol className={classes.history}>
      {entries.map(({ key, at, title, text, by }) => (
        <li key={key}>
          <strong>{title}</strong> {text}
          <small>
            <Moment value={at} /> · {by}
          </small>
        </li>
      ))}
    </ol>
  );
}
