import { Select } from "@mantine/core";
import type { ReactNode } from "react";
import { Swatch } from "../notes/Swatch";

export interface Choice {
  value: string;
  label: string;
  /** The material's own colour, shown before its name. */
  swatch?: string | null | undefined;
  /** Said smaller, after the name. */
  note?: string | undefined;
}

interface PickOneProps {
  label: ReactNode;
  choices: readonly Choice[];
  value?: string;
  onChange: (value: string) => void;
  error?: ReactNode;
  description?: ReactNode;
  placeholder?: string;
  /** Whether nothing may be chosen again. */
  mayClear?: boolean;
  disabled?: boolean;
}

/** One of many: typing a few letters narrows the list. */
export function PickOne({ choices, value = "", onChange, mayClear = false, ...rest }: PickOneProps) {
  const byValue = new Map(choices.map((choice) => [choice.value, choice]));
  return (
    <Select
      data={choices.map(({ value: key, label }) => ({ value: key, label }))}
      value={value === "" ? null : value}
      onChange={(next) => onChange(next ?? "")}
      searchable={choices.length > 7}
      clearable={mayClear}
      allowDeselect={mayClear}
      nothingFoundMessage="Nothing of that name"
      maxDropdownHeight={320}
      renderOption={({ option }) => {
        const choice = byValue.get(option.value);
        return (
          <span style={{ display: "flex", gap: 10, alignItems: "center", minHeight: 32 }}>
            {choice?.swatch !== undefined && <Swatch colour={choice.swatch} />}
            <span>
              {option.label}
              {choice?.note && <small style={{ display: "block", opacity: 0.8 }}>{choice.note}</small>}
            </span>
          </span>
        );
      }}
      {...rest}
    />
  );
}
