import type { components } from "@/api/schema.gen";
import { type Said, UNSAID, unsaid } from "@/components/entry/AmountField";
import type { LotRow } from "../queries";

export interface InputTyped {
  lot: string;
  how: string;
  quantity: Said;
  place: string;
}

/** A mix as a form keeps it. */
export interface MixTyped extends Record<string, unknown> {
  material: string;
  inputs: InputTyped[];
  quantity: Said;
  lot_number: string;
  place: string;
  reason: string;
}

export const NEW_INPUT: InputTyped = { lot: "", how: "some", quantity: UNSAID, place: "" };

/** A bottle filled from a pail holds the pail's own material: that is what a lot starts with. */
export function startOf(lot: LotRow | undefined): MixTyped {
  return {
    material: lot ? String(lot.material.id) : "",
    inputs: [{ ...NEW_INPUT, lot: lot ? String(lot.id) : "", place: String(lot?.places[0]?.place ?? "") }],
    quantity: UNSAID,
    lot_number: "",
    place: String(lot?.places[0]?.place ?? ""),
    reason: "",
  };
}

export function mixBody(typed: MixTyped): components["schemas"]["BlendInRequest"] {
  return {
    material: Number(typed.material),
    inputs: typed.inputs.map(({ lot, how, quantity, place }) => ({
      lot: Number(lot),
      ...(how === "all" ? { all: true } : { quantity: quantity.body ?? quantity.text }),
      ...(place !== "" && { place: Number(place) }),
    })),
    ...(typed.quantity.body !== undefined && { quantity: typed.quantity.body }),
    ...(typed.lot_number.trim() !== "" && { lot_number: typed.lot_number }),
    ...(typed.place !== "" && { place: Number(typed.place) }),
    reason: typed.reason,
  };
}

/** A sentence for each field to mend before anything is sent. */
export function checkMix(typed: MixTyped): Record<string, string> {
  const wrong: Record<string, string> = {};
  if (typed.material === "") wrong.material = "Say what it becomes.";
  typed.inputs.forEach(({ lot, how, quantity }, i) => {
    if (lot === "") wrong[`inputs.${i}.lot`] = "Choose the lot that went in.";
    const said = how === "all" ? undefined : unsaid(quantity);
    if (said) wrong[`inputs.${i}.quantity`] = said;
  });
  if (typed.quantity.text !== "" && typed.quantity.body === undefined) {
    wrong.quantity = "Say how much it made, with its unit, or leave it empty.";
  }
  return wrong;
}
