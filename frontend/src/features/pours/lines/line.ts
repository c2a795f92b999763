import { type Said, UNSAID } from "@/components/entry/AmountField";
import { readNumber } from "@/components/entry/reading";
import { type Amount, converted, unitShown } from "@/components/figures";
import { type Fraction, fraction, fromDecimal, over, times, toDecimal } from "@/components/figures/fraction";
import type { Planned, Provenance, Usage, UsageBody } from "../queries";

/** One amount of one material as a form keeps it. */
export type Line = {
  key: string;
  material: number;
  quantity: Said;
  /** The container before and after, where it was put on the scale. */
  weighed: { before: Said; after: Said } | null;
  /** "lot@place", or "" where the tool is to choose. */
  lot: string;
  bucket: string;
  is_waste: boolean;
  reason: string;
  /** Whether a person said or confirmed the amount; else it is as the tool filled it in. */
  is_touched: boolean;
  is_lot_touched: boolean;
  /** How an untouched amount was known when it was filled in. */
  was: Provenance;
};

let made = 0;

/** An empty line for a material. */
export function freshLine(material: number): Line {
  made += 1;
  return {
    key: `new ${made}`,
    material,
    quantity: UNSAID,
    weighed: null,
    lot: "",
    bucket: "",
    is_waste: false,
    reason: "",
    is_touched: true,
    is_lot_touched: false,
    was: "assumed",
  };
}

/** An amount as somebody said it once: "1/3 cup", with what to send. */
export function saidOnce(amount: string, unit: string): Said {
  const isRough = amount.startsWith("~");
  return {
    text: `${amount} ${unitShown(unit)}`,
    body: isRough ? `${amount} ${unit}` : { amount, unit },
  };
}

function lineOf(row: Planned | Usage, key: string): Line {
  return {
    ...freshLine(row.material),
    key,
    quantity: saidOnce(row.typed_amount, row.typed_unit),
    bucket: row.bucket === null ? "" : String(row.bucket),
    is_waste: row.is_waste,
    reason: row.reason,
    is_touched: false,
    was: row.provenance,
  };
}

/** The plan's amounts, to be confirmed or mended. */
export function plannedLines(planned: readonly Planned[], place: number): Line[] {
  return planned.map((row) => ({
    ...lineOf(row, `planned ${row.position}`),
    lot: row.lot === null ? "" : `${row.lot}@${row.place ?? place}`,
  }));
}

/** What went in, one line for each amount that was said; what several lots gave of one stays one line without a lot. */
export function usedLines(usages: readonly Usage[]): Line[] {
  const byPosition = new Map<number, Usage[]>();
  for (const row of usages) {
    if (row.given_by === null) byPosition.set(row.position, [...(byPosition.get(row.position) ?? []), row]);
  }
  return [...byPosition.values()].flatMap(([first, ...more]) => {
    if (!first) return [];
    const lots = new Set([first, ...more].map(({ lot, place }) => `${lot}@${place}`));
    const [only] = lots;
    const isWaste = [first, ...more].every(({ is_waste }) => is_waste);
    const reason = isWaste || !first.is_waste ? first.reason : "";
    return [
      {
        ...lineOf(first, `used ${first.position}`),
        lot: lots.size === 1 && only ? only : "",
        is_waste: isWaste,
        reason,
      },
    ];
  });
}

/** Whether the line's amount can be sent. */
export function isSaid(line: Line): boolean {
  return line.weighed
    ? Boolean(line.weighed.before.body && line.weighed.after.body)
    : Boolean(line.quantity.body);
}

function provenanceOf(line: Line): Provenance {
  if (line.weighed) return "weighed";
  return line.is_touched ? "typed" : line.was;
}

/** The body of a line. */
export function usageBody(line: Line): UsageBody {
  const [lot, place] = line.lot === "" ? [] : line.lot.split("@").map(Number);
  const amount =
    line.weighed?.before.body && line.weighed.after.body
      ? { weighed: { before: line.weighed.before.body, after: line.weighed.after.body } }
      : { quantity: line.quantity.body ?? line.quantity.text };
  return {
    material: line.material,
    ...amount,
    ...(lot && { lot }),
    ...(place && { place }),
    ...(line.bucket.trim() !== "" && { bucket: Number(line.bucket) }),
    is_waste: line.is_waste,
    reason: line.reason.trim(),
    provenance: provenanceOf(line),
    lot_provenance: line.is_lot_touched ? "typed" : "assumed",
  };
}

/** Whether every line is still as the tool filled it in, and none came or went. */
export function areUntouched(lines: readonly Line[], planned: number): boolean {
  return (
    lines.length === planned &&
    lines.every((line) => !line.is_touched && !line.is_lot_touched && !line.weighed)
  );
}

function exact(amount: string): Fraction | null {
  return readNumber(amount.replace(/^~/, ""));
}

/** Of a said amount, the part that is left when some of it comes from elsewhere; in the unit of what was taken. */
export function lessOf(whole: Amount, taken: Amount): Amount | null {
  const same = converted(whole, taken.unit);
  const [all, some] = [same && fromDecimal(same.amount), fromDecimal(taken.amount)];
  if (!all || !some) return null;
  const rest = fraction(all.n * some.d - some.n * all.d, all.d * some.d);
  return rest.n > 0n ? { amount: toDecimal(rest), unit: taken.unit } : null;
}

/** The amount for another area: scaled, rounded as one would say it; things that are counted go up to the next whole. */
export function scaled(amount: string, unit: string, ratio: Fraction): string {
  const known = exact(amount);
  if (!known) return amount;
  if (ratio.n === ratio.d) return amount.replace(/^~/, "");
  const next = times(known, ratio);
  if (unit === "each") return ((next.n + next.d - 1n) / next.d).toString();
  const size = Number(toDecimal(next));
  return toDecimal(next, size >= 100 ? 0 : size >= 10 ? 1 : 2);
}

/** One area over another, exactly. */
export function ratioOf(area: string, of: string): Fraction {
  const [above, below] = [fromDecimal(area), fromDecimal(of)];
  return above && below && below.n !== 0n && above.n !== 0n ? over(above, below) : fraction(1n);
}

/** The amounts of an earlier pour for tops of another area: all assumed, no lot named, nothing that was wasted. */
export function likeBefore(usages: readonly Usage[], ratio: Fraction): Line[] {
  return usedLines(usages)
    .filter(({ is_waste }) => !is_waste)
    .map((line) => {
      const { body, text } = line.quantity;
      const said =
        typeof body === "object"
          ? saidOnce(scaled(body.amount, body.unit, ratio), body.unit)
          : { text, body };
      return {
        ...line,
        quantity: said,
        lot: "",
        bucket: line.bucket,
        reason: "",
        is_touched: false,
        was: "assumed",
      };
    });
}
