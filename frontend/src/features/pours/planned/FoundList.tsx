import { Button } from "@mantine/core";
import type { ReactNode } from "react";
import classes from "../pours.module.css";
import type { Found } from "../short/found";

interface FoundListProps {
  found: readonly Found[];
  errorOf: (field: string) => ReactNode;
  onRemove: (at: number) => void;
}

/** What will be counted up together with the pour. Nothing where nothing is. */
export function FoundList({ found, errorOf, onRemove }: FoundListProps) {
  if (found.length === 0) return null;
  return (
    <ul className={classes.founds} aria-label="More than the book said">
      {found.map(({ name, quantity, reason }, at) => (
        <li key={`${name} ${quantity.text}`}>
          <span>
            {quantity.text} more of {name} than the book said: {reason}
            {errorOf(`found.${at}`) && <span className={classes.short}> {errorOf(`found.${at}`)}</span>}
          </span>
          <Button variant="subtle" c="var(--brick)" onClick={() => onRemove(at)}>
            Not so
          </Button>
        </li>
      ))}
    </ul>
  );
}
