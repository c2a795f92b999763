import { keepPreviousData, useSuspenseQuery } from "@tanstack/react-query";
import { useAct } from "@/api/act";
import { client } from "@/api/client";
import { api } from "@/api/query";
import { everyPage, WHOLE_PAGE } from "@/api/records";
import type { components, operations } from "@/api/schema.gen";

type Schemas = components["schemas"];
/** An answer has all its keys; the schema leaves some of them open, as the request may leave them out. */
type Whole<T> = { [Key in keyof T]-?: Exclude<T[Key], undefined> };
export type Customer = Whole<Schemas["CustomerOut"]>;
export type Piece = Whole<Schemas["PieceOut"]>;
export type PieceRow = Whole<Schemas["PieceRow"]>;
export type Job = Whole<Omit<Schemas["JobOut"], "pieces" | "customer">> & {
  pieces: Piece[];
  customer: Customer;
};
export type CostRow = Schemas["CostRowOut"];
export type CostLines = Schemas["CostLinesOut"];
export type PourRow = Schemas["PourRow"];
type JobsAsked = NonNullable<operations["list_jobs"]["parameters"]["query"]>;

export const JOBS_SHOWN = 25;

export function useJobs(asked: JobsAsked) {
  const { data, error, isPending, refetch } = api.useQuery(
    "get",
    "/api/jobs/",
    { params: { query: { ...asked, page_size: JOBS_SHOWN } } },
    { placeholderData: keepPreviousData },
  );
  return { jobs: data?.results as Job[] | undefined, count: data?.count ?? 0, error, isPending, refetch };
}

export function useJob(id: number): Job {
  return api.useSuspenseQuery("get", "/api/jobs/{id}/", { params: { path: { id } } }).data as Job;
}

export function usePiece(id: number): PieceRow {
  return api.useSuspenseQuery("get", "/api/pieces/{id}/", { params: { path: { id } } }).data as PieceRow;
}

/** Everybody whom a job can be for. */
export function useCustomers(): Customer[] {
  return useSuspenseQuery({
    queryKey: ["every", "/api/customers/"],
    queryFn: () =>
      everyPage((page) =>
        client.GET("/api/customers/", {
          params: { query: { page, page_size: WHOLE_PAGE, is_archived: false } },
        }),
      ),
  }).data as Customer[];
}

/** All pours of a job or of one top, in the order in which the coats were laid or are to be. */
export function usePoursOf(of: { job: number } | { piece: number }): PourRow[] {
  const rows = useSuspenseQuery({
    queryKey: ["every", "/api/pours/", of],
    queryFn: () =>
      everyPage((page) =>
        client.GET("/api/pours/", { params: { query: { ...of, page, page_size: WHOLE_PAGE } } }),
      ),
  }).data;
  const when = (pour: PourRow) => pour.poured_at ?? pour.planned_for ?? "9999";
  return [...rows].sort((a, b) => when(a).localeCompare(when(b)) || a.number - b.number);
}

/** What the job's tops cost so far, by kind of material. Owners only. */
export function useJobCost(job: Job): CostRow | undefined {
  const { rows } = api.useSuspenseQuery("get", "/api/reports/cost-per-sqft/", {
    params: { query: { group_by: "job", purpose: "all", state: stateOf(job) } },
  }).data;
  return rows.find(({ key }) => key === String(job.id));
}

/** The lines of the ledger behind a job's cost, and what each material came to. */
export function useCostLines(job: Job) {
  return api.useQuery("get", "/api/reports/cost-per-sqft/movements/", {
    params: { query: { group_by: "job", key: String(job.id), purpose: "all", state: stateOf(job) } },
  });
}

function stateOf(job: Job): "finished" | "unfinished" {
  return job.finished_on ? "finished" : "unfinished";
}

export function useJobSources(id: number) {
  return api.useSuspenseQuery("get", "/api/jobs/{id}/sources/", { params: { path: { id } } }).data.rows;
}

export function usePieceSources(id: number) {
  return api.useSuspenseQuery("get", "/api/pieces/{id}/sources/", { params: { path: { id } } }).data.rows;
}

export function useMakeJob(onDone: (job: { id: number }) => void) {
  return useAct("post", "/api/jobs/", { onDone });
}

export function useEditJob(id: number, onDone: () => void) {
  return useAct("patch", "/api/jobs/{id}/", { params: { id }, keepsVersion: true, onDone });
}

export function useAddTops(job: number, onDone: () => void) {
  return useAct("post", "/api/jobs/{id}/pieces/", { params: { id: job }, onDone });
}

export function useEditPiece(id: number, onDone: () => void) {
  return useAct("put", "/api/pieces/{id}/", { params: { id }, keepsVersion: true, onDone });
}
