import { useAct } from "@/api/act";
import { WhyField } from "@/components/entry/WhyField";
import { BigButton, Drawn, Sheet, useSheet } from "@/components/form";
import type { Pour } from "../queries";

function CallOffForm({ pour, onDone }: { pour: Pour; onDone: () => void }) {
  const act = useAct("post", "/api/pours/{id}/cancel/", { params: { id: pour.id }, onDone });
  const sheet = useSheet({ act, initial: { reason: "" }, toBody: (typed) => typed });
  return (
    <Sheet
      sheet={sheet}
      acts={
        <BigButton tone="stop" busy={sheet.isPending}>
          Call the pour off
        </BigButton>
      }
    >
      <p className="soft">What was set aside for it is free again.</p>
      <WhyField
        label="Why, if you like"
        usual={["The customer changed their mind", "Too cold", "It was put down twice"]}
        {...sheet.form.getInputProps("reason")}
      />
    </Sheet>
  );
}

interface CallOffProps {
  pour: Pour;
  isOpen: boolean;
  onClose: () => void;
}

/** A planned pour that will not be. */
export function CallOff({ pour, isOpen, onClose }: CallOffProps) {
  return (
    <Drawn title={`Call off pour ${pour.number}`} isOpen={isOpen} onClose={onClose}>
      <CallOffForm pour={pour} onDone={onClose} />
    </Drawn>
  );
}
