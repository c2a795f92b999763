import { Button, TextInput } from "@mantine/core";
import type { ReactNode } from "react";
import classes from "./top.module.css";

interface FaceRowsProps<Part extends Record<string, string>> {
  legend: string;
  /** One of them: "edge". */
  one: string;
  rows: readonly Part[];
  /** The measures of a row and what each is called. */
  measures: readonly (readonly [field: keyof Part & string, label: string])[];
  /** What a further row starts with. */
  fresh: Part;
  errorOf: (row: number, field: string) => ReactNode;
  onChange: (rows: Part[]) => void;
}

/** Edges, splash strips or cut-outs: as many rows as there are, each with its two measures in inches. */
export function FaceRows<Part extends Record<string, string>>(props: FaceRowsProps<Part>) {
  const { legend, one, rows, measures, fresh, errorOf, onChange } = props;
  return (
    <fieldset className={classes.faceRows}>
      <legend>{legend}</legend>
      {rows.map((row, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name of their own; their place is their name
        <div key={i} className={classes.faceRow}>
          {measures.map(([field, label]) => (
            <TextInput
              key={field}
              label={label}
              aria-label={`${label}, ${one} ${i + 1}`}
              inputMode="decimal"
              autoComplete="off"
              value={row[field] ?? ""}
              error={errorOf(i, field)}
              onChange={(event) =>
                onChange(
                  rows.map((each, j) => (j === i ? { ...each, [field]: event.currentTarget.value } : each)),
                )
              }
            />
          ))}
          <Button
            variant="default"
            className={classes.less ?? ""}
            aria-label={`Take away ${one} ${i + 1}`}
            onClick={() => onChange(rows.filter((_, j) => j !== i))}
          >
            ✕
          </Button>
        </div>
      ))}
      <Button variant="default" onClick={() => onChange([...rows, fresh])}>
        Add {/^[aeiou]/.test(one) ? "an" : "a"} {one}
      </Button>
    </fieldset>
  );
}
