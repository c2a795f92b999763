import type { UseFormReturnType } from "@mantine/form";
import { useState } from "react";
import { AmountField, fieldOfAmount, type Said, UNSAID, unsaid } from "@/components/entry/AmountField";
import { MomentField } from "@/components/entry/MomentField";
import { momentAt } from "@/components/entry/moment";
import { PickOne } from "@/components/entry/PickOne";
import type { MeasuredMaterial } from "@/components/entry/saidUnits";
import { Quantity } from "@/components/figures";
import { OneOf } from "@/components/form";
import type { Lot } from "../../queries";
import classes from "../lot.module.css";

export interface Taken {
  how: string;
  quantity: Said;
  place: string;
  /** On the shop's clock; empty for now. */
  when: string;
}

/** What an act on a lot needs to know. */
export interface LotActProps {
  lot: Lot;
  material: MeasuredMaterial;
  onDone: (said: string) => void;
}

export function takenFrom(lot: Lot, how = "some"): Taken {
  const [first] = lot.places;
  return {
    how,
    quantity: UNSAID,
    when: "",
    place: lot.places.length === 1 && first ? String(first.place) : "",
  };
}

/** The part of the body that says how much and from where. */
export function takenBody({ how, quantity, place, when }: Taken, timeZone: string) {
  const happened = momentAt(when, timeZone);
  return {
    ...(happened && { happened_at: happened }),
    ...(how === "all" ? { all: true } : { quantity: quantity.body ?? quantity.text }),
    ...(place !== "" && { place: Number(place) }),
  };
}

export function checkTaken({ how, quantity, place }: Taken, lot: Lot): Partial<Record<string, string>> {
  const said = how === "all" ? undefined : unsaid(quantity);
  return {
    ...(said && { quantity: said }),
    ...(how !== "all" &&
      lot.places.length > 1 &&
      place === "" && { place: "It lies in several places. Say from which." }),
  };
}

/** The form's field for a field of the body. */
export function fieldOfTaken(name: string): string {
  return name === "happened_at" ? "when" : fieldOfAmount(name);
}

interface HowMuchProps<V extends Taken & Record<string, unknown>> {
  form: UseFormReturnType<V>;
  lot: Lot;
  material: MeasuredMaterial;
  fromLabel?: string;
}

/** When it happened, where that was not just now: behind one tap, as it seldom is asked for. */
function EarlierThanNow<V extends Taken & Record<string, unknown>>({ form }: { form: UseFormReturnType<V> }) {
  const { when } = form.values;
  const [isOpen, setOpen] = useState(when !== "");
  if (!isOpen && !form.errors.when) {
    return (
      <button type="button" className={classes.earlier} onClick={() => setOpen(true)}>
        It was earlier than now
      </button>
    );
  }
  return (
    <MomentField
      label="When"
      value={when}
      onChange={(local) => form.setFieldValue("when", local as never)}
      error={form.errors.when}
      description="Empty: now."
    />
  );
}

/** All of it, or how much; and from where, if it lies in several places. */
export function HowMuch<V extends Taken & Record<string, unknown>>(props: HowMuchProps<V>) {
  const { form, lot, material, fromLabel = "From" } = props;
  const { how } = form.values;
  return (
    <>
      <OneOf
        label="How much"
        choices={[
          ["some", "Some of it"],
          ["all", "All of it"],
        ]}
        {...form.getInputProps("how")}
      />
      {how === "all" ? (
        <p className="soft">
          All of <Quantity value={lot.on_hand} />.
        </p>
      ) : (
        <AmountField label="Amount" material={material} {...form.getInputProps("quantity")} />
      )}
      {lot.places.length > 1 && (
        <PickOne
          label={fromLabel}
          choices={lot.places.map(({ place, name }) => ({ value: String(place), label: name }))}
          mayClear={how === "all"}
          {...form.getInputProps("place")}
        />
      )}
      <EarlierThanNow form={form} />
    </>
  );
}
