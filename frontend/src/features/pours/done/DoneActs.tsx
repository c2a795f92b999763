import { useAct } from "@/api/act";
import { WhyField } from "@/components/entry/WhyField";
import { BigButton, Sheet, useSheet } from "@/components/form";
import type { Pour } from "../queries";

interface FormProps {
  pour: Pour;
  onDone: () => void;
}

const NO_REASON = { reason: "" };

/** The pour never was: everything goes back into its lots. */
export function Undo({ pour, onDone }: FormProps) {
  const act = useAct("post", "/api/pours/{id}/reverse/", { params: { id: pour.id }, onDone });
  const sheet = useSheet({
    act,
    initial: NO_REASON,
    toBody: (typed) => typed,
    check: ({ reason }) => ({ ...(reason.trim() === "" && { reason: "Say what the mistake was." }) }),
  });
  return (
    <Sheet
      sheet={sheet}
      acts={
        <BigButton tone="stop" busy={sheet.isPending}>
          Undo the pour
        </BigButton>
      }
    >
      <p className="soft">
        For a pour that never was. If only an amount or a lot is wrong, correct it instead.
      </p>
      <WhyField
        usual={["Put down twice", "The wrong pour was completed"]}
        {...sheet.form.getInputProps("reason")}
      />
    </Sheet>
  );
}

/** The owner's word on what was past its use-by or on hold. */
export function Explain({ pour, onDone }: FormProps) {
  const act = useAct("post", "/api/pours/{id}/explain/", { params: { id: pour.id }, onDone });
  const sheet = useSheet({
    act,
    initial: NO_REASON,
    toBody: (typed) => typed,
    check: ({ reason }) => ({ ...(reason.trim() === "" && { reason: "Say why it was right." }) }),
  });
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>That is why</BigButton>}>
      <WhyField
        label="Why it was right to use it"
        usual={["Tried on a cup first: it set hard", "The supplier gave the lot free"]}
        {...sheet.form.getInputProps("reason")}
      />
    </Sheet>
  );
}
