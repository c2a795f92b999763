import { Checkbox, TagsInput, Textarea, TextInput } from "@mantine/core";
import type { UseFormReturnType } from "@mantine/form";
import { useSuppliers } from "@/api/records";
import { PickOne } from "@/components/entry/PickOne";
import { HAZARD_CODES, hazardInWords } from "@/components/notes/hazards";
import { colourOf } from "@/components/notes/Swatch";
import { KINDS, type Kind, STOCK_UNITS, type StockUnit } from "../words";
import { Measures } from "./Measures";
import classes from "./material.module.css";
import { type MaterialTyped, usualUnit } from "./typed";

interface MaterialFieldsProps {
  form: UseFormReturnType<MaterialTyped>;
  /** The stock unit is fixed once it was in stock. */
  isInUse?: boolean;
}

/** Every field of a material, those that its kind asks for first. */
export function MaterialFields({ form, isInUse = false }: MaterialFieldsProps) {
  const suppliers = useSuppliers();
  const { kind, stock_unit, swatch } = form.values;

  function chooseKind(next: string) {
    form.setFieldValue("kind", next as Kind);
    if (!isInUse && !form.isTouched("stock_unit")) form.setFieldValue("stock_unit", usualUnit(next as Kind));
  }

  return (
    <>
      <div className="cells">
        <TextInput label="Name" autoComplete="off" {...form.getInputProps("name")} />
        <TextInput
          label="Code"
          description="Short, as on the shelf's label."
          autoComplete="off"
          autoCapitalize="characters"
          {...form.getInputProps("code")}
        />
        <PickOne label="Kind" choices={KINDS} {...form.getInputProps("kind")} onChange={chooseKind} />
        <PickOne
          label="Kept in"
          choices={STOCK_UNITS}
          disabled={isInUse}
          description={isInUse ? "Fixed, as there was stock of it." : "Fixed after its first delivery."}
          {...form.getInputProps("stock_unit")}
          onChange={(unit) => form.setFieldValue("stock_unit", unit as StockUnit)}
        />
        <PickOne
          label="Mostly from"
          mayClear
          choices={suppliers.map(({ id, name }) => ({ value: String(id), label: name }))}
          description="Its lead time counts when ordering."
          {...form.getInputProps("main_supplier")}
        />
      </div>
      <fieldset className="cells">
        <legend>Measures</legend>
        {kind === "powder" ? (
          <TextInput
            label="A level teaspoon, loose, in g"
            description="Weigh one: the mineral's own density says far too much."
            inputMode="decimal"
            {...form.getInputProps("grams_per_tsp")}
          />
        ) : (
          (stock_unit === "ml" || stock_unit === "g") && (
            <TextInput
              label="Density in g per mL"
              description="From the data sheet. Turns volume into weight."
              inputMode="decimal"
              {...form.getInputProps("density_g_per_ml")}
            />
          )
        )}
      </fieldset>
      <Measures form={form} />
      <fieldset className="cells">
        <legend>How long it is good</legend>
        <TextInput
          label="Unopened, in days"
          description="Counted from the made-on day, where the label gives no expiry."
          inputMode="numeric"
          {...form.getInputProps("shelf_life_days")}
        />
        <TextInput
          label="Once open, in days"
          description="Counted from the day it was opened."
          inputMode="numeric"
          {...form.getInputProps("open_life_days")}
        />
      </fieldset>
      <fieldset className="cells">
        <legend>Lots</legend>
        <Checkbox
          label="Keep its lots apart"
          description="Off for what nobody traces, such as tape."
          {...form.getInputProps("tracks_lots", { type: "checkbox" })}
        />
        <Checkbox
          label="One job should see one lot"
          description="For what must match in colour."
          {...form.getInputProps("single_lot_per_job", { type: "checkbox" })}
        />
      </fieldset>
      <fieldset className="cells">
        <legend>Hazards, from its safety data sheet</legend>
        <TagsInput
          label="Hazard codes"
          description="Such as H317. Shown with their words wherever it is mixed, sprayed or sanded."
          data={HAZARD_CODES}
          renderOption={({ option }) => <span>{hazardInWords(option.value)}</span>}
          splitChars={[",", " "]}
          clearable
          {...form.getInputProps("hazard_codes")}
          onChange={(codes) =>
            form.setFieldValue(
              "hazard_codes",
              codes.map((code) => code.toUpperCase()),
            )
          }
        />
        <Textarea
          label="Cautions"
          description="In the words that the bench should read."
          autosize
          minRows={2}
          {...form.getInputProps("cautions")}
        />
      </fieldset>
      <div className={classes.swatch}>
        <input
          type="color"
          aria-label="Pick its colour"
          value={colourOf(swatch) ?? "#808080"}
          onChange={(event) => form.setFieldValue("swatch", event.currentTarget.value)}
        />
        <TextInput
          label="Swatch"
          description="Its own colour, such as #1f6f5c. Empty: drawn without."
          autoComplete="off"
          style={{ flex: 1 }}
          {...form.getInputProps("swatch")}
        />
      </div>
    </>
  );
}
