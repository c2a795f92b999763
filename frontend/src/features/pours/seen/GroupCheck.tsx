import type { ReactNode } from "react";
import classes from "./seen.module.css";

interface GroupCheckProps {
  /** Nothing of the group is assumed any more. */
  isDone: boolean;
  onCheck: () => void;
  children: ReactNode;
}

/** A big check mark that confirms a whole group at once. */
export function GroupCheck({ isDone, onCheck, children }: GroupCheckProps) {
  return (
    <button type="button" className={classes.group} aria-pressed={isDone} disabled={isDone} onClick={onCheck}>
      <svg viewBox="0 0 24 24" aria-hidden="true">
        <path d="M3.500 13l5.500 6L20.500 5.500" />
      </svg>
      {children}
    </button>
  );
}
