/**
 * The fills of a drawing: one colour, told apart by how they are hatched, as a section through a wall is. They print, and
 * read without seeing colour.
 */
export type Hatch = "solid" | "slanted" | "dotted" | "crossed" | "grey" | "empty";

export const HATCHES: readonly Hatch[] = ["solid", "slanted", "dotted", "crossed", "grey", "empty"];

const LINES: Partial<Record<Hatch, string>> = {
  slanted: "M-1 1l2-2M0 6l6-6M5 7l2-2",
  crossed: "M0 3h6M3 0v6",
};

function Pattern({ id, hatch }: { id: string; hatch: Hatch }) {
  return (
    <pattern id={id} width="6" height="6" patternUnits="userSpaceOnUse">
      <rect width="6" height="6" fill={hatch === "grey" ? "var(--face-deep)" : "var(--sheet)"} />
      {LINES[hatch] && <path d={LINES[hatch]} stroke="var(--kelp)" strokeWidth="1.4" />}
      {hatch === "dotted" && <circle cx="3" cy="3" r="1.3" fill="var(--kelp)" />}
    </pattern>
  );
}

/** Defines the hatches of one drawing, under names that begin with `name`. */
export function Hatches({ name }: { name: string }) {
  return (
    <defs>
      {HATCHES.map((hatch) => (
        <Pattern key={hatch} id={`${name}-${hatch}`} hatch={hatch} />
      ))}
    </defs>
  );
}

/** What to fill with, in a drawing that has its hatches defined under this name. */
export function fillOf(name: string, hatch: Hatch): string {
  return hatch === "solid" ? "var(--kelp-fill)" : `url(#${name}-${hatch})`;
}

/** The sign of a hatch beside its word. */
export function HatchSign({ hatch, name }: { hatch: Hatch | "line"; name: string }) {
  return (
    <svg viewBox="0 0 22 14" width="22" height="14" aria-hidden="true">
      {hatch === "line" ? (
        <path d="M1 7h20" stroke="var(--ink)" strokeWidth="2.5" />
      ) : (
        <>
          <Hatches name={name} />
          <rect x="0.5" y="0.5" width="21" height="13" fill={fillOf(name, hatch)} stroke="var(--ink)" />
        </>
      )}
    </svg>
  );
}
