import type { Choice } from "@/components/entry/PickOne";
import { type Amount, asPreferred, dayInWords, unitShown, useWays } from "@/components/figures";
import { worthShowing } from "@/components/figures/decimal";
import type { PreferredUnits } from "@/components/figures/units";
import type { LotRow } from "../queries";

/** An amount in words, in the shop's unit: "12.5 fl oz". */
export function inWordsOf(units: PreferredUnits): (amount: Amount) => string {
  return (amount) => {
    const shown = asPreferred(amount, units);
    return `${worthShowing(shown.amount)} ${unitShown(shown.unit)}`;
  };
}

export function useInWords(): (amount: Amount) => string {
  return inWordsOf(useWays().units);
}

function asksWhy({ is_expired, status }: LotRow): boolean {
  return is_expired || status === "on_hold";
}

interface LotChoices {
  choices: Choice[];
  /** Those that the owner is asked about: past their use-by, or on hold. */
  needsWord: ReadonlySet<string>;
}

/** The lots of a material, one choice for each place where some of it lies: those at the pour's place first, good ones before others. */
export function useLotChoices(lots: readonly LotRow[], place: number): LotChoices {
  const inWords = useInWords();
  const needsWord = new Set<string>();
  const rows = lots
    .filter(({ status }) => status !== "rejected")
    .flatMap((lot) => lot.places.map((at) => ({ lot, at, isHere: at.place === place })))
    .sort((a, b) => Number(b.isHere) - Number(a.isHere) || Number(asksWhy(a.lot)) - Number(asksWhy(b.lot)));
  const choices = rows.map(({ lot, at, isHere }) => {
    const value = `${lot.id}@${at.place}`;
    if (asksWhy(lot)) needsWord.add(value);
    const standing = [
      `${inWords(at.on_hand)} ${isHere ? "here" : `at ${at.name}`}`,
      ...(lot.status === "on_hold" ? ["on hold"] : []),
      ...(lot.use_by
        ? [`${lot.is_expired ? "past its use-by of" : "use by"} ${dayInWords(lot.use_by)}`]
        : []),
      ...(lot.opened_on ? ["open"] : []),
    ];
    return { value, label: `Lot ${lot.number} · ${lot.lot_number}`, note: standing.join(", ") };
  });
  return { choices, needsWord };
}
