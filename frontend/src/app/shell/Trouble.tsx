import { useQueryClient } from "@tanstack/react-query";
import { Link, useLocation, useNavigate, useRouteError } from "react-router";
import { asProblem, type Problem } from "@/api/problem";
import { ActBar, BigButton } from "@/components/form";
import classes from "./trouble.module.css";

function words({ status, title, detail }: Problem): { title: string; detail: string; mayRetry: boolean } {
  if (status === 404)
    return {
      title: "Nothing is kept under this address",
      detail: "It may have been typed wrong, or what was here is archived.",
      mayRetry: false,
    };
  if (status === 403)
    return {
      title: "This page is for another role",
      detail: "Ask an owner of the shop for it.",
      mayRetry: false,
    };
  return { title, detail, mayRetry: true };
}

interface TroubleSheetProps {
  problem: Problem;
  onRetry: () => void;
}

function TroubleSheet({ problem, onRetry }: TroubleSheetProps) {
  const { title, detail, mayRetry } = words(problem);
  return (
    <section className={classes.trouble}>
      <title>{`${title} · Lot & Pour`}</title>
      <svg viewBox="0 0 120 84" aria-hidden="true">
        <path d="M22 18L30 78H90L98 18" />
        <path d="M16 18h8M96 18h8" />
        <path className={classes.drip} d="M52 78v4M66 78v2" />
        <path className={classes.puddle} d="M34 84h62" />
      </svg>
      <h1>{title}</h1>
      <p>{detail}</p>
      <ActBar>
        {mayRetry && (
          <BigButton type="button" onClick={onRetry}>
            Try again
          </BigButton>
        )}
        <Link to="/">Back to the first page</Link>
      </ActBar>
    </section>
  );
}

/** Shown in place of a page that could not be: the server is away, broke, refused, or the page itself has a fault. */
export function Trouble() {
  const problem = asProblem(useRouteError());
  const cache = useQueryClient();
  const navigate = useNavigate();
  const location = useLocation();
  function retry() {
    cache.removeQueries({ predicate: (query) => query.state.status === "error" });
    if (problem.status === -1) globalThis.location.reload();
    else void navigate(location, { replace: true });
  }
  return <TroubleSheet problem={problem} onRetry={retry} />;
}

/** An address that no page has. */
export function NotFound() {
  return (
    <section className={classes.trouble}>
      <title>No such page · Lot & Pour</title>
      <h1>No page has this address</h1>
      <p>Look at how it is written, or start from the first page.</p>
      <Link to="/">Back to the first page</Link>
    </section>
  );
}
