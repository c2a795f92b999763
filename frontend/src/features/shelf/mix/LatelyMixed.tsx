import { Link } from "react-router";
import { api } from "@/api/query";
import { Day, dayOf, useWays } from "@/components/figures";
import { StatusMark } from "@/components/notes/StatusMark";
import { Swatch } from "@/components/notes/Swatch";
import classes from "./mix.module.css";

/** The house mixes of late; each is undone on the page of its lot, under in and out. */
export function LatelyMixed() {
  const { timeZone } = useWays();
  const { results } = api.useSuspenseQuery("get", "/api/blends/", {
    params: { query: { page_size: 8 } },
  }).data;
  if (results.length === 0) return <p className="soft">Nothing was mixed yet.</p>;
  return (
    <ul className={classes.lately}>
      {results.map(({ id, lot, made_at, inputs, is_undone }) => (
        <li key={id}>
          <Swatch colour={lot.material.swatch} />
          <span>
            <Link to={`/shelf/lots/${lot.id}`}>Lot {lot.number}</Link> {lot.material.name}
            <small>
              <Day value={dayOf(new Date(made_at), timeZone)} /> · of{" "}
              {inputs.map((input) => `lot ${input.lot.number}`).join(", ")}
            </small>
            {is_undone && <StatusMark mark="quiet">Undone</StatusMark>}
          </span>
        </li>
      ))}
    </ul>
  );
}
