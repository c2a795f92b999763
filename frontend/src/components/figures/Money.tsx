import { grouped, roundTo } from "./decimal";
import classes from "./figures.module.css";
import { useWays } from "./ways";

interface MoneyProps {
  /** Decimal text in the shop's currency; left out for whoever may not see money. */
  value: string | null | undefined;
  places?: number;
  /** Said after the figure, smaller: "per sq ft". */
  per?: string;
}

/** The currency's sign, such as "$", or its code where it has none. */
export function currencySign(currency: string): string {
  const parts = new Intl.NumberFormat("en", { style: "currency", currency, currencyDisplay: "narrowSymbol" });
  return parts.formatToParts(0).find((part) => part.type === "currency")?.value ?? currency;
}

/** The places a currency is counted in: two for most. */
export function currencyPlaces(currency: string): number {
  return (
    new Intl.NumberFormat("en", { style: "currency", currency }).resolvedOptions().maximumFractionDigits ?? 2
  );
}

/** A sum of money, lined up on the point. Nothing where there is none, dots while money is hidden. */
export function Money({ value, places, per }: MoneyProps) {
  const { currency, showsMoney } = useWays();
  if (value === null || value === undefined) return null;
  if (!showsMoney) return <span className={classes.hidden}>hidden</span>;
  const { whole, fraction } = grouped(roundTo(value, places ?? currencyPlaces(currency)));
  const isNegative = whole.startsWith("−");
  return (
    <span className={classes.figure} title={`${value} ${currency}`}>
      <span className={classes.whole}>
        {isNegative && "−"}
        <span className={classes.sign}>{currencySign(currency)}</span>
        {isNegative ? whole.slice(1) : whole}
      </span>
      <span className={classes.fraction}>{fraction}</span>
      {per && <span className={classes.unit}>{per}</span>}
    </span>
  );
}
