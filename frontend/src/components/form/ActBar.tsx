import type { ReactNode } from "react";
import classes from "./form.module.css";

/** Where acts stand: at the lower edge of a phone, above the tabs; in the flow of the page on a laptop. */
export function ActBar({ children }: { children: ReactNode }) {
  return (
    <div className={`${classes.acts} no-print`} data-acts="">
      {children}
    </div>
  );
}
