import type { Remark } from "../queries";

/** What a person said of the room and of the work; what nobody touched is not in here. */
export type Seen = {
  conditions: Record<string, string>;
  ticks: Record<string, boolean | string>;
};

export const CONDITIONS = [
  ["air_temperature", "Air", "temperature"],
  ["surface_temperature", "Surface of the top", "temperature"],
  ["humidity", "Humidity", "percent"],
] as const;

export const TICKS = [
  ["sanded", "Sanded"],
  ["wiped", "Wiped"],
  ["sealed", "Sealed"],
  ["gloves", "Gloves on"],
  ["second_bucket", "Second bucket"],
  ["torch", "Torch"],
  ["heat_gun", "Heat gun"],
  ["cover", "Covered after"],
] as const;

/** Minutes of mixing stand among the ticks. */
export const MIXING = "mixing_minutes";

type Remarks = Record<string, Remark>;

function text(value: unknown): string {
  return typeof value === "string" || typeof value === "number" ? String(value) : "";
}

/** What a pour has already, as touched. */
export function seenOn(pour: { conditions: Remarks; ticks: Remarks }): Seen {
  const conditions = Object.entries(pour.conditions).map(([name, { value }]) => [name, text(value)]);
  const ticks = Object.entries(pour.ticks).map(([name, { value }]) => [
    name,
    name === MIXING ? text(value) : value === true,
  ]);
  return { conditions: Object.fromEntries(conditions), ticks: Object.fromEntries(ticks) };
}

/** The unit of a condition: as it was said before, else the shop's. */
export function unitOf(name: string, temperature: string, before: Remarks = {}): string {
  const kind = CONDITIONS.find(([each]) => each === name)?.[2];
  return before[name]?.unit ?? (kind === "percent" ? "percent" : temperature);
}

/** How the unit is written beside the figure. */
export function unitSign(unit: string): string {
  return unit === "percent" ? "%" : unit === "min" ? "min" : `°${unit}`;
}

/** What was filled in from another pour, and nobody has touched yet. */
export function assumedOf(last: { conditions: Remarks; ticks: Remarks } | undefined, seen: Seen): Seen {
  if (!last) return { conditions: {}, ticks: {} };
  const before = seenOn(last);
  const rest = <T>(all: Record<string, T>, touched: Record<string, unknown>) =>
    Object.fromEntries(Object.entries(all).filter(([name, value]) => !(name in touched) && value !== false));
  return { conditions: rest(before.conditions, seen.conditions), ticks: rest(before.ticks, seen.ticks) };
}

/** Everything that was assumed, confirmed in one go. */
export function confirmed(seen: Seen, assumed: Seen): Seen {
  return {
    conditions: { ...assumed.conditions, ...seen.conditions },
    ticks: { ...assumed.ticks, ...seen.ticks },
  };
}

/** The bodies of conditions and ticks: only what somebody said. */
export function seenBody(seen: Seen, temperature: string, before: Remarks = {}) {
  const said = Object.entries(seen.conditions).filter(([, value]) => value.trim() !== "");
  const conditions = said.map(([name, value]) => [
    name,
    { value: value.trim(), unit: unitOf(name, temperature, before), provenance: "typed" as const },
  ]);
  const done = Object.entries(seen.ticks).filter(
    ([, value]) => value === true || (value !== false && value !== ""),
  );
  const ticks = done.map(([name, value]) => [
    name,
    { value, ...(name === MIXING && { unit: "min" }), provenance: "typed" as const },
  ]);
  return { conditions: Object.fromEntries(conditions), ticks: Object.fromEntries(ticks) };
}
