import type { RouteObject } from "react-router";
import { ForRecorders } from "@/components/page/ForRecorders";

export const tab = { to: "/jobs", label: "Jobs", sign: "jobs" } as const;

export const routes: RouteObject[] = [
  { path: "jobs", lazy: async () => ({ Component: (await import("./JobsPage")).JobsPage }) },
  { path: "jobs/:id", lazy: async () => ({ Component: (await import("./JobPage")).JobPage }) },
  { path: "jobs/:id/sources", lazy: async () => ({ Component: (await import("./JobSources")).JobSources }) },
  { path: "tops/:id", lazy: async () => ({ Component: (await import("./top/TopPage")).TopPage }) },
  {
    element: (
      <ForRecorders
        title="Jobs and tops"
        back={{ to: "/jobs", label: "Jobs" }}
        says="Owners and crew put jobs down and change them; a viewer reads."
      />
    ),
    children: [
      { path: "jobs/new", lazy: async () => ({ Component: (await import("./NewJobPage")).NewJobPage }) },
      {
        path: "jobs/:id/edit",
        lazy: async () => ({ Component: (await import("./EditJobPage")).EditJobPage }),
      },
      {
        path: "jobs/:id/tops/new",
        lazy: async () => ({ Component: (await import("./top/NewTopPage")).NewTopPage }),
      },
      {
        path: "tops/:id/edit",
        lazy: async () => ({ Component: (await import("./top/EditTopPage")).EditTopPage }),
      },
    ],
  },
];
