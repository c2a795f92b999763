/** What would help, as the server proposes it: `kind` is what a screen switches on, `text` is what a person reads. */
export interface Remedy {
  kind: string;
  text: string;
  [key: string]: unknown;
}

/** One field to mend. `pointer` is a JSON pointer into the body that was sent, such as `/lines/0/quantity`. */
export interface FieldError {
  pointer: string;
  detail: string;
}

interface ProblemParts {
  slug: string;
  title: string;
  status: number;
  detail: string;
  remedies?: Remedy[];
  errors?: FieldError[];
  extra?: Record<string, unknown>;
}

/** The one kind of error in the front end: what the server refused, or that it could not be reached (status 0). */
export class Problem extends Error {
  readonly slug: string;
  readonly title: string;
  readonly status: number;
  readonly detail: string;
  readonly remedies: Remedy[];
  readonly errors: FieldError[];
  /** Further members of the answer, such as what is short and by how much. */
  readonly extra: Record<string, unknown>;

  constructor(parts: ProblemParts) {
    super(`${parts.title}: ${parts.detail}`);
    this.name = "Problem";
    this.slug = parts.slug;
    this.title = parts.title;
    this.status = parts.status;
    this.detail = parts.detail;
    this.remedies = parts.remedies ?? [];
    this.errors = parts.errors ?? [];
    this.extra = parts.extra ?? {};
  }

  get isSignedOut(): boolean {
    return this.status === 401;
  }

  get isUnreachable(): boolean {
    return this.status === 0;
  }

  /** The errors by the name that a form gives its fields: `/lines/0/quantity` is `lines.0.quantity`. */
  get fields(): Record<string, string> {
    return Object.fromEntries(this.errors.map(({ pointer, detail }) => [fieldName(pointer), detail]));
  }
}

/** The form's name of the field that a JSON pointer (RFC 6901) names; "" for the body as a whole. */
export function fieldName(pointer: string): string {
  return pointer
    .replace(/^#/, "")
    .split("/")
    .slice(1)
    .map((part) => part.replaceAll("~1", "/").replaceAll("~0", "~"))
    .join(".");
}

export function unreachable(): Problem {
  return new Problem({
    slug: "unreachable",
    title: "The shop's server did not answer",
    status: 0,
    detail: "Check the network, then try again. What you typed is still here, and nothing is posted twice.",
  });
}

function words(value: unknown, fallback: string): string {
  return typeof value === "string" && value !== "" ? value : fallback;
}

function listOf<T>(value: unknown, isOne: (item: unknown) => item is T): T[] {
  return Array.isArray(value) ? value.filter(isOne) : [];
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isRemedy(value: unknown): value is Remedy {
  return isRecord(value) && typeof value.kind === "string" && typeof value.text === "string";
}

function isFieldError(value: unknown): value is FieldError {
  return isRecord(value) && typeof value.pointer === "string" && typeof value.detail === "string";
}

/** A problem from an answer's status and body; a body that is no problem details still gives a readable one. */
export function problemFrom(status: number, body: unknown): Problem {
  const { type, title, status: _, detail, remedies, errors, ...extra } = isRecord(body) ? body : {};
  const slug = words(type, "").split("/").filter(Boolean).pop();
  return new Problem({
    slug: slug ?? (status >= 500 ? "server-fault" : "refused"),
    title: words(title, status >= 500 ? "Something broke on the server" : "The server refused this"),
    status,
    detail: words(
      detail,
      status >= 500
        ? "Nothing was written. Try again in a moment."
        : `The answer was ${status}, with no reason given.`,
    ),
    remedies: listOf(remedies, isRemedy),
    errors: listOf(errors, isFieldError),
    extra,
  });
}

/** Whatever was thrown, as a problem. */
export function asProblem(thrown: unknown): Problem {
  if (thrown instanceof Problem) return thrown;
  return new Problem({
    slug: "screen-fault",
    title: "This screen ran into a fault",
    status: -1,
    detail: thrown instanceof Error ? thrown.message : "No reason is known. Load the page again.",
  });
}
