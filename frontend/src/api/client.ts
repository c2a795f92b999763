import createClient, { type Middleware } from "openapi-fetch";
import { Problem, problemFrom, unreachable } from "./problem";
import type { paths } from "./schema.gen";

const SAFE = new Set(["GET", "HEAD", "OPTIONS"]);
const versions = new Map<string, string>();

function cookie(name: string): string | undefined {
  const found = document.cookie.split("; ").find((part) => part.startsWith(`${name}=`));
  return found && decodeURIComponent(found.slice(name.length + 1));
}

async function bodyOf(response: Response): Promise<unknown> {
  const isJson = response.headers.get("content-type")?.includes("json");
  return isJson ? response.json().catch(() => undefined) : undefined;
}

/** Where a call goes: the path with its parameters filled in. */
export function addressOf(path: string, params: Record<string, string | number> = {}): string {
  return path.replace(/\{(\w+)\}/g, (_, name: string) => encodeURIComponent(String(params[name] ?? "")));
}

/** The version (ETag) of the record at an address, as last read or written by this page. */
export function versionOf(address: string): string | undefined {
  return versions.get(address);
}

const oneWay: Middleware = {
  onRequest({ request }) {
    const token = SAFE.has(request.method) ? undefined : cookie("csrftoken");
    if (token) request.headers.set("X-CSRFToken", token);
    request.headers.set("Accept", "application/json, application/problem+json");
    return request;
  },
  async onResponse({ request, response }) {
    if (!response.ok) throw problemFrom(response.status, await bodyOf(response));
    const version = response.headers.get("etag");
    if (version) versions.set(new URL(request.url).pathname, version);
    return response;
  },
  onError({ error }) {
    if (error instanceof Problem) return error;
    const isCancelled = error instanceof DOMException && error.name === "AbortError";
    return isCancelled ? error : unreachable();
  },
};

/** The one client. Every refusal leaves it as a `Problem`; nothing else in the front end calls `fetch`. */
export const client = createClient<paths, "application/json">({
  baseUrl: globalThis.location.origin,
  credentials: "same-origin",
  fetch: (request) => globalThis.fetch(request),
});
client.use(oneWay);
