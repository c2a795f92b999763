import { Button } from "@mantine/core";
import { type ReactNode, useEffect, useRef } from "react";
import type { Remedy } from "@/api/problem";
import { ProblemNote } from "../notes/ProblemNote";
import { ActBar } from "./ActBar";
import classes from "./form.module.css";
import type { SheetPart } from "./useSheet";

interface SheetProps {
  /** Left out where the page's own title says it. */
  title?: string;
  sheet: SheetPart;
  children: ReactNode;
  /** The buttons, the main one first. */
  acts: ReactNode;
  remedies?: Record<string, (remedy: Remedy) => void>;
}

/** A form to fill in. Errors stand in their fields, the first one is brought into view, and nothing typed is lost. */
export function Sheet({ title, sheet, children, acts, remedies }: SheetProps) {
  const form = useRef<HTMLFormElement>(null);
  const { problem, refusals, strayErrors } = sheet;

  const isAllInFields =
    problem !== null &&
    problem.errors.length > 0 &&
    strayErrors.length === 0 &&
    problem.remedies.length === 0;

  useEffect(() => {
    if (refusals > 0) form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [refusals]);

  return (
    <form ref={form} className={classes.sheet} noValidate onSubmit={sheet.onSubmit} aria-label={title}>
      {title && <h2>{title}</h2>}
      {children}
      {problem && !isAllInFields && (
        <ProblemNote problem={problem} remedies={remedies ?? {}} onRetry={sheet.sendAnyway} />
      )}
      {isAllInFields && (
        <p role="alert" className={classes.toMend}>
          {problem.errors.length === 1
            ? "One field above needs mending."
            : `${problem.errors.length} fields above need mending.`}
        </p>
      )}
      {strayErrors.length > 0 && (
        <ul className={classes.stray}>
          {strayErrors.map(({ pointer, detail }) => (
            <li key={pointer}>{detail}</li>
          ))}
        </ul>
      )}
      {problem?.status === 412 && (
        <div className={classes.stale}>
          <Button variant="default" onClick={sheet.takeTheirs}>
            Show what is there now
          </Button>
          <Button variant="default" onClick={sheet.sendAnyway}>
            Save mine over it
          </Button>
        </div>
      )}
      <ActBar>{acts}</ActBar>
    </form>
  );
}
