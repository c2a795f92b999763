import { useAct } from "@/api/act";
import { UndoFirst } from "@/components/entry/UndoFirst";
import { WhyField } from "@/components/entry/WhyField";
import { BigButton, Sheet, useSheet } from "@/components/form";

export const USUAL_MISTAKES = ["Entry mistake", "Wrong lot", "Wrong amount"];

/** Takes one act of the shelf back. Nothing is erased: both stay in the book. */
export function UndoPosting({ posting, onDone }: { posting: number; onDone: () => void }) {
  const sheet = useSheet({
    act: useAct("post", "/api/postings/{id}/reverse/", { params: { id: posting }, onDone }),
    initial: { reason: "" },
    toBody: (typed) => typed,
    check: ({ reason }) => ({ ...(reason.trim() === "" && { reason: "Say what was wrong." }) }),
  });
  return (
    <Sheet
      sheet={sheet}
      acts={
        <BigButton tone="stop" busy={sheet.isPending}>
          Undo it
        </BigButton>
      }
    >
      <p className="soft">It is taken back as of when it happened. Both stay in the book.</p>
      <WhyField usual={USUAL_MISTAKES} {...sheet.form.getInputProps("reason")} />
      <UndoFirst problem={sheet.problem} />
    </Sheet>
  );
}
