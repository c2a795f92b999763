interface Erring {
  errors: Record<string, unknown>;
  clearFieldError: (path: string) => void;
}

/** Takes away the errors of a part of a form that has just been typed over: "usages" and all that lies in it. */
export function clearUnder(form: Erring, part: string): void {
  for (const field of Object.keys(form.errors)) {
    if (field === part || field.startsWith(`${part}.`)) form.clearFieldError(field);
  }
}
