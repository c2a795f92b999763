import { toScale } from "@/components/figures/decimal";
import type { FlowStop } from "@/components/flow/FlowList";
import { coatLabel } from "@/components/pours/words";
import type { Uses } from "../queries";
import { sumOf } from "../sums";
import { RESTS } from "../words";

type PourUse = Uses["pours"][number];
type Rest = Uses["rest"][number];

/** How much of what is traced still lies somewhere, mixed into other lots or not. */
export function leftOf({ rest, total }: Uses) {
  const here = rest.filter(({ what }) => what === "on_hand");
  return { amount: sumOf(here.map(({ quantity }) => quantity.amount)), unit: total.unit };
}

function pourStop(pour: PourUse): FlowStop {
  const wasted = toScale(pour.wasted.amount) > 0;
  return {
    key: `pour ${pour.pour}`,
    kind: "pour",
    title: `Pour ${pour.number}, ${coatLabel(pour.layer).toLowerCase()}`,
    to: `/pours/${pour.pour}`,
    quantity: pour.quantity,
    note:
      [pour.is_redo && "laid again", wasted && "some of it wasted"].filter(Boolean).join(" · ") || undefined,
    next: pour.tops.map((top) => ({
      key: `top ${top.piece}`,
      kind: top.is_board ? "board" : "piece",
      title: `${top.name}, top ${top.number}`,
      to: `/tops/${top.piece}`,
      quantity: top.quantity,
      ...(top.is_scrapped && { note: "scrapped" }),
    })),
  };
}

function restStop({ what, lot, place, quantity }: Rest, traced: ReadonlySet<number>): FlowStop {
  const inside = traced.has(lot.id) ? "" : `, in lot ${lot.number}, ${lot.material.name}`;
  return {
    key: `${what} ${lot.id} ${place}`,
    kind: "lot",
    title: `${RESTS[what] ?? what}${inside}`,
    to: `/shelf/lots/${lot.id}`,
    quantity,
    ...(place && { note: place }),
  };
}

/** A traced lot as a drawing: from the lot into its pours and their tops, and what became of the rest. */
export function stopsOf(uses: Uses, lot: number): FlowStop[] {
  const traced = new Set(uses.lots.map(({ id }) => id));
  const named = uses.lots.find(({ id }) => id === lot) ?? uses.lots[0];
  if (!named) return [];
  const isOne = uses.lots.length === 1;
  return [
    {
      key: "lot",
      kind: "lot",
      title: isOne
        ? `Lot ${named.number}, ${named.material.name}`
        : `${uses.lots.length} lots ${named.lot_number}`,
      to: `/shelf/lots/${named.id}`,
      quantity: uses.total,
      next: [
        ...uses.rest.filter(({ what }) => what === "on_hand").map((row) => restStop(row, traced)),
        ...uses.pours.map(pourStop),
        ...uses.rest.filter(({ what }) => what !== "on_hand").map((row) => restStop(row, traced)),
      ],
    },
  ];
}
