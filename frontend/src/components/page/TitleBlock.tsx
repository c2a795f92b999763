import { useSession } from "@/api/session";
import { Day, useToday } from "../figures";
import classes from "./page.module.css";

/** The block in the lower corner of a drawing: the shop, the sheet, who reads it and on which day. */
export function TitleBlock({ title }: { title: string }) {
  const { shop, person } = useSession();
  const today = useToday();
  const cells = [
    ["Shop", shop.name || "Lot & Pour"],
    ["Sheet", title],
    ["Read by", person?.name ?? "nobody signed in"],
    ["On", <Day key="day" value={today} />],
  ] as const;
  return (
    <footer className={classes.block}>
      <dl>
        {cells.map(([label, value]) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </footer>
  );
}
