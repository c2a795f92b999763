import { Button, TextInput } from "@mantine/core";
import type { UseFormReturnType } from "@mantine/form";
import { useAct } from "@/api/act";
import { api } from "@/api/query";
import { useMaterials } from "@/api/records";
import { AmountField } from "@/components/entry/AmountField";
import { PickOne } from "@/components/entry/PickOne";
import { useWays } from "@/components/figures";
import { BigButton, Sheet, useSheet } from "@/components/form";
import { ArchiveAct } from "./ArchiveAct";
import classes from "./around.module.css";
import {
  checkSystem,
  NEW_SYSTEM,
  nextPart,
  type SystemTyped,
  systemBody,
  systemField,
  typedSystem,
} from "./systems";

type Form = UseFormReturnType<SystemTyped>;

function Parts({ form }: { form: Form }) {
  const materials = useMaterials();
  return (
    <div className={classes.stack}>
      {form.values.parts.map(({ role }, i) => (
        <fieldset key={role} className="cells" style={{ "--cell-width": "130px" } as React.CSSProperties}>
          <legend>Part {role}</legend>
          <div className={classes.wide}>
            <PickOne
              label={`Material of part ${role}`}
              choices={materials.map(({ id, name, swatch }) => ({ value: String(id), label: name, swatch }))}
              {...form.getInputProps(`parts.${i}.material`)}
            />
          </div>
          <TextInput
            label={`${role} by volume`}
            inputMode="decimal"
            {...form.getInputProps(`parts.${i}.by_volume`)}
          />
          <TextInput
            label={`${role} by weight`}
            inputMode="decimal"
            {...form.getInputProps(`parts.${i}.by_mass`)}
          />
        </fieldset>
      ))}
      <Button
        variant="default"
        onClick={() => form.insertListItem("parts", nextPart(form.getValues().parts))}
        disabled={form.values.parts.length >= 6}
      >
        A further part
      </Button>
    </div>
  );
}

function Figures({ form }: { form: Form }) {
  const { units } = useWays();
  const degree = `°${units.temperature}`;
  const field = (name: string, label: string, description?: string) => (
    <TextInput label={label} description={description} inputMode="decimal" {...form.getInputProps(name)} />
  );
  return (
    <fieldset className="cells" style={{ "--cell-width": "190px" } as React.CSSProperties}>
      <legend>From the maker's data sheet; empty where it says nothing</legend>
      {field("pot_minutes", "Pot life, minutes")}
      {field("pot_mass_g", "for so much mixed, g")}
      {field("pot_at", `at ${degree}`)}
      {field("working_minutes", "Working time on the top, minutes")}
      {field("min_temp", `Works from ${degree}`)}
      {field("max_temp", `up to ${degree}`)}
      {field("max_humidity_percent", "Air humid up to, %")}
      {field("max_layer_in", "Thickest coat, in")}
      {field("tacky_from", "Recoat while tacky from, h", "No sanding needed.")}
      {field("tacky_to", "to, h")}
      {field("sanded_from", "Recoat after sanding from, h")}
      {field("sanded_to", "to, h", "Empty: no end.")}
      {field("max_colourant_percent", "Most colour, %", "By weight of mixed resin.")}
      {field("paint_dry_h", "Paint below dries, h")}
      {field("tolerance_percent", "Off ratio at most, %")}
    </fieldset>
  );
}

function Fields({ form }: { form: Form }) {
  return (
    <div className={classes.stack}>
      <TextInput label="Name" autoComplete="off" {...form.getInputProps("name")} />
      <Parts form={form} />
      <Figures form={form} />
      <AmountField
        label="Largest bucket"
        description="What may be mixed at once. Empty: the sheet says nothing."
        material={{ id: 0, stock_unit: "ml" }}
        {...form.getInputProps("max_bucket")}
      />
    </div>
  );
}

/** A resin system that the shop did not use before. */
export function AddSystem({ onDone }: { onDone: () => void }) {
  const { temperature } = useWays().units;
  const sheet = useSheet({
    act: useAct("post", "/api/resin-systems/", { onDone }),
    initial: NEW_SYSTEM,
    toBody: (typed) => systemBody(typed, temperature),
    draft: "system-new",
    fieldFor: systemField,
    check: checkSystem,
  });
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Add the system</BigButton>}>
      <Fields form={sheet.form} />
    </Sheet>
  );
}

/** Another figure from the sheet, or another ratio. Pours that were posted stay as they are. */
export function ChangeSystem({ id, onDone }: { id: number; onDone: () => void }) {
  const { temperature } = useWays().units;
  const now = api.useSuspenseQuery("get", "/api/resin-systems/{id}/", { params: { path: { id } } }).data;
  const options = { params: { id }, onDone };
  const archive = useAct("post", "/api/resin-systems/{id}/archive/", options);
  const unarchive = useAct("post", "/api/resin-systems/{id}/unarchive/", options);
  const sheet = useSheet({
    act: useAct("patch", "/api/resin-systems/{id}/", { ...options, keepsVersion: true }),
    initial: typedSystem(now, temperature),
    toBody: (typed) => systemBody(typed, temperature),
    fieldFor: systemField,
    check: checkSystem,
  });
  return (
    <>
      <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Save</BigButton>}>
        <Fields form={sheet.form} />
      </Sheet>
      <ArchiveAct isArchived={now.is_archived} archive={archive} unarchive={unarchive} />
    </>
  );
}
