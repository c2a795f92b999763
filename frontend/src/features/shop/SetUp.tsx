import { PasswordInput, Select, TextInput } from "@mantine/core";
import { BigButton, Sheet, useSheet } from "@/components/form";
import { chosenFirst, currencies, timeZones } from "./choices";
import { Door } from "./Door";
import { useSetUp } from "./queries";

const START = {
  name: "",
  town: "",
  time_zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
  currency: "USD",
  owner_name: "",
  username: "",
  password: "",
};

function check(typed: typeof START) {
  return {
    ...(typed.name.trim() === "" && { name: "Give the shop a name." }),
    ...(typed.owner_name.trim() === "" && { owner_name: "Say what people call you." }),
    ...(typed.username.trim() === "" && { username: "Choose a name to sign in with." }),
    ...(typed.password.length < 8 && { password: "Choose a password of at least 8 characters." }),
  };
}

/** The first start: names the shop and makes its first owner. */
export function SetUp() {
  const sheet = useSheet({
    act: useSetUp(),
    initial: START,
    toBody: (typed) => typed,
    draft: "set-up",
    check,
  });
  const { getInputProps } = sheet.form;
  return (
    <Door
      title="Set up the shop"
      lead="Once, before the first delivery. Everything here can be changed later."
    >
      <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Open the shop</BigButton>}>
        <fieldset className="cells">
          <legend>The shop</legend>
          <TextInput label="Name" autoComplete="organization" {...getInputProps("name")} />
          <TextInput label="Town" autoComplete="address-level2" {...getInputProps("town")} />
          <Select
            label="Time zone"
            data={chosenFirst(timeZones(), sheet.form.values.time_zone)}
            limit={60}
            searchable
            {...getInputProps("time_zone")}
          />
          <Select
            label="Currency"
            data={chosenFirst(currencies(), sheet.form.values.currency)}
            limit={60}
            searchable
            {...getInputProps("currency")}
          />
        </fieldset>
        <fieldset className="cells">
          <legend>You, its first owner</legend>
          <TextInput label="Your name" autoComplete="name" {...getInputProps("owner_name")} />
          <TextInput
            label="Sign-in name"
            autoComplete="username"
            autoCapitalize="none"
            spellCheck={false}
            {...getInputProps("username")}
          />
          <PasswordInput
            label="Password"
            autoComplete="new-password"
            description="At least 8 characters, and none that everybody uses."
            {...getInputProps("password")}
          />
        </fieldset>
      </Sheet>
    </Door>
  );
}
