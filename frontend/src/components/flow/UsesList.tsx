import type { components } from "@/api/schema.gen";
import { Day, dayOf, useWays } from "../figures";
import { EmptyState } from "../notes/EmptyState";
import { StatusMark } from "../notes/StatusMark";
import { coatLabel } from "../pours/words";
import { FlowList, type FlowStop } from "./FlowList";

type Uses = components["schemas"]["UsesOut"];
type PourUse = Uses["pours"][number];

const RESTS: Record<string, string> = {
  on_hand: "Still here",
  written_off: "Written off",
  counted: "Counted off",
  returned: "Sent back",
  given: "Given away or sold",
};

function topStop(top: PourUse["tops"][number], titles: ReadonlyMap<number, string>): FlowStop {
  return {
    key: `top ${top.piece}`,
    kind: top.is_board ? "board" : "piece",
    title: top.name,
    to: `/tops/${top.piece}`,
    quantity: top.quantity,
    note: titles.get(top.job),
    marks: top.is_scrapped ? <StatusMark mark="quiet">Scrapped</StatusMark> : null,
  };
}

/** Where lots went: every pour with its tops, what lots they were mixed or opened into, and where the rest is. */
export function UsesList({ uses, label }: { uses: Uses; label: string }) {
  const { timeZone } = useWays();
  const titles = new Map(
    uses.jobs.map(({ job, title, customer_name }) => [job, `${title} · ${customer_name}`]),
  );
  const several = uses.lots.length > 1;
  const stops: FlowStop[] = [
    ...uses.through.map(({ lot, quantity }) => ({
      key: `through ${lot.id}`,
      kind: "blend" as const,
      title: `Lot ${lot.number}, ${lot.material.name}`,
      to: `/shelf/lots/${lot.id}`,
      quantity,
      note: "mixed or opened into it; what became of that is listed too",
    })),
    ...[...uses.pours].reverse().map((pour) => ({
      key: `pour ${pour.pour}`,
      kind: "pour" as const,
      title: `Pour ${pour.number}, ${coatLabel(pour.layer).toLowerCase()}`,
      to: `/pours/${pour.pour}`,
      quantity: pour.quantity,
      note: (
        <>
          <Day value={dayOf(new Date(pour.poured_at), timeZone)} />
          {pour.is_redo && " · done again"}
        </>
      ),
      next: pour.tops.map((top) => topStop(top, titles)),
    })),
    ...uses.rest.map(({ what, lot, place, quantity }) => ({
      key: `rest ${what} ${lot.id} ${place}`,
      kind: "lot" as const,
      title: RESTS[what] ?? what.replaceAll("_", " "),
      quantity,
      note: [several ? `lot ${lot.number}` : "", place ?? ""].filter(Boolean).join(" · "),
    })),
  ];
  if (stops.length === 0) {
    return (
      <EmptyState title="It has gone nowhere yet">
        Pours that use it are listed here, with their tops.
      </EmptyState>
    );
  }
  return <FlowList label={label} stops={stops} />;
}
