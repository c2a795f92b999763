import type { RouteObject } from "react-router";
import * as figures from "@/features/figures/routes";
import * as jobs from "@/features/jobs/routes";
import * as pours from "@/features/pours/routes";
import * as receiving from "@/features/receiving/routes";
import * as shelf from "@/features/shelf/routes";
import * as shop from "@/features/shop/routes";
import * as today from "@/features/today/routes";

/** A job of the shop that has screens: its pages, those open to whoever is not signed in, and its tab. */
export interface Feature {
  routes: RouteObject[];
  openRoutes?: RouteObject[];
  tab?: Tab;
}

export interface Tab {
  to: string;
  label: string;
  sign: "today" | "shelf" | "receiving" | "jobs" | "figures";
}

/** Every feature, in the order of the tabs. */
export const features: Feature[] = [today, shelf, receiving, jobs, pours, figures, shop];

export const tabs: Tab[] = features.flatMap(({ tab }) => (tab ? [tab] : []));

/** Where a person lands: the first tab. */
export const home = tabs[0]?.to ?? "/shop";
