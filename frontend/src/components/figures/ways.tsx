import { createContext, type ReactNode, useContext } from "react";
import type { PreferredUnits } from "./units";

/** The shop's ways: how figures, money and days are written on every screen. */
export interface Ways {
  units: PreferredUnits & { temperature: "F" | "C" };
  currency: string;
  timeZone: string;
  poisonHelp: string;
  /** Whether money may be on the screen now: a customer may be looking. */
  showsMoney: boolean;
}

const plain: Ways = {
  units: { volume: "ml", mass: "g", area: "sqft", temperature: "C" },
  currency: "USD",
  timeZone: "UTC",
  poisonHelp: "",
  showsMoney: true,
};

const WaysContext = createContext<Ways>(plain);

export function WaysProvider({ ways, children }: { ways: Ways; children: ReactNode }) {
  return <WaysContext value={ways}>{children}</WaysContext>;
}

export function useWays(): Ways {
  return useContext(WaysContext);
}
