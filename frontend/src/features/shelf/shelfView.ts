import type { LotRow, ShelfRow } from "./queries";
import { KINDS, type Kind } from "./words";

/** A material on its shelf, with the containers that stand there. */
export interface Standing {
  row: ShelfRow;
  lots: LotRow[];
  /** Lots that the search named. */
  found: ReadonlySet<number>;
}

export interface Board {
  kind: Kind;
  title: string;
  materials: Standing[];
}

/** Days before its use-by from which on a lot is pointed out. */
export const SOON = 60;

function says(text: string, wanted: string): boolean {
  return text.toLowerCase().includes(wanted);
}

/** The shelf by kinds, narrowed to what was searched: a material's name or code, a lot's number or the one on its label. */
export function boardsOf(
  rows: readonly ShelfRow[],
  lots: readonly LotRow[],
  { search = "", kind = "" }: { search?: string; kind?: string },
): Board[] {
  const wanted = search
    .trim()
    .toLowerCase()
    .replace(/^lot\s+/, "");
  const byMaterial = new Map<number, LotRow[]>();
  for (const lot of lots) byMaterial.set(lot.material.id, [...(byMaterial.get(lot.material.id) ?? []), lot]);
  const standing = rows.flatMap((row): Standing[] => {
    const own = byMaterial.get(row.material.id) ?? [];
    if (kind !== "" && row.material.kind !== kind) return [];
    if (wanted === "") return [{ row, lots: own, found: new Set() }];
    const found = own.filter((lot) => String(lot.number) === wanted || says(lot.lot_number, wanted));
    const isNamed = says(row.material.name, wanted) || says(row.material.code, wanted);
    return isNamed || found.length > 0 ? [{ row, lots: own, found: new Set(found.map(({ id }) => id)) }] : [];
  });
  return KINDS.flatMap(({ value, many }) => {
    const materials = standing.filter(({ row }) => row.material.kind === value);
    return materials.length > 0 ? [{ kind: value, title: many, materials }] : [];
  });
}

export interface UseByAlert {
  mark: "look" | "stop";
  text: string;
}

/** What to know of a material's use-bys: past ones first, then the next within two months. */
export function useByAlert(lots: readonly LotRow[]): UseByAlert | null {
  const past = lots.filter(({ is_expired }) => is_expired).length;
  if (past > 0) return { mark: "stop", text: past === 1 ? "1 past its use-by" : `${past} past their use-by` };
  const left = lots.flatMap(({ days_left }) => (days_left === null ? [] : [days_left]));
  const next = Math.min(...left);
  if (next > SOON) return null;
  const when = next === 0 ? "today" : next === 1 ? "tomorrow" : `in ${next} days`;
  return { mark: "look", text: `Use by ${when}` };
}

/** Containers on hold or rejected among these lots. */
export function heldCount(lots: readonly LotRow[]): number {
  return lots.filter(({ status }) => status !== "usable").length;
}

/** What a lot is called aloud: "Lot 53". */
export function lotName({ number }: { number: number }): string {
  return `Lot ${number}`;
}

/** What stands on the label, or that nothing does. */
export function onLabel({
  lot_number,
  is_own_number,
}: {
  lot_number: string;
  is_own_number: boolean;
}): string {
  return is_own_number ? "none on the label" : lot_number;
}
