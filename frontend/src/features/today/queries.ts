import { api } from "@/api/query";
import type { components } from "@/api/schema.gen";

export type Need = components["schemas"]["NeedOut"];

/** What needs a hand, the most pressing first. Asked again whenever somebody comes back to the page. */
export function useNeeds() {
  return api.useSuspenseQuery("get", "/api/today/", undefined, { refetchInterval: 60_000 }).data;
}
