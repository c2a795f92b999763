import type { Lot } from "../queries";

/** The day so many days after another. */
export function addDays(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}

export interface UseByStep {
  label: string;
  day: string | null;
  note?: string;
  /** Whether this is the step that set the use-by. */
  decides: boolean;
}

interface Lives {
  shelf_life_days: number | null;
  open_life_days: number | null;
}

/** How a lot's use-by came about: the earlier of its expiry and its opened life. */
export function useBySteps(lot: Lot, { shelf_life_days, open_life_days }: Lives): UseByStep[] {
  const steps: UseByStep[] = [];
  const expiry = lot.expires_on;
  const byOpening = lot.opened_on && open_life_days !== null ? addDays(lot.opened_on, open_life_days) : null;
  if (lot.made_on) steps.push({ label: "Made", day: lot.made_on, decides: false });
  if (expiry) {
    const isReckoned =
      lot.made_on && shelf_life_days !== null && addDays(lot.made_on, shelf_life_days) === expiry;
    steps.push({
      label: "Expires unopened",
      day: expiry,
      note: isReckoned
        ? `${shelf_life_days} days after it was made`
        : lot.origin === "blend"
          ? "the earliest of what went into the mix"
          : "as the label says",
      decides: expiry === lot.use_by,
    });
  }
  if (lot.opened_on) {
    steps.push({ label: "Opened", day: lot.opened_on, decides: false });
    if (byOpening) {
      steps.push({
        label: "Good once open until",
        day: byOpening,
        note: `${open_life_days} days after opening`,
        decides: byOpening === lot.use_by && byOpening !== expiry,
      });
    }
  }
  return steps;
}
