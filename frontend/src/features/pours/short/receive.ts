import type { Material, Pack } from "@/api/records";
import type { Said } from "@/components/entry/AmountField";
import { unitShown } from "@/components/figures";
import type { Shortage } from "../lines/short";

/** One material that came in: how much, and what stands on its label. */
export type Came = { material: number; quantity: Said; lot_number: string };

export type Receipt = {
  supplier: string;
  received_on: string;
  /** The pack or kit that was opened, or "" where the amounts are said one by one. */
  pack: string;
  came: Came[];
};

/** The packs in which something that is short may have come, those with most of it first. */
export function packsFor(shortages: readonly Shortage[], packs: readonly Pack[]): Pack[] {
  const short = new Set(shortages.map(({ material }) => material));
  const holds = (pack: Pack) => pack.contents.filter(({ material }) => short.has(material.id)).length;
  return packs.filter((pack) => holds(pack) > 0).sort((a, b) => holds(b) - holds(a));
}

/** What is filled in: the likeliest pack and its supplier, the day of the pour, what is missing. */
export function likelyReceipt(
  shortages: readonly Shortage[],
  packs: readonly Pack[],
  materials: readonly Material[],
  receivedOn: string,
): Receipt {
  const [pack] = packsFor(shortages, packs);
  const first = materials.find(({ id }) => id === shortages[0]?.material);
  return {
    supplier: String(pack?.supplier.id ?? first?.main_supplier?.id ?? ""),
    received_on: receivedOn,
    pack: pack ? String(pack.id) : "",
    came: pack ? contentsOf(pack) : missingOnes(shortages),
  };
}

export function contentsOf(pack: Pack): Came[] {
  return pack.contents.map(({ material }) => ({
    material: material.id,
    quantity: { text: "" },
    lot_number: "",
  }));
}

export function missingOnes(shortages: readonly Shortage[]): Came[] {
  return shortages.map(({ material, missing }) => ({
    material,
    quantity: { text: `${missing.amount} ${unitShown(missing.unit)}`, body: missing },
    lot_number: "",
  }));
}

/** The delivery's body: no price, it follows. */
export function deliveryBody({ supplier, received_on, pack, came }: Receipt, place: number) {
  const label = (each: Came) => (each.lot_number.trim() === "" ? {} : { lot_number: each.lot_number.trim() });
  return {
    supplier: Number(supplier),
    received_on,
    place,
    lines:
      pack === ""
        ? came.map((each) => ({
            material: each.material,
            quantity: each.quantity.body ?? each.quantity.text,
            ...label(each),
          }))
        : [
            {
              pack: Number(pack),
              count: 1,
              contents: came.map((each) => ({ material: each.material, ...label(each) })),
            },
          ],
  };
}
