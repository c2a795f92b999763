import { TextInput } from "@mantine/core";
import { useEffect, useState } from "react";
import { useSearchParams } from "react-router";

interface SearchFieldProps {
  label: string;
  /** The name under which the page's address keeps it. */
  name?: string;
}

/** Looks for what is typed. The address keeps it, so that going back finds the same list. */
export function SearchField({ label, name = "search" }: SearchFieldProps) {
  const [params, setParams] = useSearchParams();
  const kept = params.get(name) ?? "";
  const [typed, setTyped] = useState(kept);

  useEffect(() => {
    if (typed === kept) return;
    const wait = setTimeout(() => {
      setParams(
        (now) => {
          if (typed.trim() === "") now.delete(name);
          else now.set(name, typed);
          now.delete("page");
          return now;
        },
        { replace: true, preventScrollReset: true },
      );
    }, 200);
    return () => clearTimeout(wait);
  }, [typed, kept, name, setParams]);

  return (
    <TextInput
      type="search"
      label={label}
      value={typed}
      autoComplete="off"
      onChange={(event) => setTyped(event.currentTarget.value)}
    />
  );
}
