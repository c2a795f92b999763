import { describe, expect, it } from "vitest";
import type { Pack } from "@/api/records";
import { groupsOf } from "./delivery/groups";
import { pricedAnew } from "./delivery/PriceForm";
import {
  checkDelivery,
  type DeliveryTyped,
  deliveryBody,
  deliveryField,
  labelsFor,
  newLine,
} from "./new/typed";
import type { DeliveryLine } from "./queries";

const kit: Pack = {
  id: 3,
  number: 3,
  supplier: { id: 1, name: "Quillfen" },
  name: "Flood kit",
  contents: [1, 2].map((id) => ({
    material: { id, code: `M${id}`, name: `Part ${id}`, swatch: "", stock_unit: "ml" as const },
    quantity: { amount: "1000", unit: "ml" },
    as_typed: { amount: "1", unit: "l" },
    cost_share_percent: null,
  })),
  is_archived: false,
  version: 1,
};

const delivery = (lines: DeliveryTyped["lines"]): DeliveryTyped => ({
  supplier: "1",
  received_on: "2026-11-25",
  place: "",
  reference: "",
  note: "",
  lines,
  charges: [{ kind: "Freight", amount: "18.40", spread_by: "value" }],
});

describe("what is sent of a delivery", () => {
  const priced = { ...newLine("paid"), what: "pack:3", contents: labelsFor(kit), cost: "1,246" };

  it("is a kit with a label for each content and one price", () =>
    expect(deliveryBody(delivery([priced]), { sendsMoney: true })).toEqual({
      supplier: 1,
      received_on: "2026-11-25",
      reference: "",
      note: "",
      lines: [
        {
          pack: 3,
          count: 1,
          cost: "1246",
          contents: [
            { material: 1, lot_number: "" },
            { material: 2, lot_number: "" },
          ],
        },
      ],
      charges: [{ kind: "Freight", amount: "18.40", spread_by: "value" }],
    }));

  it("holds no money when crew receives: the price is to follow", () => {
    const body = deliveryBody(delivery([{ ...priced, terms: "to_follow", cost: "" }]), { sendsMoney: false });
    expect(body.charges).toBeUndefined();
    expect(body.lines[0]).not.toHaveProperty("cost");
    expect(body.lines[0]).not.toHaveProperty("basis");
  });

  it("says why nothing was paid", () =>
    expect(
      deliveryBody(delivery([{ ...priced, terms: "borrowed" }]), { sendsMoney: true }).lines[0],
    ).toMatchObject({
      basis: "borrowed",
    }));
});

describe("before a delivery is sent", () => {
  it("each line says what is missing in it", () => {
    const wrong = checkDelivery(
      delivery([
        newLine("paid"),
        { ...newLine("paid"), what: "pack:3" },
        { ...newLine("free"), what: "material:1" },
      ]),
    );
    expect(Object.keys(wrong)).toEqual(["lines.0.what", "lines.1.cost", "lines.2.quantity"]);
  });

  it("a price to follow is no error", () =>
    expect(checkDelivery(delivery([{ ...newLine("to_follow"), what: "pack:3" }]))).toEqual({}));
});

it("a refused field of the body is found in the form", () => {
  expect(deliveryField("lines.0.pack")).toBe("lines.0.what");
  expect(deliveryField("lines.0.basis")).toBe("lines.0.terms");
  expect(deliveryField("lines.2.quantity.unit")).toBe("lines.2.quantity");
  expect(deliveryField("lines.0.contents.1.lot_number")).toBe("lines.0.contents.1.lot_number");
});

describe("a delivery's lines as they were sold", () => {
  const line = (id: number, over: Partial<DeliveryLine>): DeliveryLine => ({
    id,
    position: id,
    material: { id, code: "M", name: `Part ${id}`, swatch: "", stock_unit: "ml" },
    lot: {
      id,
      number: id,
      lot_number: "",
      is_own_number: true,
      made_on: null,
      expires_on: null,
      use_by: null,
      status: "usable",
    },
    pack: { id: 3, name: "Flood kit" },
    pack_line: 1,
    pack_count: 2,
    quantity: { amount: "1", unit: "ml" },
    as_typed: { amount: "1", unit: "ml" },
    containers: 1,
    cost: "145.2380",
    basis: "paid",
    is_provisional: false,
    ...over,
  });

  it("keep a kit under its one price", () => {
    const [group, ...rest] = groupsOf([line(1, {}), line(2, { cost: "100.7620" })]);
    expect(rest).toEqual([]);
    expect(group).toMatchObject({ title: "2 × Flood kit", cost: "246", named: { pack_line: 1 } });
  });

  it("have no cost while one of them waits for its price, and none at all for crew", () => {
    expect(groupsOf([line(1, {}), line(2, { cost: null })])[0]?.cost).toBeNull();
    const { cost: _, ...unseen } = line(1, {});
    expect(groupsOf([unseen])[0]?.cost).toBeUndefined();
  });

  it("are priced anew only where another price was typed", () => {
    const groups = groupsOf([
      line(1, {}),
      line(3, { pack: null, pack_line: null, pack_count: null, cost: null }),
    ]);
    expect(pricedAnew(groups, { pack1: "145.24", line3: "" }).map(({ key }) => key)).toEqual(["pack1"]);
    expect(pricedAnew(groups, { pack1: "145.238", line3: "12" }).map(({ key }) => key)).toEqual(["line3"]);
  });
});
