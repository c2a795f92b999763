import { useState } from "react";
import { BigButton, Drawn } from "@/components/form";
import { StatusMark } from "@/components/notes/StatusMark";
import { Columns, Page, Part } from "@/components/page";
import { ROLES, roleLabel } from "./choices";
import { AddPerson, ChangePerson } from "./PersonForms";
import { type Person, usePeople } from "./queries";
import classes from "./shop.module.css";

/** Who may do what in this shop. */
export function PeoplePage() {
  const people = usePeople();
  const [chosen, setChosen] = useState<Person | "new" | null>(null);
  const close = () => setChosen(null);
  return (
    <Page
      title="People and roles"
      back={{ to: "/shop", label: "The shop" }}
      acts={
        <BigButton type="button" onClick={() => setChosen("new")}>
          Add somebody
        </BigButton>
      }
    >
      <Columns lead>
        <Part title="People" aside={<span className="soft">{people.length}</span>}>
          <ul className={classes.people}>
            {people.map((person) => (
              <li key={person.id}>
                <button type="button" onClick={() => setChosen(person)}>
                  <span>
                    <strong>{person.name}</strong> <span className="soft">{person.username}</span>
                  </span>
                  <span>{roleLabel(person.role)}</span>
                  {person.is_active ? (
                    <span className="soft">Change</span>
                  ) : (
                    <StatusMark mark="quiet">No access</StatusMark>
                  )}
                </button>
              </li>
            ))}
          </ul>
        </Part>
        <Part title="What each role may">
          <dl className={classes.roles}>
            {ROLES.map(({ value, label, says }) => (
              <div key={value}>
                <dt>{label}</dt>
                <dd>{says}</dd>
              </div>
            ))}
          </dl>
        </Part>
      </Columns>
      <Drawn
        title={chosen === "new" ? "Add somebody" : (chosen?.name ?? "")}
        isOpen={chosen !== null}
        onClose={close}
      >
        {chosen === "new" && <AddPerson onDone={close} />}
        {chosen && chosen !== "new" && <ChangePerson person={chosen} onDone={close} />}
      </Drawn>
    </Page>
  );
}
