import type { CSSProperties } from "react";
import { asPreferred, type Amount as Kept, Quantity, unitShown, useWays } from "@/components/figures";
import { toScale } from "@/components/figures/decimal";

/** Places that say enough in a list: tenths from 10 on, hundredths below; the exact amount stands behind the figure. */
function placesFor(amount: string): number {
  const size = Math.abs(toScale(amount));
  if (Number.isInteger(size) || size >= 100) return 0;
  return size >= 10 ? 1 : 2;
}

type Shown = Kept | null | undefined;

/** An amount in a list of many, rounded as a person reads it. */
export function Amount({ value }: { value: Shown }) {
  const { units } = useWays();
  if (!value) return null;
  return <Quantity value={value} places={placesFor(asPreferred(value, units).amount)} />;
}

/** The room that a column of such amounts needs to line up on the point: put it as `style` on the list. */
export function useAmountRoom(values: readonly Shown[]): CSSProperties {
  const { units } = useWays();
  const shown = values.flatMap((value) => (value ? [asPreferred(value, units)] : []));
  const places = Math.max(0, ...shown.map(({ amount }) => placesFor(amount)));
  const widest = Math.max(0, ...shown.map(({ unit }) => unitShown(unit).length));
  return { "--places": places, "--unit-room": `${widest * 0.95}ch` } as CSSProperties;
}
