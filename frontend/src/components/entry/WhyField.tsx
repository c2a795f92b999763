import { Textarea } from "@mantine/core";
import type { ReactNode } from "react";
import classes from "./entry.module.css";

interface WhyFieldProps {
  label?: string;
  value?: string;
  onChange: (value: string) => void;
  error?: ReactNode;
  description?: ReactNode;
  /** What is often the reason: one tap with a glove instead of typing. */
  usual?: readonly string[];
}

/** Why, in words: typed, or one of the usual reasons tapped. */
export function WhyField({
  label = "Why",
  value = "",
  onChange,
  error,
  description,
  usual = [],
}: WhyFieldProps) {
  return (
    <div>
      <Textarea
        label={label}
        value={value}
        error={error}
        description={description}
        autosize
        minRows={2}
        maxRows={8}
        onChange={(event) => onChange(event.currentTarget.value)}
      />
      {usual.length > 0 && (
        <fieldset className={classes.units}>
          <legend className="only-read-aloud">Usual reasons</legend>
          {usual.map((reason) => (
            <button
              key={reason}
              type="button"
              className={classes.unit}
              aria-pressed={value === reason}
              onClick={() => onChange(reason)}
            >
              {reason}
            </button>
          ))}
        </fieldset>
      )}
    </div>
  );
}
