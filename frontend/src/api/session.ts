import { api } from "./query";

/** Who is signed in and which shop this is. Suspends until the first answer is here. */
export function useSession() {
  return api.useSuspenseQuery("get", "/api/session/", undefined, { staleTime: 60_000 }).data;
}

export type Session = ReturnType<typeof useSession>;

/** Whether the person may see and change what only owners do: money, people, the shop's settings. */
export function useIsOwner(): boolean {
  return useSession().person?.role === "owner";
}

/** Whether the person may record work: receive, count, move, log. A viewer reads only. */
export function useMayRecord(): boolean {
  const role = useSession().person?.role;
  return role === "owner" || role === "crew";
}
