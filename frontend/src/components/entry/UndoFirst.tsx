import { Link } from "react-router";
import type { Problem } from "@/api/problem";

interface Step {
  text: string;
  lot?: number;
  cause?: number | null;
}

function stepsOf(problem: Problem | null): Step[] {
  const first = problem?.extra.first;
  return Array.isArray(first)
    ? first.filter(
        (step): step is Step => typeof step === "object" && step !== null && typeof step.text === "string",
      )
    : [];
}

/** What a refusal says must be undone before, each leading to where that is done. */
export function UndoFirst({ problem }: { problem: Problem | null }) {
  const steps = stepsOf(problem);
  if (steps.length === 0) return null;
  return (
    <section aria-label="Undo first">
      <h3>Undo first, the latest at the top</h3>
      <ul>
        {steps.map((step) => {
          const to = step.cause ? `/pours/${step.cause}` : step.lot ? `/shelf/lots/${step.lot}` : null;
          return (
            <li key={`${step.text}${step.lot}${step.cause}`}>
              {to ? <Link to={to}>{step.text}</Link> : step.text}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
