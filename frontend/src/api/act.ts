import { useMutation, useQueryClient } from "@tanstack/react-query";
import { useRef, useState } from "react";
import { addressOf, client, versionOf } from "./client";
import { createKeyring } from "./keyring";
import type { Problem } from "./problem";
import { signOutOn } from "./query";
import type { paths } from "./schema.gen";

export type WriteMethod = "post" | "put" | "patch" | "delete";

type JsonIn<T> = T extends { content: infer C }
  ? "application/json" extends keyof C
    ? C["application/json"]
    : undefined
  : undefined;
type Operation<M extends WriteMethod, P extends keyof paths> = M extends keyof paths[P]
  ? NonNullable<paths[P][M]>
  : never;

/** The addresses that can be written to with this method. */
export type WritablePath<M extends WriteMethod> = {
  [P in keyof paths]: M extends keyof paths[P] ? (paths[P][M] extends object ? P : never) : never;
}[keyof paths];

/** What the body of this call looks like, by the schema. */
export type BodyOf<M extends WriteMethod, P extends keyof paths> =
  Operation<M, P> extends { requestBody?: infer B }
    ? [NonNullable<B>] extends [never]
      ? undefined
      : JsonIn<NonNullable<B>>
    : undefined;

type AnswersOf<Op> = Op extends { responses: infer R } ? R[Extract<keyof R, 200 | 201 | 202>] : undefined;

/** What this call answers when it goes well. */
export type AnswerOf<M extends WriteMethod, P extends keyof paths> = JsonIn<AnswersOf<Operation<M, P>>>;

interface ActOptions<Answer> {
  /** The path's parameters. */
  params?: Record<string, string | number>;
  /** Send the version that was current when the form opened, so that nobody's change is overwritten unseen. */
  keepsVersion?: boolean;
  /** After the work is done; the cache is already marked stale. */
  onDone?: (answer: Answer) => void;
}

/** One act of a person: what a form or a button needs to carry it out, and how it went. */
export interface Act<Body, Answer> {
  submit: (body: Body) => void;
  send: (body: Body) => Promise<Answer>;
  isPending: boolean;
  problem: Problem | null;
  answer: Answer | undefined;
  reset: () => void;
}

/**
 * An act on the server. It carries an Idempotency-Key that stays the same while the body does, so that trying again after
 * a lost answer posts once. When it is done every read is refreshed: an act in this trade moves figures all over.
 */
export function useAct<M extends WriteMethod, P extends WritablePath<M>>(
  method: M,
  path: P,
  options: ActOptions<AnswerOf<M, P>> = {},
): Act<BodyOf<M, P>, AnswerOf<M, P>> {
  const cache = useQueryClient();
  const [keyring] = useState(createKeyring);
  const address = addressOf(path as string, options.params);
  const version = useRef(versionOf(address));

  const mutation = useMutation<AnswerOf<M, P>, Problem, BodyOf<M, P>>({
    mutationFn: async (body) => {
      const headers: Record<string, string> = {};
      if (method === "post") headers["Idempotency-Key"] = keyring.keyFor([address, body]);
      if (options.keepsVersion && version.current) headers["If-Match"] = version.current;
      const init = { params: { path: options.params ?? {} }, body, headers };
      const { data } = await client.request(method, path as never, init as never);
      return data as AnswerOf<M, P>;
    },
    onSuccess: (answer) => {
      keyring.done();
      version.current = versionOf(address);
      cache.removeQueries({ type: "inactive" });
      void cache.invalidateQueries();
      options.onDone?.(answer);
    },
    onError: (problem) => {
      if (problem.status === 412) void cache.invalidateQueries();
      signOutOn(cache, problem);
    },
  });

  return {
    submit: mutation.mutate,
    send: mutation.mutateAsync,
    isPending: mutation.isPending,
    problem: mutation.error,
    answer: mutation.data,
    reset: () => {
      version.current = versionOf(address);
      mutation.reset();
    },
  };
}
