/**
 * Decimals as the server sends them: strings. They are rounded and grouped digit by digit and never become floats, which
 * would lose the last gram.
 */
const DECIMAL = /^([+-]?)(\d*)(?:\.(\d*))?$/;

export interface DecimalParts {
  isNegative: boolean;
  whole: string;
  fraction: string;
}

/** The parts of a decimal string, without idle zeros; null when the text is no decimal. */
export function decimalParts(text: string): DecimalParts | null {
  const match = DECIMAL.exec(text.trim());
  const digits = `${match?.[2] ?? ""}${match?.[3] ?? ""}`;
  if (!match || digits === "") return null;
  const whole = (match[2] ?? "").replace(/^0+(?=\d)/, "") || "0";
  const fraction = (match[3] ?? "").replace(/0+$/, "");
  const isZero = /^0*$/.test(whole + fraction);
  return { isNegative: match[1] === "-" && !isZero, whole, fraction };
}

/** Rounded half up (away from zero) to so many places, as text with exactly those places. */
export function roundTo(text: string, places: number): string {
  const parts = decimalParts(text);
  if (!parts) return text;
  const kept = parts.fraction.slice(0, places).padEnd(places, "0");
  const roundsUp = (parts.fraction[places] ?? "0") >= "5";
  const scaled = (BigInt(parts.whole + kept) + (roundsUp ? 1n : 0n)).toString().padStart(places + 1, "0");
  const whole = scaled.slice(0, scaled.length - places);
  const fraction = places > 0 ? `.${scaled.slice(-places)}` : "";
  const sign = parts.isNegative && /[1-9]/.test(scaled) ? "-" : "";
  return `${sign}${whole}${fraction}`;
}

/** The places worth showing: about four figures, so that 946.352946 reads 946.4 and 0.0412 stays 0.0412. */
export function placesWorthShowing(text: string): number {
  const parts = decimalParts(text);
  if (!parts) return 0;
  if (parts.whole.length >= 4) return 0;
  if (parts.whole !== "0") return Math.min(parts.fraction.length, 4 - parts.whole.length);
  const leading = /^0*/.exec(parts.fraction)?.[0].length ?? 0;
  return Math.min(parts.fraction.length, leading + 3);
}

/** The decimal as it is worth showing, without idle zeros. */
export function worthShowing(text: string): string {
  const parts = decimalParts(roundTo(text, placesWorthShowing(text)));
  if (!parts) return text;
  return `${parts.isNegative ? "-" : ""}${parts.whole}${parts.fraction && `.${parts.fraction}`}`;
}

/** Thousands set apart, as a person reads them: 16155.5 is 16,155.5. */
export function grouped(text: string): { whole: string; fraction: string } {
  const parts = decimalParts(text);
  if (!parts) return { whole: text, fraction: "" };
  const [, shown = ""] = text.trim().split(".");
  const whole = parts.whole.replace(/\B(?=(\d{3})+$)/g, ",");
  return { whole: `${parts.isNegative ? "−" : ""}${whole}`, fraction: shown === "" ? "" : `.${shown}` };
}

/** The most places that any of these needs, so that a column can line up on the point. */
export function placesOf(amounts: readonly string[]): number {
  return amounts.reduce((most, amount) => {
    return Math.max(most, decimalParts(worthShowing(amount))?.fraction.length ?? 0);
  }, 0);
}

/** For drawing only (a level, a bar's length): near enough, never to reckon with. */
export function toScale(amount: string): number {
  const value = Number(amount);
  return Number.isFinite(value) ? value : 0;
}
