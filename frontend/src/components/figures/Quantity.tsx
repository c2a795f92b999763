import type { CSSProperties } from "react";
import { grouped, placesOf, roundTo, worthShowing } from "./decimal";
import classes from "./figures.module.css";
import { type Amount, asPreferred, unitShown, unitSpoken } from "./units";
import { useWays } from "./ways";

interface FigureProps {
  whole: string;
  fraction: string;
  unit?: string;
  spoken?: string;
  isApproximate?: boolean;
  exact?: string;
}

/** Digits that line up on the point with those above and below, the unit smaller beside them. */
export function Figure({ whole, fraction, unit, spoken, isApproximate, exact }: FigureProps) {
  return (
    <span className={classes.figure} title={exact}>
      <span className={classes.whole}>
        {isApproximate ? "~" : ""}
        {whole}
      </span>
      <span className={classes.fraction}>{fraction}</span>
      {unit && (
        <span className={classes.unit}>
          {spoken ? (
            <>
              <span aria-hidden="true">{unit}</span>
              <span className="only-read-aloud"> {spoken}</span>
            </>
          ) : (
            unit
          )}
        </span>
      )}
    </span>
  );
}

interface QuantityProps {
  value: Amount | null | undefined;
  /** Places shown; left out, about four figures. */
  places?: number;
  /** "kept" shows the unit the server sent; otherwise the shop's preferred unit. */
  as?: "preferred" | "kept";
  isApproximate?: boolean;
}

/** An amount with its unit, in the shop's preferred units. Nothing at all where there is no amount. */
export function Quantity({ value, places, as = "preferred", isApproximate = false }: QuantityProps) {
  const { units } = useWays();
  if (!value) return null;
  const shown = as === "kept" ? value : asPreferred(value, units);
  const rounded = places === undefined ? worthShowing(shown.amount) : roundTo(shown.amount, places);
  return (
    <Figure
      {...grouped(rounded)}
      unit={unitShown(shown.unit)}
      spoken={unitSpoken(shown.unit)}
      isApproximate={isApproximate}
      exact={`${value.amount} ${unitShown(value.unit)}`}
    />
  );
}

/** Room for the places that a column needs: put it as `style` on the list or table whose figures should line up. */
export function alignment(amounts: readonly string[]): CSSProperties {
  return { "--places": placesOf(amounts) } as CSSProperties;
}

/** The same for quantities, after they are turned into the shop's preferred units. */
export function useAlignment(quantities: readonly (Amount | null | undefined)[]): CSSProperties {
  const { units } = useWays();
  const shown = quantities.flatMap((value) => (value ? [asPreferred(value, units)] : []));
  const widest = shown.reduce((most, { unit }) => Math.max(most, unitShown(unit).length), 0);
  return {
    ...alignment(shown.map(({ amount }) => amount)),
    "--unit-room": `${widest * 0.95}ch`,
  } as CSSProperties;
}
