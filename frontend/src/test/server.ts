import { vi } from "vitest";

export interface Sent {
  method: string;
  path: string;
  body: unknown;
  headers: Headers;
}

type Answer = { status?: number; body?: unknown; headers?: Record<string, string> };
type Answers = Record<string, Answer | ((sent: Sent) => Answer)>;

export const shop = {
  name: "Ridgeline Tops",
  town: "Alder Falls",
  currency: "USD",
  time_zone: "America/Denver",
  units: { volume: "fl_oz", mass: "g", area: "sqft", temperature: "F" },
  counts_faces: { top: true, edges: true, splash: true, deducts_cutouts: false },
  poison_help: "",
};

export const owner = { id: 1, username: "maren", name: "Maren Holt", role: "owner" };

export const signedIn = { body: { person: owner, shop, needs_set_up: false } };
export const signedOut = { body: { person: null, shop, needs_set_up: false } };

/** Answers the calls of the page as told ("GET /api/shop/"), and remembers what was sent. No answer named: 404. */
export function serve(answers: Answers): Sent[] {
  const sent: Sent[] = [];
  vi.stubGlobal("fetch", async (request: Request) => {
    const path = new URL(request.url).pathname;
    const text = await request.text();
    const call = {
      method: request.method,
      path,
      headers: request.headers,
      body: text ? JSON.parse(text) : undefined,
    };
    sent.push(call);
    const told = answers[`${request.method} ${path}`] ?? {
      status: 404,
      body: { title: "Nothing here", detail: path },
    };
    const { status = 200, body, headers } = typeof told === "function" ? told(call) : told;
    const type = status < 400 ? "application/json" : "application/problem+json";
    return new Response(body === undefined ? null : JSON.stringify(body), {
      status,
      headers: { "content-type": type, ...headers },
    });
  });
  return sent;
}

/** The server is away: no call gets an answer. */
export function serverIsAway(): void {
  vi.stubGlobal("fetch", () => Promise.reject(new TypeError("Failed to fetch")));
}
