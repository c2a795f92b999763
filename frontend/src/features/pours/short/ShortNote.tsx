import { useEffect, useRef } from "react";
import type { Problem, Remedy } from "@/api/problem";
import { ProblemNote } from "@/components/notes/ProblemNote";
import classes from "./short.module.css";

interface ShortNoteProps {
  problem: Problem | null;
  remedies: Record<string, (remedy: Remedy) => void>;
}

/** A refusal about what went in, right above the amounts, brought into view. Nothing where there is none. */
export function ShortNote({ problem, remedies }: ShortNoteProps) {
  const note = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!problem) return;
    note.current?.scrollIntoView({ block: "start" });
    note.current?.focus({ preventScroll: true });
  }, [problem]);
  if (!problem) return null;
  return (
    <div ref={note} tabIndex={-1} className={classes.note}>
      <ProblemNote problem={problem} remedies={remedies} />
    </div>
  );
}
