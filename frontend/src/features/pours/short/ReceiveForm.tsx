import { TextInput } from "@mantine/core";
import { useAct } from "@/api/act";
import { type Material, useMaterials, usePacks, useSuppliers } from "@/api/records";
import { AmountField } from "@/components/entry/AmountField";
import { DayField } from "@/components/entry/DayField";
import { PickOne } from "@/components/entry/PickOne";
import { BigButton, Sheet, type SheetState, useSheet } from "@/components/form";
import type { Shortage } from "../lines/short";
import {
  type Came,
  contentsOf,
  deliveryBody,
  likelyReceipt,
  missingOnes,
  packsFor,
  type Receipt,
} from "./receive";
import classes from "./short.module.css";

interface ReceiveFormProps {
  shortages: readonly Shortage[];
  place: number;
  receivedOn: string;
  onDone: () => void;
}

/** A field of the body's first line, as the form has it. */
function fieldFor(name: string, hasPack: boolean): string {
  if (hasPack)
    return name.replace(/^lines\.0\.contents\./, "came.").replace(/^lines\.0(\.pack|\.count)?$/, "pack");
  return name.replace(/^lines\./, "came.").replace(/\.quantity\..*$/, ".quantity");
}

function missingOf({ supplier, received_on, pack, came }: Receipt): Record<string, string> {
  const unsaid = pack === "" ? came.flatMap((each, i) => (each.quantity.body ? [] : [i])) : [];
  return {
    ...(supplier === "" && { supplier: "Say from whom it came." }),
    ...(received_on === "" && { received_on: "Say on which day it came." }),
    ...Object.fromEntries(unsaid.map((i) => [`came.${i}.quantity`, "Say how much came, with its unit."])),
  };
}

/** Books what was opened before it was booked: no price yet, lot numbers from the label, dated no later than the pour. */
export function ReceiveForm({ shortages, place, receivedOn, onDone }: ReceiveFormProps) {
  const [materials, packs, suppliers] = [useMaterials(), usePacks(), useSuppliers()];
  const act = useAct("post", "/api/deliveries/", { onDone });
  const sheet: SheetState<Receipt> = useSheet<Receipt, ReturnType<typeof deliveryBody>, unknown>({
    act,
    initial: likelyReceipt(shortages, packs, materials, receivedOn),
    toBody: (typed) => deliveryBody(typed, place),
    fieldFor: (name) => fieldFor(name, sheet.form.values.pack !== ""),
    check: missingOf,
  });
  const form = sheet.form;
  const { pack, came } = form.values;
  const offered = packsFor(shortages, packs);

  function choosePack(next: string) {
    const chosen = packs.find(({ id }) => String(id) === next);
    form.setValues({
      pack: chosen ? next : "",
      came: chosen ? contentsOf(chosen) : missingOnes(shortages),
      ...(chosen && { supplier: String(chosen.supplier.id) }),
    });
  }

  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Book it, the price follows</BigButton>}>
      <p className="soft">What you typed of the pour stays as it is.</p>
      <div className="cells one-wide">
        {offered.length > 0 && (
          <PickOne
            label="What was opened"
            choices={[
              ...offered.map(({ id, name, supplier }) => ({
                value: String(id),
                label: name,
                note: supplier.name,
              })),
              { value: "loose", label: "Something else: I say how much" },
            ]}
            value={pack === "" ? "loose" : pack}
            error={form.errors.pack}
            onChange={(next) => choosePack(next === "loose" ? "" : next)}
          />
        )}
        <PickOne
          label="From whom"
          choices={suppliers.map(({ id, name }) => ({ value: String(id), label: name }))}
          value={form.values.supplier}
          error={form.errors.supplier}
          onChange={(supplier) => form.setFieldValue("supplier", supplier)}
        />
        <DayField
          label="Came in on"
          max={receivedOn}
          description="No later than the pour."
          {...form.getInputProps("received_on")}
        />
      </div>
      {came.map((each, i) => (
        <CameIn
          key={each.material}
          came={each}
          material={materials.find(({ id }) => id === each.material)}
          isLoose={pack === ""}
          errorOf={(field) => form.errors[`came.${i}.${field}`]}
          onChange={(next) => form.replaceListItem("came", i, next)}
        />
      ))}
    </Sheet>
  );
}

interface CameInProps {
  came: Came;
  material: Material | undefined;
  isLoose: boolean;
  errorOf: (field: string) => React.ReactNode;
  onChange: (came: Came) => void;
}

function CameIn({ came, material, isLoose, errorOf, onChange }: CameInProps) {
  if (!material) return null;
  return (
    <fieldset className={classes.came}>
      <legend>{material.name}</legend>
      {isLoose && (
        <AmountField
          label="How much came"
          material={material}
          value={came.quantity}
          error={errorOf("quantity")}
          onChange={(quantity) => onChange({ ...came, quantity })}
        />
      )}
      <TextInput
        label={`Lot number on the label of ${material.name}`}
        description="Left empty: none on the label."
        autoComplete="off"
        autoCapitalize="characters"
        value={came.lot_number}
        error={errorOf("lot_number")}
        onChange={(event) => onChange({ ...came, lot_number: event.currentTarget.value })}
      />
    </fieldset>
  );
}
