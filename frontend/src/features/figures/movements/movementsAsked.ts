import type { Movement, MovementsAsked } from "../queries";
import { LINES } from "../words";

const RECORDS = ["lot", "material", "pour", "job", "piece", "customer", "place", "posting", "cause"] as const;
type Kind = NonNullable<MovementsAsked["kind"]>[number];

const KINDS = Object.keys(LINES).filter((kind) => kind !== "reversed");

/** The kinds that a list of in and out is narrowed by. */
export const KIND_CHOICES: readonly (readonly [string, string])[] = [
  ["", "All"],
  ...KINDS.map((kind) => [kind, LINES[kind as keyof typeof LINES]] as const),
];

function whole(said: string | null): number | undefined {
  const number = Number(said ?? "");
  return said && Number.isInteger(number) && number > 0 ? number : undefined;
}

/** What the page's address asks for: the same names as the ledger's own filters, so that a figure's link says it all. */
export function movementsAsked(params: URLSearchParams): MovementsAsked {
  const asked: MovementsAsked = { page: whole(params.get("page")) ?? 1 };
  for (const name of RECORDS) {
    const id = whole(params.get(name));
    if (id !== undefined) asked[name] = id;
  }
  const kinds = params.getAll("kind").filter((kind): kind is Kind => KINDS.includes(kind));
  if (kinds.length > 0) asked.kind = kinds;
  const direction = params.get("direction");
  if (direction === "in" || direction === "out") asked.direction = direction;
  for (const name of ["happened_from", "happened_to"] as const) {
    const day = params.get(name);
    if (day && /^\d{4}-\d{2}-\d{2}$/.test(day)) asked[name] = day;
  }
  return asked;
}

export interface Narrowing {
  name: string;
  label: string;
  to?: string;
}

/** What the list is narrowed to, in words, each to be taken away again. */
export function narrowedTo(asked: MovementsAsked, rows: readonly Movement[]): Narrowing[] {
  const [first] = rows;
  const found: Narrowing[] = [];
  if (asked.lot) {
    const label = first ? `Lot ${first.lot.number}, ${first.material.name}` : "One lot";
    found.push({ name: "lot", label, to: `/shelf/lots/${asked.lot}` });
  }
  if (asked.material) {
    const label = first?.material.name ?? "One material";
    found.push({ name: "material", label, to: `/shelf/materials/${asked.material}` });
  }
  if (asked.pour) found.push({ name: "pour", label: "One pour", to: `/pours/${asked.pour}` });
  if (asked.cause) found.push({ name: "cause", label: "One pour", to: `/pours/${asked.cause}` });
  if (asked.job) found.push({ name: "job", label: "Pours of one job", to: `/jobs/${asked.job}` });
  if (asked.piece) found.push({ name: "piece", label: "Pours on one top", to: `/tops/${asked.piece}` });
  if (asked.customer) found.push({ name: "customer", label: "Pours for one customer" });
  if (asked.place) found.push({ name: "place", label: first ? `At: ${first.place.name}` : "One place" });
  if (asked.posting) found.push({ name: "posting", label: "One act" });
  if (asked.direction) {
    found.push({ name: "direction", label: asked.direction === "in" ? "Came into lots" : "Left lots" });
  }
  return found;
}
