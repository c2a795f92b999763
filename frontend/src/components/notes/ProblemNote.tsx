import { Button } from "@mantine/core";
import { asProblem, type Remedy } from "@/api/problem";
import classes from "./notes.module.css";

interface ProblemNoteProps {
  problem: unknown;
  /** What a remedy does here, by its kind. One without an entry is shown as advice. */
  remedies?: Record<string, (remedy: Remedy) => void>;
  /** Carries the same thing out again, where that may help. */
  onRetry?: () => void;
}

/** What was refused and what would help, in the server's own words. Nothing where there is no problem. */
export function ProblemNote({ problem: thrown, remedies = {}, onRetry }: ProblemNoteProps) {
  if (!thrown) return null;
  const problem = asProblem(thrown);
  const mayRetry = onRetry && (problem.status <= 0 || problem.status >= 500 || problem.slug === "busy");
  return (
    <div role="alert" className={classes.problem} data-slug={problem.slug}>
      <p className={classes.problemTitle}>{problem.title}</p>
      <p>{problem.detail}</p>
      {problem.remedies.length > 0 && (
        <ul className={classes.remedies} aria-label="What would help">
          {problem.remedies.map((remedy) => {
            const act = remedies[remedy.kind];
            return (
              <li key={`${remedy.kind} ${remedy.text}`}>
                {act ? (
                  <Button variant="default" onClick={() => act(remedy)}>
                    {remedy.text}
                  </Button>
                ) : (
                  remedy.text
                )}
              </li>
            );
          })}
        </ul>
      )}
      {mayRetry && (
        <Button variant="default" onClick={onRetry}>
          Try again
        </Button>
      )}
    </div>
  );
}
