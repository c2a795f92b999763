import { expect, it } from "vitest";
import type { Material, Pack } from "@/api/records";
import { deliveryBody, likelyReceipt } from "./receive";

const ml = (amount: string) => ({ amount, unit: "ml" });
const shortage = { material: 2, name: "B", wanted: ml("300"), there: ml("100"), missing: ml("200") };

function pack(id: number, materials: number[]): Pack {
  return {
    id,
    number: id,
    name: `Pack ${id}`,
    supplier: { id: 7, name: "Quillfen" },
    contents: materials.map((material) => ({
      material: { id: material, code: `M${material}`, name: `M${material}`, kind: "resin", stock_unit: "ml" },
      quantity: ml("3785.411784"),
      cost_share_percent: null,
    })),
    is_archived: false,
    version: 1,
  } as unknown as Pack;
}

const material = { id: 2, main_supplier: { id: 9, name: "Sable" } } as unknown as Material;

it("offers the kit that holds what is short, with a lot number for each of its contents", () => {
  const receipt = likelyReceipt([shortage], [pack(4, [8]), pack(5, [1, 2])], [material], "2026-11-25");
  expect(receipt).toMatchObject({ supplier: "7", pack: "5", received_on: "2026-11-25" });
  const typed = {
    ...receipt,
    came: receipt.came.map((each) => ({ ...each, lot_number: ` L-${each.material} ` })),
  };
  expect(deliveryBody(typed, 1)).toEqual({
    supplier: 7,
    received_on: "2026-11-25",
    place: 1,
    lines: [
      {
        pack: 5,
        count: 1,
        contents: [
          { material: 1, lot_number: "L-1" },
          { material: 2, lot_number: "L-2" },
        ],
      },
    ],
  });
});

it("asks for the missing amount from the usual supplier where no pack holds it; the price follows", () => {
  const receipt = likelyReceipt([shortage], [pack(4, [8])], [material], "2026-11-25");
  expect(receipt).toMatchObject({ supplier: "9", pack: "" });
  const [line] = deliveryBody(receipt, 3).lines;
  expect(line).toEqual({ material: 2, quantity: ml("200") });
  expect(line).not.toHaveProperty("cost");
});
