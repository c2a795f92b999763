import { useWays } from "./ways";

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** A day as it is written on a label: "12 Mar 2027". The text is the shop's own day and is not moved between zones. */
export function dayInWords(day: string): string {
  const [year, month, date] = day.split("-");
  return `${Number(date)} ${MONTHS[Number(month) - 1] ?? month} ${year}`;
}

/** The day of a moment in the shop's time zone, as YYYY-MM-DD. */
export function dayOf(moment: Date, timeZone: string): string {
  return new Intl.DateTimeFormat("en-CA", { timeZone, dateStyle: "short" }).format(moment);
}

/** Whole days from one day to another; negative when the other lies before. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000);
}

/** "today", "in 12 days", "3 days ago", counted in the shop's days. */
export function daysAway(day: string, today: string): string {
  const away = daysBetween(today, day);
  if (away === 0) return "today";
  if (Math.abs(away) === 1) return away > 0 ? "tomorrow" : "yesterday";
  return away > 0 ? `in ${away} days` : `${-away} days ago`;
}

/** Today, by the shop's clock. */
export function useToday(): string {
  return dayOf(new Date(), useWays().timeZone);
}

interface DayProps {
  value: string | null | undefined;
  /** Say how far away it is, too. */
  away?: boolean;
}

export function Day({ value, away = false }: DayProps) {
  const today = useToday();
  if (!value) return null;
  return (
    <time dateTime={value}>
      {dayInWords(value)}
      {away && <span className="soft"> · {daysAway(value, today)}</span>}
    </time>
  );
}

/** A moment in the shop's time zone: "12 Mar 2027, 14:05". */
export function Moment({ value }: { value: string | null | undefined }) {
  const { timeZone } = useWays();
  if (!value) return null;
  const moment = new Date(value);
  const time = new Intl.DateTimeFormat("en-GB", { timeZone, timeStyle: "short" }).format(moment);
  return (
    <time dateTime={value}>
      {dayInWords(dayOf(moment, timeZone))}, {time}
    </time>
  );
}
