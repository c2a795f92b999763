import type { Customer, Job } from "./queries";
import { missingOf, NEW_TOP, newTopBody, type TopTyped } from "./top/topTyped";
import type { Purpose } from "./words";

/** A job as it is being typed. customer: the name, on record or new. */
export type JobTyped = {
  customer: string;
  phone: string;
  title: string;
  purpose: Purpose;
  site: string;
  due_on: string;
  note: string;
  pieces: TopTyped[];
};

export const NEW_JOB: JobTyped = {
  customer: "",
  phone: "",
  title: "",
  purpose: "customer",
  site: "",
  due_on: "",
  note: "",
  pieces: [NEW_TOP],
};

export function typedJob(job: Job): JobTyped {
  const { customer, title, purpose, site, note, due_on } = job;
  return { customer: customer.name, phone: "", title, purpose, site, note, due_on: due_on ?? "", pieces: [] };
}

/** Names to choose from: where two customers have the same one, their numbers tell them apart. */
export function customerNames(customers: readonly Customer[]): Map<string, number> {
  const often = new Map<string, number>();
  for (const { name } of customers) often.set(name, (often.get(name) ?? 0) + 1);
  return new Map(
    customers.map(({ id, name, number }) => [(often.get(name) ?? 0) > 1 ? `${name} (${number})` : name, id]),
  );
}

/** The customer on record whom a typed name means. */
export function onRecord(typed: string, names: ReadonlyMap<string, number>): number | undefined {
  const wanted = typed.trim().toLowerCase();
  return [...names].find(([name]) => name.toLowerCase() === wanted)?.[1];
}

/** The customer of the body: the one on record by the id, else a new one. */
export function customerBody({ customer, phone }: JobTyped, names: ReadonlyMap<string, number>) {
  return onRecord(customer, names) ?? { name: customer.trim(), ...(phone.trim() && { phone: phone.trim() }) };
}

/** The body without its tops. */
export function jobBody(typed: JobTyped, names: ReadonlyMap<string, number>) {
  const { title, purpose, site, note, due_on } = typed;
  return {
    customer: customerBody(typed, names),
    title: title.trim(),
    purpose,
    site: site.trim(),
    note: note.trim(),
    due_on: due_on === "" ? null : due_on,
  };
}

export function newJobBody(typed: JobTyped, names: ReadonlyMap<string, number>) {
  return { ...jobBody(typed, names), pieces: typed.pieces.map(newTopBody) };
}

/** What is missing before it can be sent, by field. */
export function missingOfJob(typed: JobTyped): Record<string, string> {
  const tops = typed.pieces.flatMap((top, i) =>
    Object.entries(missingOf(top)).map(([field, sentence]) => [`pieces.${i}.${field}`, sentence] as const),
  );
  return {
    ...(typed.customer.trim() === "" && { customer: "Say whom it is for." }),
    ...(typed.title.trim() === "" && { title: "Call the job something, such as Kitchen, bone vein." }),
    ...Object.fromEntries(tops),
  };
}
