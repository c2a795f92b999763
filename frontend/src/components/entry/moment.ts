/** The parts of a moment on the wall clock of a time zone, as one number to compare: minutes since 1970 by that clock. */
function wallMinutes(moment: number, timeZone: string): number {
  const parts = new Intl.DateTimeFormat("en-GB", {
    timeZone,
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
    hourCycle: "h23",
  }).formatToParts(moment);
  const part = (type: string) => Number(parts.find((each) => each.type === type)?.value ?? 0);
  return Date.UTC(part("year"), part("month") - 1, part("day"), part("hour"), part("minute")) / 60_000;
}

/** "2027-03-12T14:05" on the shop's clock, as a moment in UTC (ISO 8601); undefined where it is no time. */
export function momentAt(local: string, timeZone: string): string | undefined {
  const asked = Date.parse(`${local.slice(0, 16)}:00Z`) / 60_000;
  if (!/^\d{4}-\d\d-\d\dT\d\d:\d\d/.test(local) || Number.isNaN(asked)) return undefined;
  let moment = asked;
  // Twice, as the offset may differ between the guess and the moment itself.
  for (let i = 0; i < 2; i += 1) moment += asked - wallMinutes(moment * 60_000, timeZone);
  return new Date(moment * 60_000).toISOString();
}

/** A moment as the shop's clock shows it, the way a time field takes it: "2027-03-12T14:05". */
export function onTheClock(moment: string | null | undefined, timeZone: string): string {
  if (!moment) return "";
  return new Date(wallMinutes(Date.parse(moment), timeZone) * 60_000).toISOString().slice(0, 16);
}
