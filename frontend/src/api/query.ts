import { QueryCache, QueryClient } from "@tanstack/react-query";
import createQueryHooks from "openapi-react-query";
import { client } from "./client";
import { asProblem, Problem } from "./problem";

/** Reads: `api.useSuspenseQuery("get", "/api/lots/{id}/", { params: { path: { id } } })`. The key derives from the call. */
export const api = createQueryHooks(client);

/** The key under which the session is kept. */
export const sessionKey = api.queryOptions("get", "/api/session/").queryKey;

function mayRetry(failures: number, thrown: unknown): boolean {
  const { status } = asProblem(thrown);
  return failures < 2 && (status === 0 || status === 502 || status === 503 || status === 504);
}

/** The query cache: the only place where the server's data is kept. */
export function createCache(): QueryClient {
  const cache: QueryClient = new QueryClient({
    queryCache: new QueryCache({ onError: (thrown) => signOutOn(cache, thrown) }),
    defaultOptions: {
      queries: { retry: mayRetry, staleTime: 15_000, networkMode: "always" },
      mutations: { retry: false, networkMode: "always" },
    },
  });
  return cache;
}

/** A 401 from anywhere means that the session ended: the shell then asks to sign in, and comes back to the same page. */
export function signOutOn(cache: QueryClient, thrown: unknown): void {
  if (!(thrown instanceof Problem) || !thrown.isSignedOut) return;
  cache.setQueryData(sessionKey, (session: { person: unknown } | undefined) =>
    session ? { ...session, person: null } : session,
  );
}
