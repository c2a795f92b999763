import { dayInWords } from "@/components/figures";
import type { PlannedDay } from "./groups";
import classes from "./today.module.css";

const DAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];

function weekday(day: string): string {
  return DAYS[new Date(`${day}T00:00:00Z`).getUTCDay()] ?? "";
}

function said(days: readonly PlannedDay[]): string {
  const busy = days.filter(({ pours }) => pours.length > 0);
  if (busy.length === 0) return "No pour planned.";
  return busy
    .map(({ day, pours }) => `${dayInWords(day)}: ${pours.length} ${pours.length === 1 ? "pour" : "pours"}`)
    .join("; ");
}

/** Today and the week after it on one line, a coat laid on each day for each pour that is planned. */
export function WeekStrip({ days }: { days: readonly PlannedDay[] }) {
  return (
    <div role="img" aria-label={said(days)} className={classes.week}>
      {days.map(({ day, pours }, i) => (
        <span key={day} className={classes.weekday} data-today={i === 0 || undefined}>
          <span className={classes.coats}>
            {pours.map(({ link }) => (
              <span key={link.id} />
            ))}
          </span>
          <span className={classes.date}>
            {i === 0 ? "Today" : weekday(day)}
            <b>{Number(day.slice(8))}</b>
          </span>
        </span>
      ))}
    </div>
  );
}
