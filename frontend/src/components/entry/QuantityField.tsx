import { TextInput } from "@mantine/core";
import { type ReactNode, useRef, useState } from "react";
import { unitShown } from "../figures/units";
import classes from "./entry.module.css";
import { useOunces } from "./ounces";
import { type Ounces, type QuantityBody, readQuantity, withUnit } from "./reading";

interface QuantityFieldProps {
  label: ReactNode;
  /** What is typed, word for word. */
  value: string;
  /** Called with the typed text, and with what to send: undefined while it cannot be understood yet. */
  onChange: (text: string, body: QuantityBody | undefined) => void;
  /** What the meaning of "oz" is kept under; usually the material's id. */
  material: string;
  /** One tap each beside the field: units ("fl_oz", "g") and the material's own measures ("pump"). */
  units?: readonly string[];
  measures?: readonly string[];
  error?: ReactNode;
  description?: ReactNode;
  required?: boolean;
  /** Filled in by the tool and not touched yet: shown as assumed. */
  isAssumed?: boolean;
  /** Called when the field is left. */
  onLeave?: () => void;
}

/** An amount as people say it: "1 1/2 cups", "14 g", "2 pumps". Nothing is rounded here; the words are what is sent. */
export function QuantityField(props: QuantityFieldProps) {
  const {
    label,
    value,
    onChange,
    material,
    units = [],
    measures = [],
    error,
    description,
    required,
    isAssumed,
    onLeave,
  } = props;
  const input = useRef<HTMLInputElement>(null);
  const [ounces, chooseOunces] = useOunces(material);
  const [isLeft, setLeft] = useState(false);
  const reading = readQuantity(value, { ounces, measures });
  const asksOunces = reading.kind === "which_ounces" || /\boz\b\.?$/i.test(value.replace(/fl\.? ?oz/i, ""));

  function say(text: string, meaning: Ounces | undefined = ounces) {
    const next = readQuantity(text, { ounces: meaning, measures });
    onChange(text, next.kind === "amount" ? next.body : undefined);
  }

  function pickUnit(unit: string) {
    say(withUnit(value, unitShown(unit)));
    input.current?.focus();
  }

  const hint =
    reading.kind === "unreadable" && isLeft
      ? reading.why
      : reading.kind === "which_ounces"
        ? "Ounces of liquid, or on the scale? Choose once; it is remembered for this material."
        : reading.kind === "no_unit" && isLeft
          ? "Add the unit, such as fl oz or g."
          : undefined;

  return (
    <div className={classes.field} data-assumed={isAssumed || undefined}>
      <TextInput
        ref={input}
        label={label}
        value={value}
        required={required ?? false}
        error={error ?? hint}
        description={isAssumed ? "As planned, not touched yet" : description}
        inputMode={units.length > 0 ? "decimal" : "text"}
        autoComplete="off"
        onChange={(event) => say(event.currentTarget.value)}
        onFocus={(event) => event.currentTarget.select()}
        onBlur={() => {
          setLeft(true);
          onLeave?.();
        }}
      />
      {(units.length > 0 || measures.length > 0) && (
        <fieldset className={classes.units}>
          <legend className="only-read-aloud">Unit</legend>
          {[...units, ...measures].map((unit) => (
            <button
              key={unit}
              type="button"
              className={classes.unit}
              aria-pressed={reading.kind === "amount" && reading.quantity.unit === unit}
              onClick={() => pickUnit(unit)}
            >
              {unitShown(unit)}
            </button>
          ))}
        </fieldset>
      )}
      {asksOunces && (
        <fieldset className={classes.units}>
          <legend className="only-read-aloud">What oz means for this material</legend>
          {(["fl_oz", "oz"] as const).map((meaning) => (
            <button
              key={meaning}
              type="button"
              className={classes.unit}
              aria-pressed={ounces === meaning}
              onClick={() => {
                chooseOunces(meaning);
                say(value, meaning);
              }}
            >
              {meaning === "fl_oz" ? "fluid oz" : "oz by weight"}
            </button>
          ))}
        </fieldset>
      )}
    </div>
  );
}
