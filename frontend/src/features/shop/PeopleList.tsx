import { StatusMark } from "@/components/notes/StatusMark";
import { roleLabel } from "./choices";
import type { Person } from "./queries";
import classes from "./shop.module.css";

interface PeopleListProps {
  people: readonly Person[];
  /** Left out for whoever may only read. */
  onChoose?: ((person: Person) => void) | undefined;
}

function PersonLine({ person, mayChange }: { person: Person; mayChange: boolean }) {
  return (
    <>
      <span>
        <strong>{person.name}</strong> <span className="soft">{person.username}</span>
      </span>
      <span>{roleLabel(person.role)}</span>
      {person.is_active ? (
        <span className="soft">{mayChange ? "Change" : ""}</span>
      ) : (
        <StatusMark mark="quiet">No access</StatusMark>
      )}
    </>
  );
}

export function PeopleList({ people, onChoose }: PeopleListProps) {
  return (
    <ul className={classes.people}>
      {people.map((person) => (
        <li key={person.id}>
          {onChoose ? (
            <button type="button" onClick={() => onChoose(person)}>
              <PersonLine person={person} mayChange />
            </button>
          ) : (
            <div>
              <PersonLine person={person} mayChange={false} />
            </div>
          )}
        </li>
      ))}
    </ul>
  );
}
