import { OneOf } from "@/components/form";
import type { Terms } from "./typed";

const TERMS: readonly (readonly [Terms, string])[] = [
  ["paid", "Priced"],
  ["to_follow", "Price to follow"],
  ["free", "Free"],
  ["borrowed", "Borrowed"],
  ["customers_own", "Customer's own"],
];

interface TermsKeysProps {
  name: string;
  value?: string;
  onChange: (terms: string) => void;
  error?: React.ReactNode;
}

/** How the goods of a line came. */
export function TermsKeys({ name, error, ...rest }: TermsKeysProps) {
  return (
    <div>
      <OneOf label={`How ${name} came`} choices={TERMS} {...rest} />
      {error && <p role="alert">{error}</p>}
    </div>
  );
}
