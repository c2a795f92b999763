import { TextInput } from "@mantine/core";
import type { ReactNode } from "react";

interface MomentFieldProps {
  label: ReactNode;
  /** "YYYY-MM-DDTHH:MM" on the shop's clock, or "" where none is said. */
  value: string;
  onChange: (local: string) => void;
  error?: ReactNode;
  description?: ReactNode;
  max?: string;
}

/** A day and a time on the shop's clock, picked on the device's own wheel. */
export function MomentField({ value, onChange, ...rest }: MomentFieldProps) {
  return (
    <TextInput
      type="datetime-local"
      value={value}
      onChange={(event) => onChange(event.currentTarget.value)}
      {...rest}
    />
  );
}
