import { useAct } from "@/api/act";
import { UndoFirst } from "@/components/entry/UndoFirst";
import { WhyField } from "@/components/entry/WhyField";
import { BigButton, Sheet, useSheet } from "@/components/form";
import type { Delivery } from "../queries";

/** It never came, or was written down twice. Only while all of it is still there. */
export function UndoForm({ delivery, onDone }: { delivery: Delivery; onDone: () => void }) {
  const sheet = useSheet({
    act: useAct("post", "/api/deliveries/{id}/reverse/", { params: { id: delivery.id }, onDone }),
    initial: { reason: "" },
    toBody: (typed) => typed,
    check: ({ reason }) => ({ ...(reason.trim() === "" && { reason: "Say what was wrong." }) }),
  });
  return (
    <Sheet
      sheet={sheet}
      acts={
        <BigButton tone="stop" busy={sheet.isPending}>
          Undo the delivery
        </BigButton>
      }
    >
      <p className="soft">
        All its lots leave the shelf again. What was taken from them must be undone first.
      </p>
      <WhyField
        usual={["Entry mistake", "Entered twice", "Never came"]}
        {...sheet.form.getInputProps("reason")}
      />
      <UndoFirst problem={sheet.problem} />
    </Sheet>
  );
}
