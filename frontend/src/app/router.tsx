import { createBrowserRouter, Navigate, type RouteObject } from "react-router";
import { PageSkeleton } from "@/components/page";
import { features, home } from "./features";
import { Doorstep, Gate } from "./shell/Gate";
import { Shell } from "./shell/Shell";
import { NotFound, Trouble } from "./shell/Trouble";

const start: RouteObject[] = home === "/" ? [] : [{ index: true, element: <Navigate to={home} replace /> }];

/** Every own part on one page, while developing only. */
const parts: RouteObject[] = import.meta.env.DEV
  ? [{ path: "parts", lazy: async () => ({ Component: (await import("./parts/PartsPage")).PartsPage }) }]
  : [];

/** The map of addresses: every feature's pages inside the shell, each under its own guard against trouble. */
export const routes: RouteObject[] = [
  {
    errorElement: <Trouble />,
    HydrateFallback: PageSkeleton,
    children: [
      {
        element: <Doorstep />,
        children: features.flatMap(({ openRoutes = [] }) => openRoutes),
      },
      {
        element: <Gate />,
        children: [
          {
            element: <Shell />,
            children: [
              {
                errorElement: <Trouble />,
                children: [
                  ...start,
                  ...parts,
                  ...features.flatMap((feature) => feature.routes),
                  { path: "*", element: <NotFound /> },
                ],
              },
            ],
          },
        ],
      },
    ],
  },
];

export const createRouter = () => createBrowserRouter(routes);
