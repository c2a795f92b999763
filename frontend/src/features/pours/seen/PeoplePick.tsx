import { usePeople } from "../queries";
import classes from "./seen.module.css";

interface PeoplePickProps {
  chosen: readonly number[];
  onChange: (people: number[]) => void;
  legend?: string;
}

/** Who poured: everybody with a sign-in, one tap each. */
export function PeoplePick({ chosen, onChange, legend = "Who" }: PeoplePickProps) {
  const people = usePeople().filter(({ id, role }) => role !== "viewer" || chosen.includes(id));
  return (
    <fieldset className={classes.ticks}>
      <legend>{legend}</legend>
      {people.map(({ id, name }) => (
        <label key={id}>
          <input
            type="checkbox"
            checked={chosen.includes(id)}
            onChange={(event) =>
              onChange(event.currentTarget.checked ? [...chosen, id] : chosen.filter((each) => each !== id))
            }
          />
          <span>{name}</span>
        </label>
      ))}
    </fieldset>
  );
}
