import { TextInput } from "@mantine/core";
import type { ReactNode } from "react";

interface DayFieldProps {
  label: ReactNode;
  /** YYYY-MM-DD, or "" where no day is said. */
  value?: string;
  onChange: (day: string) => void;
  error?: ReactNode;
  description?: ReactNode;
  max?: string;
  min?: string;
}

/** A day of the shop. The device's own wheel or calendar opens, whichever its owner is used to. */
export function DayField({ value = "", onChange, ...rest }: DayFieldProps) {
  return (
    <TextInput
      type="date"
      value={value}
      onChange={(event) => onChange(event.currentTarget.value)}
      {...rest}
    />
  );
}
