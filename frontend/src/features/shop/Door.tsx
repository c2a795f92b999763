import type { ReactNode } from "react";
import { useSession } from "@/api/session";
import { Outline } from "@/components/outline/Outline";
import classes from "./door.module.css";

const TOP = {
  legs: [
    { length_in: "120", width_in: "25.5" },
    { length_in: "72", width_in: "25.5" },
  ],
  cutouts: [{ length_in: "30", width_in: "18" }],
};

/** The page in front of the shop: what to fill in, beside a top drawn to scale. */
export function Door({ title, lead, children }: { title: string; lead: string; children: ReactNode }) {
  const shopName = useSession().shop.name;
  return (
    <div className={classes.door}>
      <title>{`${title} · Lot & Pour`}</title>
      <div className={classes.drawing} aria-hidden="true">
        <Outline top={TOP} name="A top" />
      </div>
      <div className={classes.form}>
        <p className={classes.mark}>{shopName || "Lot & Pour"}</p>
        <h1>{title}</h1>
        <p className="soft">{lead}</p>
        {children}
      </div>
    </div>
  );
}
