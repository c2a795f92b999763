import { TextInput } from "@mantine/core";
import type { UseFormReturnType } from "@mantine/form";
import { useState } from "react";
import { DayField } from "@/components/entry/DayField";
import { Swatch } from "@/components/notes/Swatch";
import classes from "../receiving.module.css";
import type { DeliveryTyped } from "./typed";

interface LabelFieldsProps {
  form: UseFormReturnType<DeliveryTyped>;
  /** Where the label's fields stand in the form. */
  at: string;
  name: string;
  swatch: string;
  containers: string;
}

/** What stands on one label: its lot number at once, dates and containers behind one tap. */
export function LabelFields({ form, at, name, swatch, containers }: LabelFieldsProps) {
  const number = form.getInputProps(`${at}.lot_number`);
  const made = form.getInputProps(`${at}.made_on`);
  const expires = form.getInputProps(`${at}.expires_on`);
  const count = form.getInputProps(`${at}.containers`);
  const isTold = Boolean(made.value || expires.value || made.error || expires.error || count.error);
  const [isOpen, setOpen] = useState(isTold);
  return (
    <div className={classes.label}>
      <TextInput
        label={
          <>
            <Swatch colour={swatch} /> {name}: lot number
          </>
        }
        description="Empty: none is on the label, and the shop gives its own."
        autoComplete="off"
        autoCapitalize="characters"
        spellCheck={false}
        {...number}
      />
      {isOpen || isTold ? (
        <div className="cells" style={{ "--cell-width": "130px" } as React.CSSProperties}>
          <DayField label="Made on" max={form.values.received_on} {...made} />
          <DayField label="Expires on" {...expires} />
          <TextInput label={containers} inputMode="numeric" placeholder="as many as packs" {...count} />
        </div>
      ) : (
        <button type="button" className={classes.more} onClick={() => setOpen(true)}>
          Dates and containers<span className="only-read-aloud"> of {name}</span>
        </button>
      )}
    </div>
  );
}
