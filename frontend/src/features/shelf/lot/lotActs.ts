import type { Lot } from "../queries";

export type LotAct =
  | "open"
  | "move"
  | "hold"
  | "release"
  | "reject"
  | "note"
  | "empty"
  | "write-off"
  | "return"
  | "give"
  | "label"
  | "close";

export interface ActWords {
  act: LotAct;
  /** On the button. */
  label: string;
  /** What it does, in a sentence. */
  says: string;
  isStop?: boolean;
}

export const ACT_WORDS: readonly ActWords[] = [
  { act: "open", label: "Open", says: "One container gets its opened date; the others stay sealed." },
  { act: "move", label: "Move", says: "To the van, a site, back to the shop." },
  { act: "note", label: "Note", says: "What somebody saw, under its date." },
  {
    act: "empty",
    label: "Pail is empty",
    says: "What the book still has becomes waste of the pours that used it.",
  },
  { act: "release", label: "OK again", says: "It may be poured after all." },
  { act: "hold", label: "Hold", says: "Nobody pours it until somebody has looked." },
  { act: "reject", label: "Reject", says: "Never to be poured again.", isStop: true },
  { act: "write-off", label: "Write off", says: "Spilled, set hard, good for nothing.", isStop: true },
  { act: "return", label: "Send back", says: "To the supplier, or to who lent it." },
  { act: "give", label: "Give away", says: "Sold or given to somebody." },
  { act: "label", label: "Correct the label", says: "Number, made and expiry days, containers." },
  { act: "close", label: "Not opened after all", says: "Undoes the opening." },
];

/** The acts that a lot allows as it stands, for who is looking. */
export function actsFor(
  lot: Lot,
  { mayRecord, isOwner }: { mayRecord: boolean; isOwner: boolean },
): LotAct[] {
  if (!mayRecord) return [];
  const isThere = lot.on_hand.amount !== "0";
  const allowed: Record<LotAct, boolean> = {
    open: isThere && lot.opened_on === null && lot.status !== "rejected",
    move: isThere,
    note: true,
    empty: isThere,
    release: lot.status !== "usable" && isOwner,
    hold: lot.status === "usable",
    reject: lot.status !== "rejected",
    "write-off": isThere,
    return: isThere,
    give: isThere,
    label: true,
    close: lot.opened_on !== null,
  };
  return ACT_WORDS.flatMap(({ act }) => (allowed[act] ? [act] : []));
}

/** The two acts that stand under the thumb: what a person most likely came for. */
export function mainActs(allowed: readonly LotAct[]): LotAct[] {
  const wanted: LotAct[] = ["release", "open", "hold", "move", "note"];
  return wanted.filter((act) => allowed.includes(act)).slice(0, 2);
}
