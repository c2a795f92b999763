import type { components } from "@/api/schema.gen";
import { Day } from "../figures";
import { EmptyState } from "../notes/EmptyState";
import { StatusMark } from "../notes/StatusMark";
import { coatLabel } from "../pours/words";
import { FlowList, type FlowStop } from "./FlowList";

type Source = components["schemas"]["SourceOut"];

function stopOf({ lot, quantity, is_direct, pours }: Source): FlowStop {
  return {
    key: `lot ${lot.id}`,
    kind: lot.origin === "blend" ? "blend" : "lot",
    title: `Lot ${lot.number}, ${lot.material.name}`,
    to: `/shelf/lots/${lot.id}`,
    quantity,
    note: (
      <>
        {lot.lot_number} · {lot.supplier ?? "made here"} · came in <Day value={lot.received_on} />
        {!is_direct && " · through what was mixed or opened from it"}
      </>
    ),
    marks:
      lot.status === "on_hold" ? (
        <StatusMark mark="look">On hold</StatusMark>
      ) : lot.status === "rejected" ? (
        <StatusMark mark="stop">Rejected</StatusMark>
      ) : null,
    next: pours.map((pour) => ({
      key: `pour ${pour.pour}`,
      kind: "pour" as const,
      title: `Pour ${pour.number}, ${coatLabel(pour.layer).toLowerCase()}`,
      to: `/pours/${pour.pour}`,
      quantity: pour.quantity,
    })),
  };
}

/** Every lot that something was made from, with what each pour brought of it; resin and colour before tape and cups. */
export function SourcesList({ rows, label }: { rows: readonly Source[]; label: string }) {
  if (rows.length === 0) {
    return (
      <EmptyState title="Nothing has gone in yet">
        Once a pour is completed its lots are listed here.
      </EmptyState>
    );
  }
  const isAround = ({ lot }: Source) =>
    Number(lot.material_kind === "consumable" || lot.material_kind === "solvent");
  const inOrder = [...rows].sort((a, b) => isAround(a) - isAround(b));
  return <FlowList label={label} stops={inOrder.map(stopOf)} />;
}
