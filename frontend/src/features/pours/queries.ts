import { keepPreviousData, useQuery, useSuspenseQuery } from "@tanstack/react-query";
import { useAct } from "@/api/act";
import { client } from "@/api/client";
import { api } from "@/api/query";
import { everyPage, WHOLE_PAGE } from "@/api/records";
import type { components, operations } from "@/api/schema.gen";
import type { Coat } from "@/components/pours/words";

type Schemas = components["schemas"];
export type Pour = Schemas["PourDetail"];
export type PourRow = Schemas["PourRow"];
export type Planned = Schemas["PlannedOut"];
export type Usage = Schemas["UsageOut"];
export type UsageBody = Schemas["UsageInRequest"];
export type FoundBody = Schemas["FoundInRequest"];
export type Provenance = Schemas["Provenance"];
export type Proposal = Schemas["ProposalOut"];
export type Remark = Schemas["Remark"];
export type Job = Schemas["JobOut"];
export type LotRow = Schemas["LotRow"];
export type ShelfRow = Schemas["ShelfRow"];
type PoursAsked = NonNullable<operations["list_pours"]["parameters"]["query"]>;

export const POURS_SHOWN = 25;

export function usePours(asked: PoursAsked) {
  return api.useQuery(
    "get",
    "/api/pours/",
    { params: { query: { page_size: POURS_SHOWN, ...asked } } },
    { placeholderData: keepPreviousData },
  );
}

const onePour = (id: number) => ({ params: { path: { id } } });

export function usePour(id: number): Pour {
  return api.useSuspenseQuery("get", "/api/pours/{id}/", onePour(id)).data;
}

/** A pour that is looked up beside the page: undefined until it is here, or where none is asked for. */
export function usePourBeside(id: number | undefined): Pour | undefined {
  return api.useQuery("get", "/api/pours/{id}/", onePour(id ?? 0), { enabled: id !== undefined }).data;
}

/** The pour completed last, whose conditions are probably still those of the room. */
export function useLastPour(coat?: Coat): Pour | undefined {
  const { data } = usePours({
    status: ["completed"],
    ordering: ["-poured_at"],
    page_size: 1,
    ...(coat && { layer: [coat] }),
  });
  return usePourBeside(data?.results[0]?.id);
}

export function usePeople() {
  return api
    .useSuspenseQuery("get", "/api/people/", { params: { query: { page_size: WHOLE_PAGE } } })
    .data.results.filter(({ is_active }) => is_active);
}

/** Jobs under way: tops of theirs can be poured. */
export function useJobsUnderWay(): Job[] {
  return useSuspenseQuery({
    queryKey: ["every", "/api/jobs/", "unfinished"],
    queryFn: () =>
      everyPage((page) =>
        client.GET("/api/jobs/", {
          params: { query: { page, page_size: WHOLE_PAGE, state: "unfinished", is_archived: false } },
        }),
      ),
  }).data;
}

/** What is on the shelf of every material: on hand, and what may still be promised. */
export function useShelf(): ReadonlyMap<number, ShelfRow> {
  const rows = useSuspenseQuery({
    queryKey: ["every", "/api/shelf/", false],
    queryFn: () =>
      everyPage((page) =>
        client.GET("/api/shelf/", { params: { query: { page, page_size: WHOLE_PAGE, is_archived: false } } }),
      ),
  }).data;
  return new Map(rows.map((row) => [row.material.id, row]));
}

/** The lots of a material in which something is left. */
export function useLotsOf(material: number): LotRow[] {
  const { data } = useQuery({
    queryKey: ["every", "/api/lots/", { material }],
    queryFn: () =>
      everyPage((page) =>
        client.GET("/api/lots/", {
          params: { query: { page, page_size: WHOLE_PAGE, on_hand: true, material } },
        }),
      ),
  });
  return data ?? [];
}

export function usePlanPour(onDone: (pour: Pour) => void) {
  return useAct("post", "/api/pours/", { onDone });
}

export function useChangePlan(id: number, onDone: () => void) {
  return useAct("patch", "/api/pours/{id}/", { params: { id }, keepsVersion: true, onDone });
}

export function useCompletePour(id: number) {
  return useAct("post", "/api/pours/{id}/complete/", { params: { id } });
}
