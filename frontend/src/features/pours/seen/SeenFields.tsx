import { TextInput } from "@mantine/core";
import { useWays } from "@/components/figures";
import { Part } from "@/components/page";
import type { Pour } from "../queries";
import { GroupCheck } from "./GroupCheck";
import { assumedOf, CONDITIONS, confirmed, MIXING, type Seen, TICKS, unitOf, unitSign } from "./seen";
import classes from "./seen.module.css";

interface SeenFieldsProps {
  seen: Seen;
  onChange: (seen: Seen) => void;
  /** The pour whose conditions are filled in as assumed. */
  last: Pour | undefined;
}

interface FigureProps {
  label: string;
  unit: string;
  said: string | undefined;
  assumed: string | undefined;
  from: number | undefined;
  onChange: (value: string) => void;
}

/** One measured thing. What the last pour had is shown as assumed, and saved only once it is touched. */
function FigureField({ label, unit, said, assumed, from, onChange }: FigureProps) {
  const isAssumed = said === undefined && assumed !== undefined;
  return (
    <div className={classes.figure} data-assumed={isAssumed || undefined}>
      <TextInput
        label={label}
        inputMode="decimal"
        autoComplete="off"
        value={said ?? assumed ?? ""}
        description={isAssumed ? `As at pour ${from}` : undefined}
        rightSection={unit}
        rightSectionWidth={44}
        onFocus={(event) => event.currentTarget.select()}
        onChange={(event) => onChange(event.currentTarget.value)}
      />
    </div>
  );
}

/** The room and the work: figures and ticks, those of the last pour filled in as assumed until somebody says so. */
export function SeenFields({ seen, onChange, last }: SeenFieldsProps) {
  const { units } = useWays();
  const assumed = assumedOf(last, seen);
  const isAnyAssumed = Object.keys(assumed.conditions).length + Object.keys(assumed.ticks).length > 0;
  const hasAny = last && Object.keys(last.conditions).length + Object.keys(last.ticks).length > 0;
  const tick = (name: string, value: boolean | string) =>
    onChange({ ...seen, ticks: { ...seen.ticks, [name]: value } });
  const mixing = seen.ticks[MIXING];
  const lastMixing = assumed.ticks[MIXING];
  return (
    <Part
      title="Room and work"
      aside={
        hasAny && (
          <GroupCheck isDone={!isAnyAssumed} onCheck={() => onChange(confirmed(seen, assumed))}>
            {`As at pour ${last.number}`}
          </GroupCheck>
        )
      }
    >
      <div className={classes.both}>
        <div className={classes.figures}>
          {CONDITIONS.map(([name, label]) => (
            <FigureField
              key={name}
              label={label}
              unit={unitSign(unitOf(name, units.temperature, last?.conditions))}
              said={seen.conditions[name]}
              assumed={assumed.conditions[name]}
              from={last?.number}
              onChange={(value) => onChange({ ...seen, conditions: { ...seen.conditions, [name]: value } })}
            />
          ))}
          <FigureField
            label="Mixed for"
            unit="min"
            said={typeof mixing === "string" ? mixing : undefined}
            assumed={typeof lastMixing === "string" ? lastMixing : undefined}
            from={last?.number}
            onChange={(value) => tick(MIXING, value)}
          />
        </div>
        <fieldset className={classes.ticks}>
          <legend className="only-read-aloud">What was done</legend>
          {TICKS.map(([name, label]) => (
            <label
              key={name}
              data-assumed={(!(name in seen.ticks) && assumed.ticks[name] === true) || undefined}
            >
              <input
                type="checkbox"
                checked={seen.ticks[name] === true}
                onChange={(event) => tick(name, event.currentTarget.checked)}
              />
              <span>
                {label}
                {!(name in seen.ticks) && assumed.ticks[name] === true && (
                  <small>
                    last time<span className="only-read-aloud">, not confirmed</span>
                  </small>
                )}
              </span>
            </label>
          ))}
        </fieldset>
      </div>
    </Part>
  );
}
