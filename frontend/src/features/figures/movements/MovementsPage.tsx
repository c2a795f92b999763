import { Link, useSearchParams } from "react-router";
import { FilterRow } from "@/components/entry/FilterRow";
import { Pager } from "@/components/entry/Pager";
import { Money, Quantity } from "@/components/figures";
import { EmptyState } from "@/components/notes/EmptyState";
import { type Fact, Page } from "@/components/page";
import { Answer } from "../Answer";
import { Downloads } from "../Downloads";
import classes from "../figures.module.css";
import { Period } from "../Period";
import { LINES_SHOWN, type Movement, useMovements } from "../queries";
import { sumOf } from "../sums";
import { useSeesMoney } from "../useSeesMoney";
import { MovementLines } from "./MovementLines";
import { KIND_CHOICES, movementsAsked, type Narrowing, narrowedTo } from "./movementsAsked";

function without(params: URLSearchParams, name: string) {
  const next = new URLSearchParams(params);
  next.delete(name);
  next.delete("page");
  return { search: next.toString() };
}

function Narrowed({ to }: { to: readonly Narrowing[] }) {
  const [params] = useSearchParams();
  if (to.length === 0) return null;
  return (
    <ul className={classes.narrowed} aria-label="Only these">
      {to.map(({ name, label, to: page }) => (
        <li key={name}>
          {page ? <Link to={page}>{label}</Link> : <span>{label}</span>}
          <Link to={without(params, name)} replace className={classes.take}>
            <span aria-hidden="true">×</span>
            <span className="only-read-aloud">Show others than {label}, too</span>
          </Link>
        </li>
      ))}
    </ul>
  );
}

/** What the lines come to, where all of them are on the page and in one unit. */
function sumsOf(rows: readonly Movement[], count: number, seesMoney: boolean): Fact[] {
  if (rows.length === 0 || rows.length < count) return [];
  const units = new Set(rows.map(({ quantity }) => quantity.unit));
  const [unit] = units;
  const amount = sumOf(rows.map(({ quantity }) => quantity.amount));
  return [
    ...(units.size === 1 && unit
      ? [{ label: "They come to", value: <Quantity value={{ amount, unit }} /> }]
      : []),
    ...(seesMoney
      ? [{ label: "Money", value: <Money value={sumOf(rows.map(({ value }) => value))} /> }]
      : []),
  ];
}

/** In and out of the shelf, the latest first: every line of the ledger, narrowed to those behind one figure. */
export function MovementsPage() {
  const [params] = useSearchParams();
  const asked = movementsAsked(params);
  const lines = useMovements(asked);
  const seesMoney = useSeesMoney();
  const rows = lines.data?.results ?? [];
  const count = lines.data?.count ?? 0;
  const { page: _, ...file } = asked;
  return (
    <Page
      title="In and out"
      back={{ to: "/figures", label: "Figures" }}
      facts={[{ label: "Lines", value: lines.data?.count }, ...sumsOf(rows, count, seesMoney)]}
    >
      <div className={`${classes.filters} no-print`}>
        <Narrowed to={narrowedTo(asked, rows)} />
        <FilterRow label="What happened" name="kind" choices={KIND_CHOICES} />
        <Period from="From" to="Up to" names={["happened_from", "happened_to"]} />
      </div>
      <Answer of={lines}>
        {({ results }) =>
          results.length === 0 ? (
            <EmptyState title="No such lines">
              Nothing of that sort came in or went out. Take a filter away to see more.
            </EmptyState>
          ) : (
            <>
              <MovementLines rows={results} seesMoney={seesMoney} />
              <Pager label="lines" count={count} pageSize={LINES_SHOWN} />
            </>
          )
        }
      </Answer>
      <Downloads isReady={lines.isSuccess} report="movements" name="in and out" asked={file} />
    </Page>
  );
}
