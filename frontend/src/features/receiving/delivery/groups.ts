import { fraction, fromDecimal, plus, toDecimal } from "@/components/figures/fraction";
import type { DeliveryLine } from "../queries";

/** What was sold under one price: the lines of one pack, or one line of a material. */
export interface Group {
  key: string;
  /** How the price's body names it. */
  named: { pack_line: number } | { line: number };
  title: string;
  lines: DeliveryLine[];
  /** Typed cost of all its lines; null while the price is to follow; undefined for whoever sees no money. */
  cost: string | null | undefined;
  isProvisional: boolean;
  isPaid: boolean;
}

function costOf(lines: readonly DeliveryLine[]): string | null | undefined {
  const [first] = lines;
  if (first?.cost === undefined) return undefined;
  if (lines.some(({ cost }) => cost === null)) return null;
  const sum = lines.reduce(
    (all, { cost }) => plus(all, fromDecimal(cost ?? "0") ?? fraction(0n)),
    fraction(0n),
  );
  return toDecimal(sum, 4);
}

/** A delivery's lines as they were sold. */
export function groupsOf(lines: readonly DeliveryLine[]): Group[] {
  const groups = new Map<string, DeliveryLine[]>();
  for (const line of lines) {
    const key = line.pack_line === null ? `line${line.id}` : `pack${line.pack_line}`;
    groups.set(key, [...(groups.get(key) ?? []), line]);
  }
  return [...groups].flatMap(([key, own]) => {
    const [first] = own;
    if (!first) return [];
    const count = first.pack_count && first.pack_count > 1 ? `${first.pack_count} × ` : "";
    return [
      {
        key,
        named: first.pack_line === null ? { line: first.id } : { pack_line: first.pack_line },
        title: first.pack ? `${count}${first.pack.name}` : first.material.name,
        lines: own,
        cost: costOf(own),
        isProvisional: own.some(({ is_provisional }) => is_provisional),
        isPaid: first.basis === "paid",
      },
    ];
  });
}
