import { type UseFormReturnType, useForm } from "@mantine/form";
import { type SubmitEvent, useEffect, useState } from "react";
import type { Act } from "@/api/act";
import type { FieldError, Problem } from "@/api/problem";
import { fieldName } from "@/api/problem";
import { draftOf, dropDraft, keepDraft } from "./draft";

type Values = Record<string, unknown>;

interface SheetOptions<V extends Values, Body, Answer> {
  act: Act<Body, Answer>;
  /** What is known already. */
  initial: V;
  /** The body to send; its field names should be the form's, so that errors find their fields. */
  toBody: (values: V) => Body;
  /** Keeps what was typed under this name until it is sent, through a reload or a new sign-in. */
  draft?: string;
  /** The form's field for a field of the body, where the names differ. */
  fieldFor?: (bodyField: string) => string;
  /** Checks before sending: a sentence for each field to mend. */
  check?: (values: V) => Partial<Record<string, string>>;
}

/** What a form on the page needs, whatever its fields. */
export interface SheetPart {
  onSubmit: (event: SubmitEvent<HTMLFormElement>) => void;
  isPending: boolean;
  problem: Problem | null;
  /** Counts the tries that left fields to mend: the first of them is then brought into view. */
  refusals: number;
  /** Errors whose field is not on this form: shown above it. */
  strayErrors: FieldError[];
  /** Send it again as it stands, over what somebody else changed. */
  sendAnyway: () => void;
  /** Put what the server has now in place of what was typed. */
  takeTheirs: () => void;
}

export interface SheetState<V extends Values> extends SheetPart {
  form: UseFormReturnType<V>;
}

function hasField(values: unknown, name: string): boolean {
  let at: unknown = values;
  for (const part of name.split(".")) {
    if (typeof at !== "object" || at === null || !(part in at)) return false;
    at = (at as Values)[part];
  }
  return name !== "";
}

/** A form's own state, joined to the act that it carries out: refused fields are marked, what was typed stays. */
export function useSheet<V extends Values, Body, Answer>(
  options: SheetOptions<V, Body, Answer>,
): SheetState<V> {
  const { act, initial, toBody, draft, fieldFor = (name) => name, check } = options;
  const [start] = useState<V>(() => ({ ...initial, ...(draft ? draftOf<V>(draft) : {}) }));
  const form = useForm<V>({
    initialValues: start,
    ...(check ? { validate: (values) => check(values) as never } : {}),
  });
  const [refusals, setRefusals] = useState(0);
  const { values } = form;
  const problem = act.problem;

  useEffect(() => {
    if (draft && form.isDirty()) keepDraft(draft, values);
  }, [draft, values, form]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the errors belong to the answer, not to each keystroke
  useEffect(() => {
    if (!problem) return;
    const named = Object.entries(problem.fields).map(([name, detail]) => [fieldFor(name), detail] as const);
    form.setErrors(Object.fromEntries(named.filter(([name]) => hasField(values, name))) as never);
    setRefusals((count) => count + 1);
  }, [problem]);

  function send(typed: V) {
    act.send(toBody(typed)).then(
      () => {
        if (draft) dropDraft(draft);
        form.resetDirty(typed);
      },
      () => undefined,
    );
  }

  return {
    form,
    onSubmit: form.onSubmit(send, () => setRefusals((count) => count + 1)),
    isPending: act.isPending,
    problem,
    refusals,
    strayErrors: (problem?.errors ?? []).filter(
      ({ pointer }) => !hasField(values, fieldFor(fieldName(pointer))),
    ),
    sendAnyway() {
      act.reset();
      send(form.getValues());
    },
    takeTheirs() {
      act.reset();
      if (draft) dropDraft(draft);
      form.setValues(initial);
    },
  };
}
