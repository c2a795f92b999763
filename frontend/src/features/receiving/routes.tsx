import type { RouteObject } from "react-router";

export const tab = { to: "/receiving", label: "Receiving", sign: "receiving" } as const;

export const routes: RouteObject[] = [
  { path: "receiving", lazy: async () => ({ Component: (await import("./DeliveriesPage")).DeliveriesPage }) },
  {
    path: "receiving/new",
    lazy: async () => ({ Component: (await import("./new/NewDeliveryPage")).NewDeliveryPage }),
  },
  {
    path: "receiving/:id",
    lazy: async () => ({ Component: (await import("./delivery/DeliveryPage")).DeliveryPage }),
  },
];
