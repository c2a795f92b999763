import type { RouteObject } from "react-router";
import { ForRecorders } from "@/components/page/ForRecorders";

export const routes: RouteObject[] = [
  { path: "pours", lazy: async () => ({ Component: (await import("./PoursPage")).PoursPage }) },
  { path: "pours/:id", lazy: async () => ({ Component: (await import("./PourPage")).PourPage }) },
  {
    element: (
      <ForRecorders
        title="Pours"
        back={{ to: "/pours", label: "Pours" }}
        says="Owners and crew plan and log pours; a viewer reads."
      />
    ),
    children: [
      {
        path: "pours/new",
        lazy: async () => ({ Component: (await import("./plan/NewPourPage")).NewPourPage }),
      },
      {
        path: "pours/:id/edit",
        lazy: async () => ({ Component: (await import("./plan/EditPourPage")).EditPourPage }),
      },
      { path: "pours/:id/add", lazy: async () => ({ Component: (await import("./done/AddPage")).AddPage }) },
      {
        path: "pours/:id/correct",
        lazy: async () => ({ Component: (await import("./done/CorrectPage")).CorrectPage }),
      },
    ],
  },
];
