import { Button, TextInput } from "@mantine/core";
import type { UseFormReturnType } from "@mantine/form";
import { type Material, usePlaces } from "@/api/records";
import { AmountField } from "@/components/entry/AmountField";
import { PickOne } from "@/components/entry/PickOne";
import { WhyField } from "@/components/entry/WhyField";
import { Quantity } from "@/components/figures";
import { OneOf } from "@/components/form";
import type { LotRow } from "../queries";
import { onLabel } from "../shelfView";
import classes from "./mix.module.css";
import { type MixTyped, NEW_INPUT } from "./mixing";

interface MixFieldsProps {
  form: UseFormReturnType<MixTyped>;
  lots: readonly LotRow[];
  materials: readonly Material[];
}

function Input({ form, lots, materials, index }: MixFieldsProps & { index: number }) {
  const input = form.values.inputs[index] ?? NEW_INPUT;
  const lot = lots.find(({ id }) => String(id) === input.lot);
  const material = materials.find(({ id }) => id === lot?.material.id);
  const at = `inputs.${index}`;
  return (
    <li className={classes.input}>
      <PickOne
        label="From lot"
        choices={lots.map((each) => ({
          value: String(each.id),
          label: `Lot ${each.number}, ${each.material.name}`,
          swatch: each.material.swatch,
          note: onLabel(each),
        }))}
        {...form.getInputProps(`${at}.lot`)}
        onChange={(value) => {
          const chosen = lots.find(({ id }) => String(id) === value);
          form.setFieldValue(`${at}.lot`, value);
          form.setFieldValue(`${at}.place`, String(chosen?.places[0]?.place ?? ""));
        }}
      />
      {lot && (
        <OneOf
          label={`How much of lot ${lot.number}`}
          choices={[
            ["some", "Some of it"],
            ["all", "All of it"],
          ]}
          {...form.getInputProps(`${at}.how`)}
        />
      )}
      {lot && input.how === "all" ? (
        <p className="soft">
          All of <Quantity value={lot.on_hand} />.
        </p>
      ) : (
        material && (
          <AmountField label="Amount" material={material} {...form.getInputProps(`${at}.quantity`)} />
        )
      )}
      {lot && lot.places.length > 1 && (
        <PickOne
          label="Taken at"
          choices={lot.places.map(({ place, name }) => ({ value: String(place), label: name }))}
          {...form.getInputProps(`${at}.place`)}
        />
      )}
      {form.values.inputs.length > 1 && (
        <Button variant="default" onClick={() => form.removeListItem("inputs", index)}>
          Remove<span className="only-read-aloud"> {lot ? `lot ${lot.number}` : "this lot"}</span>
        </Button>
      )}
    </li>
  );
}

/** What goes in, what it becomes, where it stands, and the number on its label. */
export function MixFields(props: MixFieldsProps) {
  const { form, materials } = props;
  const places = usePlaces();
  const { inputs, material } = form.values;
  const becomes = materials.find(({ id }) => String(id) === material);
  return (
    <>
      <ol className={classes.inputs} aria-label="Lots that go in">
        {inputs.map((input, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a line has nothing of its own until a lot is chosen
          <Input key={`${index}${input.lot}`} {...props} index={index} />
        ))}
      </ol>
      <div>
        <Button variant="default" onClick={() => form.insertListItem("inputs", { ...NEW_INPUT })}>
          Another lot goes in
        </Button>
      </div>
      <fieldset className="cells">
        <legend>What it becomes</legend>
        <PickOne
          label="Material"
          description="The house colour, or the same material in a bottle."
          choices={materials.map(({ id, name, swatch }) => ({ value: String(id), label: name, swatch }))}
          {...form.getInputProps("material")}
        />
        <TextInput
          label="Number on its label"
          description="Empty: it gets the shop's own."
          autoComplete="off"
          {...form.getInputProps("lot_number")}
        />
        {places.length > 1 && (
          <PickOne
            label="Stands at"
            choices={places.map(({ id, name }) => ({ value: String(id), label: name }))}
            {...form.getInputProps("place")}
          />
        )}
      </fieldset>
      {becomes && (
        <AmountField
          label="How much it made"
          description="Empty: the sum of what went in."
          material={becomes}
          {...form.getInputProps("quantity")}
        />
      )}
      <WhyField
        label="Why"
        description="Needed from the owner where a lot is on hold, rejected or past its use-by."
        {...form.getInputProps("reason")}
      />
    </>
  );
}
