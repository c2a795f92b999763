import type { CSSProperties } from "react";
import { useSearchParams } from "react-router";
import { DayField } from "@/components/entry/DayField";

interface PeriodProps {
  from: string;
  to: string;
  /** The names under which the page's address keeps the days. */
  names?: readonly [from: string, to: string];
}

/** From one day to another, both included. The address keeps them. */
export function Period({ from, to, names = ["from", "to"] }: PeriodProps) {
  const [params, setParams] = useSearchParams();
  function keep(name: string, day: string) {
    setParams(
      (now) => {
        if (day) now.set(name, day);
        else now.delete(name);
        now.delete("page");
        return now;
      },
      { replace: true, preventScrollReset: true },
    );
  }
  const [first, last] = [params.get(names[0]) ?? "", params.get(names[1]) ?? ""];
  const isTurned = first !== "" && last !== "" && first > last;
  return (
    <div className="cells" style={{ maxWidth: 560, "--cell-width": "150px" } as CSSProperties}>
      <DayField label={from} value={first} onChange={(day) => keep(names[0], day)} />
      <DayField
        label={to}
        value={last}
        onChange={(day) => keep(names[1], day)}
        {...(isTurned ? { error: "This day lies before the first one." } : {})}
      />
    </div>
  );
}
