import { useNavigate } from "react-router";
import { useAct } from "@/api/act";
import { useIsOwner } from "@/api/session";
import { fieldOfAmount } from "@/components/entry/AmountField";
import { BigButton, Sheet, useSheet } from "@/components/form";
import { Page } from "@/components/page";
import { NotYours } from "@/components/page/NotYours";
import { MaterialFields } from "./MaterialFields";
import { bodyOf, checkMaterial, type MaterialTyped, NEW_MATERIAL } from "./typed";

/** A material that the shop did not keep before. */
export function NewMaterialPage() {
  return useIsOwner() ? (
    <NewMaterialSheet />
  ) : (
    <NotYours title="New material" back={{ to: "/shelf", label: "The shelf" }}>
      An owner adds materials.
    </NotYours>
  );
}

function NewMaterialSheet() {
  const navigate = useNavigate();
  const act = useAct("post", "/api/materials/", {
    onDone: ({ id }) => void navigate(`/shelf/materials/${id}`, { replace: true }),
  });
  const sheet = useSheet<MaterialTyped, ReturnType<typeof bodyOf>, { id: number }>({
    act,
    initial: NEW_MATERIAL,
    toBody: bodyOf,
    draft: "material-new",
    fieldFor: fieldOfAmount,
    check: checkMaterial,
  });
  return (
    <Page title="New material" back={{ to: "/shelf", label: "The shelf" }}>
      <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Add it to the shelf</BigButton>}>
        <MaterialFields form={sheet.form} />
      </Sheet>
    </Page>
  );
}
