import { useSuspenseQuery } from "@tanstack/react-query";
import { client } from "./client";
import type { components } from "./schema.gen";

type Schemas = components["schemas"];
export type Material = Schemas["MaterialOut"];
export type Supplier = Schemas["SupplierOut"];
export type Pack = Schemas["PackOut"];
export type Place = Schemas["PlaceOut"];

interface Paged<T> {
  next?: string | null;
  results: T[];
}

/** The most rows that the server gives at once. */
export const WHOLE_PAGE = 200;

/** All of a list that forms choose from, page after page. */
export async function everyPage<T>(read: (page: number) => Promise<{ data?: Paged<T> }>): Promise<T[]> {
  const rows: T[] = [];
  for (let page = 1; ; page += 1) {
    const { data } = await read(page);
    rows.push(...(data?.results ?? []));
    if (!data?.next) return rows;
  }
}

/** Every material that is offered: the archived ones are left out. */
export function useMaterials(): Material[] {
  return useSuspenseQuery({
    queryKey: ["every", "/api/materials/"],
    queryFn: () =>
      everyPage((page) =>
        client.GET("/api/materials/", {
          params: { query: { page, page_size: WHOLE_PAGE, is_archived: false } },
        }),
      ),
  }).data;
}

export function useSuppliers(): Supplier[] {
  return useSuspenseQuery({
    queryKey: ["every", "/api/suppliers/"],
    queryFn: () =>
      everyPage((page) =>
        client.GET("/api/suppliers/", {
          params: { query: { page, page_size: WHOLE_PAGE, is_archived: false } },
        }),
      ),
  }).data;
}

/** Every pack and kit that suppliers sell. */
export function usePacks(): Pack[] {
  return useSuspenseQuery({
    queryKey: ["every", "/api/packs/"],
    queryFn: () =>
      everyPage((page) =>
        client.GET("/api/packs/", { params: { query: { page, page_size: WHOLE_PAGE, is_archived: false } } }),
      ),
  }).data;
}

/** The shop, the van, the sites: wherever something may lie. The first is where deliveries come to. */
export function usePlaces(): Place[] {
  return useSuspenseQuery({
    queryKey: ["every", "/api/places/"],
    queryFn: () =>
      everyPage((page) =>
        client.GET("/api/places/", {
          params: { query: { page, page_size: WHOLE_PAGE, is_archived: false } },
        }),
      ),
  }).data;
}
