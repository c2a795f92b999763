import type { RouteObject } from "react-router";

export const tab = { to: "/", label: "Today", sign: "today" } as const;

export const routes: RouteObject[] = [
  { index: true, lazy: async () => ({ Component: (await import("./TodayPage")).TodayPage }) },
];
