import { Problem } from "@/api/problem";
import type { Amount } from "@/components/figures";
import { lotIn, type Shortage, shortagesOf } from "../lines/short";

function sentenceOf({ name, wanted, there, missing }: Shortage, inWords: (amount: Amount) => string): string {
  const rest = Number(there.amount) === 0 ? "none there" : `${inWords(there)} there`;
  return `${name}: ${inWords(missing)} short. ${inWords(wanted)} wanted, ${rest}.`;
}

/** The refusal with its amounts as this shop reads them, and beside each lot what is left of it. */
export function reworded(problem: Problem | null, inWords: (amount: Amount) => string): Problem | null {
  const shortages = shortagesOf(problem);
  if (!problem || shortages.length === 0) return problem;
  const sentences = shortages.map((shortage) => sentenceOf(shortage, inWords));
  return new Problem({
    slug: problem.slug,
    title: problem.title,
    status: problem.status,
    detail: sentences.join(" "),
    errors: problem.errors.map((error, i) => ({ ...error, detail: sentences[i] ?? error.detail })),
    remedies: problem.remedies.map((remedy) => {
      const lot = lotIn(remedy);
      return lot ? { ...remedy, text: `${remedy.text} ${inWords(lot.quantity)} left.` } : remedy;
    }),
    extra: problem.extra,
  });
}
