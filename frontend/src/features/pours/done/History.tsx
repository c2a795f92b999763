import { Moment } from "@/components/figures";
import { Part } from "@/components/page";
import type { Pour } from "../queries";
import { CONDITIONS, MIXING, TICKS, unitSign } from "../seen/seen";
import classes from "./done.module.css";

const ACTS: Record<Pour["acts"][number]["what"], string> = {
  completed: "Completed",
  added: "More went in",
  corrected: "Corrected",
  undone: "Undone, entry mistake",
  cost_changed: "Its cost changed",
};

/** What was booked for the pour, by whom and why. */
export function History({ pour }: { pour: Pour }) {
  if (pour.acts.length === 0) return null;
  return (
    <Part title="Booked">
      <ol className={classes.acts}>
        {pour.acts.map(({ posting, what, by, recorded_at, reason }) => (
          <li key={posting}>
            <strong>{ACTS[what]}</strong> by {by.name}
            <small>
              <Moment value={recorded_at} />
              {reason && <>: {reason}</>}
            </small>
          </li>
        ))}
      </ol>
    </Part>
  );
}

/** The room and the work as they were recorded. What nobody recorded is said to be so. */
export function Recorded({ pour }: { pour: Pour }) {
  const said = Object.entries(pour.conditions).map(([name, { value, unit }]) => ({
    name,
    label: CONDITIONS.find(([each]) => each === name)?.[1] ?? name.replaceAll("_", " "),
    value: `${value} ${unit ? unitSign(unit) : ""}`,
  }));
  const done = Object.entries(pour.ticks).flatMap(([name, { value }]) => {
    if (name === MIXING) return [`Mixed for ${value} min`];
    return value === true ? [TICKS.find(([each]) => each === name)?.[1] ?? name.replaceAll("_", " ")] : [];
  });
  return (
    <Part title="Room and work">
      {said.length + done.length === 0 && <p className="soft">Not recorded.</p>}
      {said.length > 0 && (
        <dl className={classes.said}>
          {said.map(({ name, label, value }) => (
            <div key={name}>
              <dt>{label}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      )}
      {done.length > 0 && (
        <ul className={classes.ticked} aria-label="What was done">
          {done.map((each) => (
            <li key={each}>{each}</li>
          ))}
        </ul>
      )}
      {pour.note && <p className={classes.note}>{pour.note}</p>}
    </Part>
  );
}
