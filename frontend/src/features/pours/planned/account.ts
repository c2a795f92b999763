import { type Said, UNSAID } from "@/components/entry/AmountField";
import { momentAt } from "@/components/entry/moment";
import { areUntouched, isSaid, type Line, plannedLines, usageBody } from "../lines/line";
import type { Pour, Remark } from "../queries";
import { type Seen, seenBody, seenOn } from "../seen/seen";
import { type Found, foundBody } from "../short/found";

/** What happened, as the form keeps it. */
export type Happened = {
  usages: Line[];
  found: Found[];
  /** On the shop's clock; "" is as planned, or now. */
  poured_at: string;
  people: number[];
  seen: Seen;
  note: string;
  leftover: { quantity: Said; went_to: string } | null;
};

/** The planned pour, to be confirmed. */
export function happeningOf(pour: Pour): Happened {
  return {
    usages: plannedLines(pour.planned, pour.place),
    found: [],
    poured_at: "",
    people: pour.people.map(({ id }) => id),
    seen: seenOn(pour),
    note: pour.note,
    leftover: null,
  };
}

export const NO_LEFTOVER = { quantity: UNSAID, went_to: "bin" };

interface Around {
  timeZone: string;
  temperature: string;
  /** The remarks whose units hold on. */
  before: Record<string, Remark> | undefined;
}

/** Time, people, left-over, finds and what was seen: whatever was said of it. */
export function aroundBody(typed: Omit<Happened, "usages">, { timeZone, temperature, before }: Around) {
  const poured_at = momentAt(typed.poured_at, timeZone);
  const { leftover } = typed;
  return {
    ...(poured_at && { poured_at }),
    people: typed.people,
    ...seenBody(typed.seen, temperature, before),
    note: typed.note.trim(),
    ...(typed.found.length > 0 && { found: typed.found.map(foundBody) }),
    ...(leftover?.quantity.body && {
      leftover: {
        quantity: leftover.quantity.body,
        went_to: leftover.went_to === "bin" ? ("bin" as const) : Number(leftover.went_to),
      },
    }),
  };
}

/** The body that completes a pour: without amounts where nobody touched them, for then it went as planned. */
export function completeBody(typed: Happened, planned: number, around: Around) {
  return {
    ...(!areUntouched(typed.usages, planned) && { usages: typed.usages.map(usageBody) }),
    ...aroundBody(typed, around),
  };
}

/** What is missing before it can be sent, by field. */
export function missingOf({
  usages,
  leftover,
}: Pick<Happened, "usages" | "leftover">): Record<string, string> {
  const unsaid = usages.flatMap((line, i) => (isSaid(line) ? [] : [{ line, i }]));
  return {
    ...Object.fromEntries(
      unsaid.map(({ line, i }) =>
        line.weighed
          ? [`usages.${i}.weighed`, "Put both weights in, with their unit."]
          : [`usages.${i}.quantity`, "Say how much, with its unit."],
      ),
    ),
    ...(leftover &&
      !leftover.quantity.body && { "leftover.quantity": "Say how much was left, or take it out again." }),
  };
}

/** The form's field for one of the body's: the plan's rows are the form's rows. */
export function fieldOf(name: string): string {
  return name
    .replace(/^planned\./, "usages.")
    .replace(/\.quantity\..*$/, ".quantity")
    .replace(/\.weighed\..*$/, ".weighed");
}
