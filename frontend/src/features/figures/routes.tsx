import type { RouteObject } from "react-router";

export const tab = { to: "/figures", label: "Figures", sign: "figures" } as const;

export const routes: RouteObject[] = [
  { path: "figures", lazy: async () => ({ Component: (await import("./FiguresPage")).FiguresPage }) },
  { path: "figures/cost", lazy: async () => ({ Component: (await import("./cost/CostPage")).CostPage }) },
  {
    path: "figures/reorder",
    lazy: async () => ({ Component: (await import("./reorder/ReorderPage")).ReorderPage }),
  },
  {
    path: "figures/expiring",
    lazy: async () => ({ Component: (await import("./shelf/ExpiringPage")).ExpiringPage }),
  },
  { path: "figures/value", lazy: async () => ({ Component: (await import("./shelf/ValuePage")).ValuePage }) },
  {
    path: "figures/balance",
    lazy: async () => ({ Component: (await import("./balance/BalancePage")).BalancePage }),
  },
  { path: "figures/uses", lazy: async () => ({ Component: (await import("./trace/UsesPage")).UsesPage }) },
  {
    path: "figures/sources",
    lazy: async () => ({ Component: (await import("./trace/SourcesPage")).SourcesPage }),
  },
  {
    path: "figures/movements",
    lazy: async () => ({ Component: (await import("./movements/MovementsPage")).MovementsPage }),
  },
  {
    path: "figures/movements/cost",
    lazy: async () => ({ Component: (await import("./cost/CostLinesPage")).CostLinesPage }),
  },
];
