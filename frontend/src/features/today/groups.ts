import type { Need } from "./queries";

type Kind = Need["kind"];
type Act = Need["act"];

export interface Group {
  key: string;
  title: string;
  rows: Need[];
  /** Where all of this sort are listed. */
  more?: { to: string; label: string };
}

interface Sort {
  key: string;
  title: string;
  kinds: readonly Kind[];
  more?: Group["more"];
}

/** What has to be settled on the shelf and in the office, in this order; pours stand by themselves. */
const SORTS: readonly Sort[] = [
  { key: "reason", title: "Waits for your word", kinds: ["pour_needs_reason"] },
  {
    key: "order",
    title: "Below the reorder point",
    kinds: ["material_below"],
    more: { to: "/figures/reorder", label: "What to order" },
  },
  { key: "hold", title: "On hold", kinds: ["lot_on_hold"] },
  {
    key: "expired",
    title: "Past its use-by",
    kinds: ["lot_expired"],
    more: { to: "/figures/expiring", label: "All use-by days" },
  },
  { key: "expiring", title: "Use these first", kinds: ["lot_expiring"] },
  { key: "price", title: "Price to follow", kinds: ["delivery_without_price"] },
];

const TO_LOG: ReadonlySet<Kind> = new Set(["pour_overdue", "pour_unlogged", "pour_today", "pour_undated"]);

/** Planned pours to log, the latest missed first: those that were to happen before, today's, and those without a day. */
export function poursToLog(rows: readonly Need[]): Need[] {
  return rows.filter(({ kind }) => TO_LOG.has(kind));
}

export function poursToCome(rows: readonly Need[]): Need[] {
  return rows.filter(({ kind }) => kind === "pour_coming");
}

/** Everything else that needs a hand, grouped by what has to be done; empty groups are left out. */
export function groupsOf(rows: readonly Need[]): Group[] {
  return SORTS.flatMap(({ key, title, kinds, more }) => {
    const found = rows.filter(({ kind }) => kinds.includes(kind));
    return found.length ? [{ key, title, rows: found, ...(more && { more }) }] : [];
  });
}

/** What settles a row, as the key beside it says. */
export const ACTS: Record<Act, string> = {
  complete: "Log it",
  explain: "Say why",
  write_off: "Write off",
  release_or_reject: "OK again or reject",
  order: "Look and order",
  price: "Enter the price",
  use_first: "Use it first",
  prepare: "Is all there?",
};

/** Acts that only an owner may carry out. */
const OWNERS_ACTS: ReadonlySet<Act> = new Set(["explain", "price", "order"]);

export function mayAct(act: Act, role: "owner" | "crew" | "viewer"): boolean {
  if (role === "viewer") return false;
  return role === "owner" || !OWNERS_ACTS.has(act);
}

const PAGES: Record<string, string> = {
  pour: "/pours",
  lot: "/shelf/lots",
  material: "/shelf/materials",
  delivery: "/receiving",
};

/** The page of the record that the act is on. */
export function pageOf({ link }: Need): string {
  return `${PAGES[link.noun] ?? ""}/${link.id}`;
}

/** Why a pour is listed to be logged, in the bench's words. */
export const LOG_WORDS: Partial<Record<Kind, { mark: "look" | "quiet"; words: string }>> = {
  pour_overdue: { mark: "look", words: "Was planned before today" },
  pour_unlogged: { mark: "look", words: "Its time has passed" },
  pour_today: { mark: "quiet", words: "Today" },
  pour_undated: { mark: "quiet", words: "No day yet" },
};

export interface PlannedDay {
  day: string;
  pours: Need[];
}

/** Today and the days after it, each with what is planned on it. */
export function daysFrom(today: string, rows: readonly Need[], count = 8): PlannedDay[] {
  const start = Date.parse(`${today}T00:00:00Z`);
  return Array.from({ length: count }, (_, i) => {
    const day = new Date(start + i * 86_400_000).toISOString().slice(0, 10);
    const pours = rows.filter(({ link, on }) => link.noun === "pour" && on === day);
    return { day, pours };
  });
}
