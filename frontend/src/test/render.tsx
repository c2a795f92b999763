import { MantineProvider } from "@mantine/core";
import { type QueryClient, QueryClientProvider } from "@tanstack/react-query";
import { render } from "@testing-library/react";
import userEvent from "@testing-library/user-event";
import { type ReactNode, Suspense } from "react";
import { createMemoryRouter, MemoryRouter, RouterProvider } from "react-router";
import { createCache } from "@/api/query";
import { routes } from "@/app/router";
import { theme } from "@/app/theme";
import { type Ways, WaysProvider } from "@/components/figures";

function plainCache() {
  const cache = createCache();
  cache.setDefaultOptions({ queries: { ...cache.getDefaultOptions().queries, retry: false } });
  return cache;
}

function Around({ cache, children }: { cache: QueryClient; children: ReactNode }) {
  return (
    <MantineProvider theme={theme} env="test">
      <QueryClientProvider client={cache}>
        <Suspense fallback={null}>{children}</Suspense>
      </QueryClientProvider>
    </MantineProvider>
  );
}

/** The whole app, opened at an address. */
export function openAt(address: string) {
  const router = createMemoryRouter(routes, { initialEntries: [address] });
  const screen = render(
    <Around cache={plainCache()}>
      <RouterProvider router={router} />
    </Around>,
  );
  return { ...screen, router, user: userEvent.setup() };
}

export const usWays: Ways = {
  units: { volume: "fl_oz", mass: "g", area: "sqft", temperature: "F" },
  currency: "USD",
  timeZone: "America/Denver",
  poisonHelp: "",
  showsMoney: true,
};

/** One part by itself, in a shop that measures in fl oz. */
export function show(part: ReactNode, ways: Partial<Ways> = {}) {
  const screen = render(
    <Around cache={plainCache()}>
      <MemoryRouter>
        <WaysProvider ways={{ ...usWays, ...ways }}>{part}</WaysProvider>
      </MemoryRouter>
    </Around>,
  );
  return { ...screen, user: userEvent.setup() };
}
