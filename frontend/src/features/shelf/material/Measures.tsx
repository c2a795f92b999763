import { Button, TextInput } from "@mantine/core";
import type { UseFormReturnType } from "@mantine/form";
import { AmountField } from "@/components/entry/AmountField";
import classes from "./material.module.css";
import { type MaterialTyped, NEW_MEASURE } from "./typed";

/** The shop's own measures of a material: a pump, a scoop, a can. */
export function Measures({ form }: { form: UseFormReturnType<MaterialTyped> }) {
  const { measures, stock_unit, density_g_per_ml, grams_per_tsp } = form.values;
  return (
    <fieldset style={{ border: 0, margin: 0, padding: 0 }}>
      <legend className="only-read-aloud">Its own measures</legend>
      {measures.map((measure, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a measure has no name of its own until it is typed
        <div key={i} className={classes.measure}>
          <TextInput
            label="Called"
            placeholder="pump"
            autoComplete="off"
            {...form.getInputProps(`measures.${i}.name`)}
          />
          <AmountField
            label={`1 ${measure.name || "measure"} holds`}
            material={{ id: 0, stock_unit, density_g_per_ml, grams_per_tsp }}
            {...form.getInputProps(`measures.${i}.equals`)}
          />
          <TextInput
            label="Empty, in g"
            description="If it is weighed."
            inputMode="decimal"
            {...form.getInputProps(`measures.${i}.empty_g`)}
          />
          <Button variant="default" onClick={() => form.removeListItem("measures", i)}>
            Remove<span className="only-read-aloud"> {measure.name || "this measure"}</span>
          </Button>
        </div>
      ))}
      <Button variant="default" onClick={() => form.insertListItem("measures", { ...NEW_MEASURE })}>
        Add a measure: a pump, a can
      </Button>
    </fieldset>
  );
}
