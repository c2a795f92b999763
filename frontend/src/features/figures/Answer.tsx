import type { ReactNode } from "react";
import { ProblemNote } from "@/components/notes/ProblemNote";
import { LinesSkeleton } from "@/components/page";

interface Asked<T> {
  data: T | undefined;
  error: unknown;
  isPlaceholderData: boolean;
  refetch: () => unknown;
}

interface AnswerProps<T> {
  of: Asked<T>;
  /** How many lines of room the answer will about take. */
  lines?: number;
  children: (answer: T) => ReactNode;
}

/** What a report answers; until then the room it will take, and what was refused where it stands. */
export function Answer<T>({ of, lines = 14, children }: AnswerProps<T>) {
  if (of.error) return <ProblemNote problem={of.error} onRetry={() => void of.refetch()} />;
  if (of.data === undefined) return <LinesSkeleton lines={lines} />;
  return <div aria-busy={of.isPlaceholderData}>{children(of.data)}</div>;
}
