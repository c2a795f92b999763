import type { ReactNode } from "react";
import classes from "./notes.module.css";

interface EmptyStateProps {
  title: string;
  children?: ReactNode;
  /** The act that fills it. */
  act?: ReactNode;
}

/** Said where there is nothing to list: why, and what fills it. */
export function EmptyState({ title, children, act }: EmptyStateProps) {
  return (
    <div className={classes.empty}>
      <p className={classes.emptyTitle}>{title}</p>
      {children && <p className="soft">{children}</p>}
      {act}
    </div>
  );
}
