import { useId } from "react";
import classes from "./form.module.css";

interface OneOfProps {
  label: string;
  choices: readonly (readonly [value: string, label: string])[];
  value?: string;
  onChange: (value: string) => void;
}

/** One of a few, all in sight: wide keys side by side. */
export function OneOf({ label, choices, value, onChange }: OneOfProps) {
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
