import type { ReactNode } from "react";
import { unitShown, useWays } from "../figures";
import { QuantityField } from "./QuantityField";
import { type QuantityBody, readQuantity } from "./reading";
import { type MeasuredMaterial, unitsOf } from "./saidUnits";

/** An amount as a form keeps it: the words, and what to send once they are understood. */
export interface Said {
  text: string;
  body?: QuantityBody | undefined;
}

export const UNSAID: Said = { text: "" };

interface AmountFieldProps {
  label: ReactNode;
  material: MeasuredMaterial;
  value?: Said;
  onChange: (said: Said) => void;
  error?: ReactNode;
  description?: ReactNode;
  onLeave?: () => void;
}

/** An amount of one material, with its units and measures one tap away. What is counted in one unit needs no unit typed. */
export function AmountField({
  label,
  material,
  value = UNSAID,
  onChange,
  error,
  description,
  onLeave,
}: AmountFieldProps) {
  const units = unitsOf(material, useWays().units);
  const measures = (material.measures ?? []).map(({ name }) => name);
  const [only] = units.length + measures.length === 1 ? units : [];

  function addOnlyUnit() {
    const reading = readQuantity(value.text);
    if (!only || reading.kind !== "no_unit") return;
    onChange({
      text: `${value.text.trim()} ${unitShown(only)}`,
      body: { amount: reading.amount, unit: only },
    });
  }

  return (
    <QuantityField
      label={label}
      value={value.text}
      onChange={(text, body) => onChange({ text, body })}
      onLeave={() => {
        addOnlyUnit();
        onLeave?.();
      }}
      material={String(material.id)}
      units={units}
      measures={measures}
      error={error}
      description={description}
    />
  );
}

/** The sentence for a field whose amount is missing or not understood yet; nothing where it is. */
export function unsaid(said: Said, sentence = "Say how much, with its unit."): string | undefined {
  return said.body === undefined ? sentence : undefined;
}

/** The form's field for the server's pointer: an error within an amount belongs to the amount. */
export function fieldOfAmount(name: string): string {
  return name.replace(/\.(amount|unit)$/, "");
}
