import { FlowList } from "@/components/flow/FlowList";
import { EmptyState } from "@/components/notes/EmptyState";
import type { Uses } from "../queries";
import { stopsOf } from "./stops";

/** From the lot into every pour and top, the lines as thick as what flowed. */
export function LotFlow({ uses, lot }: { uses: Uses; lot: number }) {
  if (uses.pours.length === 0 && uses.rest.length === 0) {
    return (
      <EmptyState title="None of it went anywhere">
        Nothing of this lot came in, or all of it was undone.
      </EmptyState>
    );
  }
  return <FlowList label="Where it went" stops={stopsOf(uses, lot)} />;
}
