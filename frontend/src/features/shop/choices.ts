import { currencySign } from "@/components/figures/Money";

interface Choice {
  value: string;
  label: string;
}

function once<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

/** Time zones by name, this device's own first. Listed once: there are hundreds. */
export const timeZones = once((): Choice[] => {
  const own = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const all = new Set([own, ...Intl.supportedValuesOf("timeZone"), "UTC"]);
  return [...all].map((value) => ({ value, label: value.replaceAll("_", " ") }));
});

/** Currencies by their code (ISO 4217), with name and sign. */
export const currencies = once((): Choice[] => {
  const names = new Intl.DisplayNames("en", { type: "currency" });
  return Intl.supportedValuesOf("currency").map((value) => {
    const sign = currencySign(value);
    const isPlain = sign !== value && /^[A-Za-z$€£¥.]+$/.test(sign);
    return { value, label: `${value} · ${names.of(value) ?? value}${isPlain ? ` (${sign})` : ""}` };
  });
});

/** The list with the chosen one on top, so that it is in sight when a long list opens. */
export function chosenFirst(choices: readonly Choice[], chosen: string): Choice[] {
  return [...choices].sort((a, b) => Number(b.value === chosen) - Number(a.value === chosen));
}

export const ROLES = [
  { value: "owner", label: "Owner", says: "Everything: prices, people and the shop's settings too." },
  { value: "crew", label: "Crew", says: "Receives, counts, plans and logs pours. Sees no money." },
  { value: "viewer", label: "Viewer", says: "Reads. Sees no money, changes nothing." },
] as const;

export type RoleName = (typeof ROLES)[number]["value"];

export function roleLabel(role: string): string {
  return ROLES.find(({ value }) => value === role)?.label ?? role;
}
