import type { RouteObject } from "react-router";

export const routes: RouteObject[] = [
  { path: "pours", lazy: async () => ({ Component: (await import("./PoursPage")).PoursPage }) },
  { path: "pours/new", lazy: async () => ({ Component: (await import("./plan/NewPourPage")).NewPourPage }) },
  { path: "pours/:id", lazy: async () => ({ Component: (await import("./PourPage")).PourPage }) },
  {
    path: "pours/:id/edit",
    lazy: async () => ({ Component: (await import("./plan/EditPourPage")).EditPourPage }),
  },
  { path: "pours/:id/add", lazy: async () => ({ Component: (await import("./done/AddPage")).AddPage }) },
  {
    path: "pours/:id/correct",
    lazy: async () => ({ Component: (await import("./done/CorrectPage")).CorrectPage }),
  },
];
