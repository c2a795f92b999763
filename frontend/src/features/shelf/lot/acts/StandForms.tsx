import { Checkbox, Textarea } from "@mantine/core";
import { useAct } from "@/api/act";
import { WhyField } from "@/components/entry/WhyField";
import { BigButton, Sheet, useSheet } from "@/components/form";
import type { Lot } from "../../queries";

interface StandProps {
  lot: Lot;
  onDone: (said: string) => void;
}

const checkReason = ({ reason }: { reason: string }) => ({
  ...(reason.trim() === "" && { reason: "Say why." }),
});

function wholeNumber(lot: Lot) {
  return lot.is_own_number
    ? "Also what was opened from it or mixed with it"
    : `All of number ${lot.lot_number}, whenever delivered`;
}

/** Nobody pours it until somebody has looked. */
export function Hold({ lot, onDone }: StandProps) {
  const sheet = useSheet({
    act: useAct("post", "/api/lots/{id}/hold/", { params: { id: lot.id }, onDone: () => onDone("On hold.") }),
    initial: { reason: "", all_of_this_number: true },
    toBody: (typed) => typed,
    check: checkReason,
  });
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Put on hold</BigButton>}>
      <WhyField
        usual={["Soft after curing", "Cloudy", "Crystals", "Smells odd"]}
        {...sheet.form.getInputProps("reason")}
      />
      <Checkbox
        label={wholeNumber(lot)}
        description="And everything opened or mixed from it."
        {...sheet.form.getInputProps("all_of_this_number", { type: "checkbox" })}
      />
    </Sheet>
  );
}

/** Never to be poured again. */
export function Reject({ lot, onDone }: StandProps) {
  const sheet = useSheet({
    act: useAct("post", "/api/lots/{id}/reject/", {
      params: { id: lot.id },
      onDone: () => onDone("Rejected."),
    }),
    initial: { reason: "", all_of_this_number: true },
    toBody: (typed) => typed,
    check: checkReason,
  });
  return (
    <Sheet
      sheet={sheet}
      acts={
        <BigButton tone="stop" busy={sheet.isPending}>
          Reject it
        </BigButton>
      }
    >
      <WhyField
        usual={["Does not cure", "Contaminated", "Recalled"]}
        {...sheet.form.getInputProps("reason")}
      />
      <Checkbox
        label={wholeNumber(lot)}
        description="And everything opened or mixed from it."
        {...sheet.form.getInputProps("all_of_this_number", { type: "checkbox" })}
      />
    </Sheet>
  );
}

/** It may be poured after all. */
export function OkAgain({ lot, onDone }: StandProps) {
  const sheet = useSheet({
    act: useAct("post", "/api/lots/{id}/release/", {
      params: { id: lot.id },
      onDone: () => onDone("OK again."),
    }),
    initial: { reason: "", all_of_this_number: true },
    toBody: (typed) => typed,
    check: checkReason,
  });
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>OK again</BigButton>}>
      <p className="soft">What was mixed with another lot that is still on hold stays on hold.</p>
      <WhyField
        usual={["Test cup cured hard", "Warmed until clear"]}
        {...sheet.form.getInputProps("reason")}
      />
      <Checkbox
        label={wholeNumber(lot)}
        {...sheet.form.getInputProps("all_of_this_number", { type: "checkbox" })}
      />
    </Sheet>
  );
}

/** What somebody saw: it stays with the lot under its date. */
export function Note({ lot, onDone }: StandProps) {
  const sheet = useSheet({
    act: useAct("post", "/api/lots/{id}/notes/", { params: { id: lot.id }, onDone: () => onDone("Noted.") }),
    initial: { text: "" },
    toBody: (typed) => typed,
    draft: `lot-note-${lot.id}`,
    check: ({ text }) => ({ ...(text.trim() === "" && { text: "Write what there is to know." }) }),
  });
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Add the note</BigButton>}>
      <Textarea
        label="Note"
        description="Such as: cold and grainy, warmed until clear."
        autosize
        minRows={3}
        {...sheet.form.getInputProps("text")}
      />
    </Sheet>
  );
}
