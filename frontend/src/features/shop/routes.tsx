import type { RouteObject } from "react-router";

/** Before somebody is signed in. */
export const openRoutes: RouteObject[] = [
  { path: "sign-in", lazy: async () => ({ Component: (await import("./SignIn")).SignIn }) },
  { path: "set-up", lazy: async () => ({ Component: (await import("./SetUp")).SetUp }) },
];

export const routes: RouteObject[] = [
  { path: "shop", lazy: async () => ({ Component: (await import("./ShopPage")).ShopPage }) },
  { path: "shop/people", lazy: async () => ({ Component: (await import("./PeoplePage")).PeoplePage }) },
];
