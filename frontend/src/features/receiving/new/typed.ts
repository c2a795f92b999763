import type { Pack } from "@/api/records";
import type { components } from "@/api/schema.gen";
import { type Said, UNSAID, unsaid } from "@/components/entry/AmountField";
import { moneySaid } from "@/components/entry/MoneyField";

type Schemas = components["schemas"];

/** How the goods came: paid for, with a price to follow, or without any. */
export type Terms = "paid" | "to_follow" | "free" | "borrowed" | "customers_own";

/** What stands on the containers of one content. */
export interface LabelTyped {
  material: number;
  lot_number: string;
  made_on: string;
  expires_on: string;
  containers: string;
}

export interface LineTyped {
  /** "pack:3" or "material:5"; empty until it is chosen. */
  what: string;
  count: string;
  contents: LabelTyped[];
  quantity: Said;
  lot_number: string;
  made_on: string;
  expires_on: string;
  containers: string;
  terms: Terms;
  cost: string;
}

export interface ChargeTyped {
  kind: string;
  amount: string;
  spread_by: string;
}

export interface DeliveryTyped extends Record<string, unknown> {
  supplier: string;
  received_on: string;
  place: string;
  reference: string;
  note: string;
  lines: LineTyped[];
  charges: ChargeTyped[];
}

export const NEW_CHARGE: ChargeTyped = { kind: "Freight", amount: "", spread_by: "value" };

export function newLine(terms: Terms): LineTyped {
  return {
    what: "",
    count: "1",
    contents: [],
    quantity: UNSAID,
    lot_number: "",
    made_on: "",
    expires_on: "",
    containers: "1",
    terms,
    cost: "",
  };
}

export function packOf(what: string, packs: readonly Pack[]): Pack | undefined {
  return what.startsWith("pack:") ? packs.find(({ id }) => `pack:${id}` === what) : undefined;
}

export function materialOf(what: string): number | undefined {
  return what.startsWith("material:") ? Number(what.slice("material:".length)) : undefined;
}

/** A label to fill in for each thing inside a pack. */
export function labelsFor(pack: Pack): LabelTyped[] {
  return pack.contents.map(({ material }) => ({
    material: material.id,
    lot_number: "",
    made_on: "",
    expires_on: "",
    containers: "",
  }));
}

const dates = ({ made_on, expires_on }: { made_on: string; expires_on: string }) => ({
  ...(made_on !== "" && { made_on }),
  ...(expires_on !== "" && { expires_on }),
});

function moneyOf({ terms, cost }: LineTyped): { cost?: string; basis?: Schemas["BasisEnum"] } {
  if (terms === "paid") return { cost: moneySaid(cost) ?? cost };
  return terms === "to_follow" ? {} : { basis: terms };
}

function lineBody(line: LineTyped): Schemas["DeliveryLineInRequest"] {
  const material = materialOf(line.what);
  if (material !== undefined) {
    return {
      material,
      quantity: line.quantity.body ?? line.quantity.text,
      lot_number: line.lot_number,
      containers: Number(line.containers),
      ...dates(line),
      ...moneyOf(line),
    };
  }
  return {
    pack: Number(line.what.slice("pack:".length)),
    count: Number(line.count),
    contents: line.contents.map((label) => ({
      material: label.material,
      lot_number: label.lot_number,
      ...(label.containers.trim() !== "" && { containers: Number(label.containers) }),
      ...dates(label),
    })),
    ...moneyOf(line),
  };
}

/** The body of the call. Crew sends no money: what it cost is to follow. */
export function deliveryBody(
  typed: DeliveryTyped,
  { sendsMoney }: { sendsMoney: boolean },
): Schemas["DeliveryInRequest"] {
  return {
    supplier: Number(typed.supplier),
    received_on: typed.received_on,
    ...(typed.place !== "" && { place: Number(typed.place) }),
    reference: typed.reference,
    note: typed.note,
    lines: typed.lines.map(lineBody),
    ...(sendsMoney &&
      typed.charges.length > 0 && {
        charges: typed.charges.map(({ kind, amount, spread_by }) => ({
          kind,
          amount: moneySaid(amount) ?? amount,
          spread_by: spread_by as Schemas["SpreadByEnum"],
        })),
      }),
  };
}

const isWhole = (text: string) => /^[1-9]\d*$/.test(text.trim());

function wrongInLine(line: LineTyped): [string, string][] {
  if (line.what === "") return [["what", "Say what came."]];
  const wrong: [string, string][] = [];
  if (materialOf(line.what) === undefined) {
    if (!isWhole(line.count)) wrong.push(["count", "Type how many came."]);
  } else {
    const said = unsaid(line.quantity);
    if (said) wrong.push(["quantity", said]);
    if (!isWhole(line.containers)) wrong.push(["containers", "Type a whole number."]);
  }
  if (line.terms === "paid" && moneySaid(line.cost) === undefined) {
    wrong.push(["cost", "Type what it cost, or say that the price is to follow."]);
  }
  return wrong;
}

/** A sentence for each field to mend before anything is sent. */
export function checkDelivery(typed: DeliveryTyped): Record<string, string> {
  const wrong: Record<string, string> = {};
  if (typed.supplier === "") wrong.supplier = "Say who delivered.";
  if (typed.received_on === "") wrong.received_on = "Say on which day.";
  typed.lines.forEach((line, i) => {
    for (const [field, sentence] of wrongInLine(line)) wrong[`lines.${i}.${field}`] = sentence;
  });
  typed.charges.forEach(({ kind, amount }, i) => {
    if (kind.trim() === "") wrong[`charges.${i}.kind`] = "Name it, such as freight.";
    if (moneySaid(amount) === undefined) wrong[`charges.${i}.amount`] = "Type the amount.";
  });
  return wrong;
}

/** The form's field for a field of the body. */
export function deliveryField(name: string): string {
  return name
    .replace(/^(lines\.\d+)\.(pack|material)$/, "$1.what")
    .replace(/^(lines\.\d+)\.basis$/, "$1.terms")
    .replace(/^(lines\.\d+\.quantity)\.(amount|unit)$/, "$1");
}
