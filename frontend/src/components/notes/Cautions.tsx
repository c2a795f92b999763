import { useWays } from "../figures";
import { ACT_CAUTIONS, type HandlingAct, hazardInWords } from "./hazards";
import classes from "./notes.module.css";

export interface CautionedMaterial {
  name: string;
  cautions?: string | null;
  hazard_codes?: readonly string[] | null;
}

interface CautionsProps {
  /** What the person is about to do. */
  acts: readonly HandlingAct[];
  materials: readonly CautionedMaterial[];
}

/** Stands wherever somebody is told to mix, spray, sand or heat: the materials' own cautions, after the general ones. */
export function Cautions({ acts, materials }: CautionsProps) {
  const { poisonHelp } = useWays();
  const own = materials.filter(({ cautions, hazard_codes }) => cautions || hazard_codes?.length);
  return (
    <aside className={classes.cautions} aria-label="Cautions">
      <p>
        The safety data sheets and data sheets of these very lots come first, then local codes and licensed
        practice.
        {poisonHelp && ` Poison help: ${poisonHelp}.`}
      </p>
      <ul>
        {acts.map((act) => (
          <li key={act}>{ACT_CAUTIONS[act]}</li>
        ))}
        {own.map(({ name, cautions, hazard_codes }) => (
          <li key={name}>
            <strong>{name}.</strong> {cautions}
            {hazard_codes?.length ? (
              <span className="soft"> {hazard_codes.map(hazardInWords).join("; ")}.</span>
            ) : null}
          </li>
        ))}
      </ul>
    </aside>
  );
}
