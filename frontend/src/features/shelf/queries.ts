import { keepPreviousData, useQuery, useSuspenseQuery } from "@tanstack/react-query";
import { client } from "@/api/client";
import { api } from "@/api/query";
import { everyPage, WHOLE_PAGE } from "@/api/records";
import type { components } from "@/api/schema.gen";

type Schemas = components["schemas"];
export type ShelfRow = Schemas["ShelfRow"];
export type LotRow = Schemas["LotRow"];
export type Lot = Schemas["LotOut"];
export type Movement = Schemas["MovementOut"];

const NO_LOTS: { count: number; results: LotRow[] } = { count: 0, results: [] };
const NO_MOVEMENTS: { count: number; results: Movement[] } = { count: 0, results: [] };

/** What is on the shelf of every material that is kept, or of the archived ones. */
export function useShelf(archived = false): ShelfRow[] {
  return useSuspenseQuery({
    queryKey: ["every", "/api/shelf/", archived],
    queryFn: () =>
      everyPage((page) =>
        client.GET("/api/shelf/", {
          params: { query: { page, page_size: WHOLE_PAGE, is_archived: archived } },
        }),
      ),
  }).data;
}

interface LotsAsked {
  material?: number;
  place?: number;
  on_hand?: boolean;
}

/** Every lot of which something is left, the earliest use-by first. */
export function useLots(asked: LotsAsked = {}): LotRow[] {
  return useSuspenseQuery({
    queryKey: ["every", "/api/lots/", asked],
    queryFn: () =>
      everyPage((page) =>
        client.GET("/api/lots/", {
          params: { query: { page, page_size: WHOLE_PAGE, on_hand: true, ...asked } },
        }),
      ),
  }).data;
}

export function useLot(id: number): Lot {
  return api.useSuspenseQuery("get", "/api/lots/{id}/", { params: { path: { id } } }).data;
}

export function useMaterial(id: number) {
  return api.useSuspenseQuery("get", "/api/materials/{id}/", { params: { path: { id } } }).data;
}

/** The figures of one material; the shelf's list finds it by its code. */
export function useFigures(material: { id: number; code: string }): ShelfRow | undefined {
  const { results } = api.useSuspenseQuery("get", "/api/shelf/", {
    params: { query: { search: material.code, page_size: WHOLE_PAGE } },
  }).data;
  return results.find((row) => row.material.id === material.id);
}

export type ReorderRow = Schemas["ReorderRowOut"];

/** Where each material stands against its reorder point, by material; empty until it is here. */
export function useReorder(): ReadonlyMap<number, ReorderRow> {
  const { data } = api.useQuery("get", "/api/reports/reorder/", undefined, { staleTime: 60_000 });
  return new Map(data?.rows.map((row) => [row.material.id, row]));
}

export const MOVEMENTS_SHOWN = 20;

/** In and out of a lot or a material, the latest first. */
export function useMovements(of: { lot?: number; material?: number }, page: number) {
  return useQuery({
    queryKey: ["get", "/api/movements/", of, page],
    queryFn: async () => {
      const { data } = await client.GET("/api/movements/", {
        params: { query: { ...of, page, page_size: MOVEMENTS_SHOWN } },
      });
      return data ?? NO_MOVEMENTS;
    },
    placeholderData: keepPreviousData,
  });
}

/** What lots were emptied already: still found by their number, no longer on the shelf. */
export function useEmptyLots(material: number) {
  return useSuspenseQuery({
    queryKey: ["get", "/api/lots/", "empty", material],
    queryFn: async () => {
      const { data } = await client.GET("/api/lots/", {
        params: { query: { material, on_hand: false, ordering: ["-received_on"], page_size: 12 } },
      });
      return data ?? NO_LOTS;
    },
  }).data;
}
