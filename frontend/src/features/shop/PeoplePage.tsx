import { useState } from "react";
import { useIsOwner, useSession } from "@/api/session";
import { BigButton, Drawn } from "@/components/form";
import { Columns, Page, Part } from "@/components/page";
import { ROLES } from "./choices";
import { NewPassword, OwnPassword } from "./PasswordForms";
import { PeopleList } from "./PeopleList";
import { AddPerson, ChangePerson } from "./PersonForms";
import { type Person, usePeople } from "./queries";
import classes from "./shop.module.css";

type Opened = { form: "add" } | { form: "own password" } | { form: "change"; person: Person };

function titleOf(opened: Opened | null): string {
  if (opened?.form === "change") return opened.person.name;
  return opened?.form === "add" ? "Add somebody" : "My password";
}

/** Who may do what in this shop. */
export function PeoplePage() {
  const people = usePeople();
  const isOwner = useIsOwner();
  const me = useSession().person?.id;
  const [opened, setOpened] = useState<Opened | null>(null);
  const close = () => setOpened(null);
  return (
    <Page
      title="People and roles"
      back={{ to: "/shop", label: "The shop" }}
      acts={
        <>
          {isOwner && (
            <BigButton type="button" onClick={() => setOpened({ form: "add" })}>
              Add somebody
            </BigButton>
          )}
          <BigButton type="button" tone="plain" onClick={() => setOpened({ form: "own password" })}>
            My password
          </BigButton>
        </>
      }
    >
      <Columns lead>
        <Part title="People" aside={<span className="soft">{people.length}</span>}>
          <PeopleList
            people={people}
            onChoose={isOwner ? (person) => setOpened({ form: "change", person }) : undefined}
          />
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
      <Drawn title={titleOf(opened)} isOpen={opened !== null} onClose={close}>
        {opened?.form === "add" && <AddPerson onDone={close} />}
        {opened?.form === "own password" && <OwnPassword onDone={close} />}
        {opened?.form === "change" && (
          <div className={classes.forms}>
            <ChangePerson person={opened.person} onDone={close} />
            {opened.person.id !== me && <NewPassword person={opened.person} onDone={close} />}
          </div>
        )}
      </Drawn>
    </Page>
  );
}
