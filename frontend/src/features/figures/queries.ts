import { keepPreviousData } from "@tanstack/react-query";
import { api } from "@/api/query";
import type { components, operations } from "@/api/schema.gen";

type Schemas = components["schemas"];
type Asked<Name extends keyof operations> = NonNullable<operations[Name]["parameters"]["query"]>;

export type CostReport = Schemas["CostReportOut"];
export type CostRow = Schemas["CostRowOut"];
export type CostLines = Schemas["CostLinesOut"];
export type CostLine = Schemas["CostLineOut"];
export type Reorder = Schemas["ReorderOut"];
export type ReorderRow = Schemas["ReorderRowOut"];
export type Mixable = Schemas["MixableOut"];
export type Expiring = Schemas["ExpiringOut"];
export type ExpiringLot = Schemas["ExpiringLotOut"];
export type ShelfValue = Schemas["ValueOut"];
export type MassBalance = Schemas["MassBalanceOut"];
export type BalanceRow = Schemas["BalanceRowOut"];
export type Uses = Schemas["UsesOut"];
export type Movement = Schemas["MovementOut"];

export type CostAsked = Asked<"report_cost_per_sqft">;
export type CostLinesAsked = Asked<"report_cost_movements">;
export type BalanceAsked = Asked<"report_mass_balance">;
export type MovementsAsked = Asked<"list_movements">;

const KEEP = { placeholderData: keepPreviousData };

export function useCost(query: CostAsked, enabled = true) {
  return api.useQuery("get", "/api/reports/cost-per-sqft/", { params: { query } }, { ...KEEP, enabled });
}

/** The ledger's lines behind one row of cost per square foot. */
export function useCostLines(query: CostLinesAsked, enabled = true) {
  return api.useQuery("get", "/api/reports/cost-per-sqft/movements/", { params: { query } }, { enabled });
}

export function useReorder() {
  return api.useQuery("get", "/api/reports/reorder/");
}

export function useExpiring(days: number) {
  return api.useQuery("get", "/api/reports/expiring/", { params: { query: { days } } }, KEEP);
}

export function useValue(on: string | undefined) {
  return api.useQuery("get", "/api/reports/value/", { params: { query: on ? { on } : {} } }, KEEP);
}

export function useBalance(query: BalanceAsked) {
  return api.useQuery("get", "/api/reports/mass-balance/", { params: { query } }, KEEP);
}

/** Where a lot went, or all lots of its number. */
export function useUses(lot: number, all: boolean) {
  return api.useQuery("get", "/api/lots/{id}/uses/", {
    params: { path: { id: lot }, query: { all_of_this_number: all } },
  });
}

export const LINES_SHOWN = 50;

/** In and out of the shelf, the latest first. */
export function useMovements(query: MovementsAsked) {
  return api.useQuery(
    "get",
    "/api/movements/",
    { params: { query: { ...query, page_size: LINES_SHOWN } } },
    KEEP,
  );
}

export type Traced = "job" | "piece" | "pour";

/** Every lot in a job, a top or a pour. */
export function useSources(of: Traced, id: number) {
  const one = { params: { path: { id } } };
  const job = api.useQuery("get", "/api/jobs/{id}/sources/", one, { enabled: of === "job" });
  const piece = api.useQuery("get", "/api/pieces/{id}/sources/", one, { enabled: of === "piece" });
  const pour = api.useQuery("get", "/api/pours/{id}/sources/", one, { enabled: of === "pour" });
  return { job, piece, pour }[of];
}

/** What a traced job, top or pour is called. */
export function useTracedName(of: Traced, id: number): string {
  const one = { params: { path: { id } } };
  const job = api.useQuery("get", "/api/jobs/{id}/", one, { enabled: of === "job" }).data;
  const piece = api.useQuery("get", "/api/pieces/{id}/", one, { enabled: of === "piece" }).data;
  const pour = api.useQuery("get", "/api/pours/{id}/", one, { enabled: of === "pour" }).data;
  if (of === "job") return job ? `job ${job.number}, ${job.title}` : "a job";
  if (of === "piece") return piece ? `top ${piece.number}, ${piece.name}` : "a top";
  return pour ? `pour ${pour.number}` : "a pour";
}

const FOUND = 12;

export function useLotsFound(search: string) {
  const query = { search, page_size: FOUND, ordering: ["-received_on" as const] };
  return api.useQuery("get", "/api/lots/", { params: { query } }, KEEP);
}

export function useJobsFound(search: string) {
  return api.useQuery("get", "/api/jobs/", { params: { query: { search, page_size: FOUND } } }, KEEP);
}

export function useTopsFound(search: string) {
  return api.useQuery("get", "/api/pieces/", { params: { query: { search, page_size: FOUND } } }, KEEP);
}

export function usePoursFound(search: string) {
  const query = { search, status: ["completed" as const], page_size: FOUND };
  return api.useQuery("get", "/api/pours/", { params: { query } }, KEEP);
}

export type ReportFile =
  | "reports/cost-per-sqft"
  | "reports/cost-per-sqft/movements"
  | "reports/reorder"
  | "reports/expiring"
  | "reports/value"
  | "reports/mass-balance"
  | "movements"
  | `${"lots"}/${number}/uses`
  | `${Traced}s/${number}/sources`;

type Said = string | number | boolean | null | undefined | readonly string[];

/** The address of a report as a file for a spreadsheet, asked as the page asks it. */
export function fileOf(report: ReportFile, format: "csv" | "xlsx", asked: Record<string, Said> = {}): string {
  const query = new URLSearchParams();
  for (const [name, said] of Object.entries(asked)) {
    for (const each of Array.isArray(said) ? said : [said]) {
      if (each !== null && each !== undefined && each !== "") query.append(name, String(each));
    }
  }
  query.set("format", format);
  return `/api/${report}/?${query}`;
}
