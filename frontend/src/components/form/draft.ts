const key = (name: string) => `typed-${name}`;

/** What was typed into a form and not sent yet, kept for as long as the tab lives. Passwords are never kept. */
export function keepDraft(name: string, values: Record<string, unknown>): void {
  const kept = Object.fromEntries(Object.entries(values).filter(([field]) => !field.includes("password")));
  try {
    sessionStorage.setItem(key(name), JSON.stringify(kept));
  } catch {
    // A browser that keeps nothing still has the form itself.
  }
}

export function draftOf<V extends Record<string, unknown>>(name: string): Partial<V> {
  try {
    return JSON.parse(sessionStorage.getItem(key(name)) ?? "{}") as Partial<V>;
  } catch {
    return {};
  }
}

export function dropDraft(name: string): void {
  try {
    sessionStorage.removeItem(key(name));
  } catch {
    // Nothing was kept.
  }
}
