import { TextInput } from "@mantine/core";
import type { ReactNode } from "react";
import { useWays } from "../figures";
import { decimalParts } from "../figures/decimal";
import { currencySign } from "../figures/Money";

interface MoneyFieldProps {
  label: ReactNode;
  value?: string;
  onChange: (typed: string) => void;
  error?: ReactNode;
  description?: ReactNode;
  /** Whether less than nothing may be meant, as with a discount. */
  maySubtract?: boolean;
  disabled?: boolean;
}

/** A sum in the shop's currency, kept as it was typed. */
export function MoneyField({ label, value = "", onChange, maySubtract = false, ...rest }: MoneyFieldProps) {
  const { currency } = useWays();
  return (
    <TextInput
      label={
        <>
          {label} ({currencySign(currency)})
        </>
      }
      value={value}
      inputMode={maySubtract ? "text" : "decimal"}
      autoComplete="off"
      onChange={(event) => onChange(event.currentTarget.value)}
      onFocus={(event) => event.currentTarget.select()}
      {...rest}
    />
  );
}

/** Money as the call takes it: "1,280.50" is 1280.50, "−12" is -12; undefined where it is no sum yet. */
export function moneySaid(typed: string): string | undefined {
  const plain = typed
    .trim()
    .replace("−", "-")
    .replace(/,(?=\d{3}(\D|$))/g, "");
  return plain !== "" && decimalParts(plain) ? plain : undefined;
}
