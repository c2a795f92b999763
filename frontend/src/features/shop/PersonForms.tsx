import { PasswordInput, Select, Switch, TextInput } from "@mantine/core";
import { useSession } from "@/api/session";
import { BigButton, Sheet, useSheet } from "@/components/form";
import { ROLES, type RoleName } from "./choices";
import { type Person, useAddPerson, useChangePerson } from "./queries";

const NEW = { name: "", username: "", role: "crew" as RoleName, password: "" };

/** A new sign-in. */
export function AddPerson({ onDone }: { onDone: () => void }) {
  const sheet = useSheet({
    act: useAddPerson(onDone),
    initial: NEW,
    toBody: (typed) => typed,
    draft: "person-new",
    check: ({ name, username, password }) => ({
      ...(name.trim() === "" && { name: "Say what people call them." }),
      ...(username.trim() === "" && { username: "Choose a name to sign in with." }),
      ...(password.length < 8 && { password: "Choose a first password of at least 8 characters." }),
    }),
  });
  const { getInputProps } = sheet.form;
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Add them</BigButton>}>
      <div className="cells one-wide">
        <TextInput label="Name" autoComplete="off" data-autofocus {...getInputProps("name")} />
        <TextInput
          label="Sign-in name"
          autoComplete="off"
          autoCapitalize="none"
          spellCheck={false}
          {...getInputProps("username")}
        />
        <Select label="Role" data={ROLES} {...getInputProps("role")} />
        <PasswordInput label="First password" autoComplete="new-password" {...getInputProps("password")} />
      </div>
    </Sheet>
  );
}

/** Another role, or no access any more. What they recorded keeps their name. */
export function ChangePerson({ person, onDone }: { person: Person; onDone: () => void }) {
  const isSelf = useSession().person?.id === person.id;
  const sheet = useSheet({
    act: useChangePerson(person.id, onDone),
    initial: { name: person.name, role: person.role, is_active: person.is_active },
    toBody: (typed) => typed,
    check: ({ name }) => ({ ...(name.trim() === "" && { name: "Say what people call them." }) }),
  });
  const { getInputProps } = sheet.form;
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Save</BigButton>}>
      <div className="cells one-wide">
        <TextInput label="Name" autoComplete="off" {...getInputProps("name")} />
        <Select
          label="Role"
          data={ROLES}
          disabled={isSelf}
          description={isSelf ? "Another owner can change your role." : undefined}
          {...getInputProps("role")}
        />
      </div>
      <Switch
        label="May sign in"
        description={
          isSelf ? "Another owner can end your access." : "Off: what they recorded keeps their name."
        }
        disabled={isSelf}
        {...getInputProps("is_active", { type: "checkbox" })}
      />
    </Sheet>
  );
}
