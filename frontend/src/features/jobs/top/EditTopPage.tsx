import { useNavigate, useParams } from "react-router";
import { BigButton, Sheet, useSheet } from "@/components/form";
import { Page } from "@/components/page";
import { useEditPiece, useJob, usePiece } from "../queries";
import { TopFields } from "./TopFields";
import { missingOf, topBody, typedOf } from "./topTyped";

/** A top's measures, mended over the version that was read: after templating, or once it is final. */
export function EditTopPage() {
  const id = Number(useParams().id);
  const navigate = useNavigate();
  const piece = usePiece(id);
  const job = useJob(piece.job);
  const sheet = useSheet({
    act: useEditPiece(id, () => navigate(`/tops/${id}`, { replace: true })),
    initial: typedOf(piece),
    toBody: topBody,
    draft: `top-${id}`,
    check: missingOf,
  });
  const { form } = sheet;
  return (
    <Page title={`Measure ${piece.name}`} back={{ to: `/tops/${id}`, label: piece.name }}>
      <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Save</BigButton>}>
        <TopFields
          top={form.values}
          rule={job.counting_rule}
          errorOf={(field) => form.errors[field]}
          onChange={(next) => {
            form.setValues(next);
            form.clearErrors();
          }}
        />
      </Sheet>
    </Page>
  );
}
