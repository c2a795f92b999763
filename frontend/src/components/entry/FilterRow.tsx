import { Link, useSearchParams } from "react-router";
import classes from "./choice.module.css";

interface FilterRowProps {
  label: string;
  /** The name under which the page's address keeps it. */
  name: string;
  /** The first stands for all: its value is "". */
  choices: readonly (readonly [value: string, label: string])[];
}

/** Narrows a list to one sort. The address keeps it; on a phone the row is drawn sideways. */
export function FilterRow({ label, name, choices }: FilterRowProps) {
  const [params] = useSearchParams();
  const kept = params.get(name) ?? "";
  return (
    <nav className={classes.row} aria-label={label}>
      {choices.map(([value, shown]) => {
        const next = new URLSearchParams(params);
        if (value === "") next.delete(name);
        else next.set(name, value);
        next.delete("page");
        return (
          <Link
            key={value}
            to={{ search: next.toString() }}
            replace
            preventScrollReset
            aria-current={kept === value ? "true" : undefined}
          >
            {shown}
          </Link>
        );
      })}
    </nav>
  );
}
