import { useState } from "react";
import { useNavigate, useParams } from "react-router";
import { useAct } from "@/api/act";
import { useIsOwner } from "@/api/session";
import { fieldOfAmount } from "@/components/entry/AmountField";
import { BigButton, Sheet, useSheet } from "@/components/form";
import { Page } from "@/components/page";
import { NotYours } from "@/components/page/NotYours";
import { useMaterial } from "../queries";
import { MaterialFields } from "./MaterialFields";
import classes from "./material.module.css";
import { bodyOf, changesBetween, checkMaterial, type MaterialTyped, typedOf } from "./typed";

/** Changes what is known of a material. What was posted with the old figures stays as it is. */
export function EditMaterialPage() {
  return useIsOwner() ? (
    <EditMaterialSheet />
  ) : (
    <NotYours title="Change a material" back={{ to: "/shelf", label: "The shelf" }}>
      An owner changes what is known of a material.
    </NotYours>
  );
}

function EditMaterialSheet() {
  const material = useMaterial(Number(useParams().id));
  const [opened] = useState(() => typedOf(material));
  const navigate = useNavigate();
  const page = `/shelf/materials/${material.id}`;
  const act = useAct("patch", "/api/materials/{id}/", {
    params: { id: material.id },
    keepsVersion: true,
    onDone: () => void navigate(page, { replace: true }),
  });
  const sheet = useSheet<MaterialTyped, ReturnType<typeof bodyOf>, unknown>({
    act,
    initial: typedOf(material),
    toBody: bodyOf,
    fieldFor: fieldOfAmount,
    check: checkMaterial,
  });
  const changes = sheet.problem?.status === 412 ? changesBetween(opened, typedOf(material)) : [];
  return (
    <Page title={`Change ${material.name}`} back={{ to: page, label: material.name }}>
      <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Save</BigButton>}>
        <MaterialFields form={sheet.form} isInUse={material.is_in_use} />
        {changes.length > 0 && (
          <section className={classes.changed} aria-label="Changed meanwhile">
            <strong>Somebody else changed meanwhile:</strong>
            <ul>
              {changes.map((change) => (
                <li key={change}>{change}</li>
              ))}
            </ul>
          </section>
        )}
      </Sheet>
    </Page>
  );
}
