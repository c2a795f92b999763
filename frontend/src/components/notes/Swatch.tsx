import classes from "./notes.module.css";

interface SwatchProps {
  /** #rrggbb, or nothing where the material has no colour of its own. */
  colour: string | null | undefined;
  /** Said where the swatch stands alone; left out beside the material's name. */
  name?: string;
  size?: "small" | "large";
}

/** A colour written #rrggbb; undefined for anything else. */
export function colourOf(text: string | null | undefined): string | undefined {
  return text && /^#[0-9a-f]{6}$/i.test(text) ? text : undefined;
}

/** A dab of the material's own colour, the only colour on the page besides the signs. */
export function Swatch({ colour, name, size = "small" }: SwatchProps) {
  const fill = colourOf(colour);
  return (
    <span className={classes.swatch} data-size={size}>
      <svg viewBox="0 0 24 24" aria-hidden="true">
        <path d="M2.5 2.5h19v19h-19z" fill={fill ?? "none"} />
        {!fill && <path d="M2.5 21.5l19-19" />}
      </svg>
      {name && <span className="only-read-aloud">{name}</span>}
    </span>
  );
}
