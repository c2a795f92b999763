import { useId } from "react";
import classes from "./shop.module.css";

interface UnitChoiceProps {
  label: string;
  choices: readonly (readonly [value: string, label: string])[];
  value?: string;
  onChange: (value: string) => void;
}

/** One of two, both in sight: a pair of wide keys. */
export function UnitChoice({ label, choices, value, onChange }: UnitChoiceProps) {
  const name = useId();
  return (
    <fieldset className={classes.choice}>
      <legend>{label}</legend>
      {choices.map(([key, shown]) => (
        <label key={key}>
          <input type="radio" name={name} checked={value === key} onChange={() => onChange(key)} />
          <span>{shown}</span>
        </label>
      ))}
    </fieldset>
  );
}
