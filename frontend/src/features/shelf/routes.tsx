import type { RouteObject } from "react-router";

export const tab = { to: "/shelf", label: "Shelf", sign: "shelf" } as const;

export const routes: RouteObject[] = [
  { path: "shelf", lazy: async () => ({ Component: (await import("./ShelfPage")).ShelfPage }) },
  { path: "shelf/count", lazy: async () => ({ Component: (await import("./count/CountPage")).CountPage }) },
  {
    path: "shelf/counts",
    lazy: async () => ({ Component: (await import("./count/CountsPage")).CountsPage }),
  },
  { path: "shelf/mix", lazy: async () => ({ Component: (await import("./mix/MixPage")).MixPage }) },
  {
    path: "shelf/materials/new",
    lazy: async () => ({ Component: (await import("./material/NewMaterialPage")).NewMaterialPage }),
  },
  {
    path: "shelf/materials/:id",
    lazy: async () => ({ Component: (await import("./material/MaterialPage")).MaterialPage }),
  },
  {
    path: "shelf/materials/:id/edit",
    lazy: async () => ({ Component: (await import("./material/EditMaterialPage")).EditMaterialPage }),
  },
  { path: "shelf/lots/:id", lazy: async () => ({ Component: (await import("./lot/LotPage")).LotPage }) },
  {
    path: "shelf/suppliers",
    lazy: async () => ({ Component: (await import("./around/SuppliersPage")).SuppliersPage }),
  },
  { path: "shelf/packs", lazy: async () => ({ Component: (await import("./around/PacksPage")).PacksPage }) },
  {
    path: "shelf/systems",
    lazy: async () => ({ Component: (await import("./around/SystemsPage")).SystemsPage }),
  },
  {
    path: "shelf/places",
    lazy: async () => ({ Component: (await import("./around/PlacesPage")).PlacesPage }),
  },
];
