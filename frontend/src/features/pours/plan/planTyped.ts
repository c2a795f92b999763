import { momentAt, onTheClock } from "@/components/entry/moment";
import type { Coat } from "@/components/pours/words";
import { isSaid, type Line, plannedLines, usageBody } from "../lines/line";
import { aroundBody, type Happened } from "../planned/account";
import type { Pour, Remark } from "../queries";
import { seenOn } from "../seen/seen";

/** A pour that is to be, or that happened without a plan, as the form keeps it. */
export type PlanTyped = Omit<Happened, "usages"> & {
  usages: Line[];
  /** Whether it has happened already. */
  happened: boolean;
  layer: Coat | "";
  pieces: number[];
  place: string;
  is_redo: boolean;
  allow_short: boolean;
};

export const NEW_PLAN: PlanTyped = {
  usages: [],
  found: [],
  poured_at: "",
  people: [],
  seen: { conditions: {}, ticks: {} },
  note: "",
  leftover: null,
  happened: false,
  layer: "",
  pieces: [],
  place: "",
  is_redo: false,
  allow_short: false,
};

/** A planned pour, to be typed over. */
export function typedPlan(pour: Pour, timeZone: string): PlanTyped {
  return {
    ...NEW_PLAN,
    usages: plannedLines(pour.planned, pour.place),
    poured_at: onTheClock(pour.planned_for, timeZone),
    people: pour.people.map(({ id }) => id),
    seen: seenOn(pour),
    note: pour.note,
    layer: pour.layer,
    pieces: pour.pieces.map(({ piece }) => piece),
    place: String(pour.place),
    is_redo: pour.is_redo,
  };
}

interface Around {
  timeZone: string;
  temperature: string;
  before: Record<string, Remark> | undefined;
}

/** Of a plan, untouched amounts are the tool's and typed ones a person's; the lines as the body takes them. */
function common(typed: PlanTyped) {
  return {
    layer: typed.layer as Coat,
    pieces: typed.pieces,
    is_redo: typed.is_redo,
    usages: typed.usages.map(usageBody),
  };
}

/** The body of a new pour: a plan, or with `complete` one that has happened. */
export function pourBody(typed: PlanTyped, around: Around) {
  const place = typed.place === "" ? {} : { place: Number(typed.place) };
  if (typed.happened) return { ...common(typed), ...place, ...aroundBody(typed, around), complete: true };
  const poured_at = momentAt(typed.poured_at, around.timeZone);
  return {
    ...common(typed),
    ...place,
    ...(poured_at && { poured_at }),
    people: typed.people,
    note: typed.note.trim(),
    allow_short: typed.allow_short,
  };
}

/** The body that changes a plan. Shares that were typed for its tops stay while the tops do. */
export function changeBody(typed: PlanTyped, pour: Pour, timeZone: string) {
  const before = pour.pieces.map(({ piece }) => piece);
  const isSameTops =
    before.length === typed.pieces.length && before.every((piece) => typed.pieces.includes(piece));
  const { pieces, ...rest } = common(typed);
  return {
    ...rest,
    ...(!isSameTops && { pieces }),
    ...(typed.place !== "" && { place: Number(typed.place) }),
    poured_at: momentAt(typed.poured_at, timeZone) ?? null,
    people: typed.people,
    note: typed.note.trim(),
    allow_short: typed.allow_short,
  };
}

/** What is missing before it can be sent, by field. */
export function missingOfPlan({ layer, pieces, usages, happened }: PlanTyped): Record<string, string> {
  const unsaid = usages.flatMap((line, i) => (isSaid(line) ? [] : [i]));
  return {
    ...(layer === "" && { layer: "Say which coat it is." }),
    ...(pieces.length === 0 && { pieces: "Pick the tops it goes on." }),
    ...(happened && usages.length === 0 && { usages: "Say what went in." }),
    ...Object.fromEntries(unsaid.map((i) => [`usages.${i}.quantity`, "Say how much, with its unit."])),
  };
}

/** Fills in an earlier pour's amounts; what a person has said already stays. */
export function filledIn(lines: readonly Line[], before: readonly Line[]): Line[] {
  const said = lines.filter(({ is_touched }) => is_touched);
  const kept = new Set(said.map(({ material }) => material));
  return [...before.filter(({ material }) => !kept.has(material)), ...said];
}
