/** An exact number: n over d, d > 0. Used where a typed "1/3" or a conversion must not be rounded on the way. */
export interface Fraction {
  n: bigint;
  d: bigint;
}

function gcd(a: bigint, b: bigint): bigint {
  return b === 0n ? (a < 0n ? -a : a) : gcd(b, a % b);
}

export function fraction(n: bigint, d = 1n): Fraction {
  const shared = gcd(n, d) || 1n;
  return { n: n / shared, d: d / shared };
}

/** From decimal text such as "29.5735295625"; null when the text is no decimal. */
export function fromDecimal(text: string): Fraction | null {
  const match = /^(-?)(\d*)\.?(\d*)$/.exec(text.trim());
  if (!match || `${match[2]}${match[3]}` === "") return null;
  const n = BigInt(`${match[2] ?? ""}${match[3] ?? ""}`);
  return fraction(match[1] === "-" ? -n : n, 10n ** BigInt((match[3] ?? "").length));
}

export function plus(a: Fraction, b: Fraction): Fraction {
  return fraction(a.n * b.d + b.n * a.d, a.d * b.d);
}

export function times(a: Fraction, b: Fraction): Fraction {
  return fraction(a.n * b.n, a.d * b.d);
}

export function over(a: Fraction, b: Fraction): Fraction {
  const flip = b.n < 0n ? -1n : 1n;
  return fraction(a.n * b.d * flip, a.d * b.n * flip);
}

/** As decimal text, rounded half up to at most so many places (six: a millionth, the smallest amount that is kept). */
export function toDecimal(value: Fraction, places = 6): string {
  const scale = 10n ** BigInt(places);
  const size = value.n < 0n ? -value.n : value.n;
  const scaled = ((size * scale * 2n + value.d) / (value.d * 2n)).toString().padStart(places + 1, "0");
  const text = `${scaled.slice(0, scaled.length - places)}.${scaled.slice(scaled.length - places)}`;
  const short = text.replace(/\.?0+$/, "");
  return value.n < 0n && short !== "0" ? `-${short}` : short;
}
