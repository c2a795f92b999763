import { PasswordInput } from "@mantine/core";
import { BigButton, Sheet, useSheet } from "@/components/form";
import { type Person, useChangeOwnPassword, useResetPassword } from "./queries";

const SHORT = "Choose a password of at least 8 characters.";

interface NewPasswordProps {
  person: Person;
  onDone: () => void;
}

/** A new password for somebody who forgot theirs. */
export function NewPassword({ person, onDone }: NewPasswordProps) {
  const sheet = useSheet({
    act: useResetPassword(person.id, onDone),
    initial: { password: "" },
    toBody: (typed) => typed,
    check: ({ password }) => ({ ...(password.length < 8 && { password: SHORT }) }),
  });
  return (
    <Sheet
      title={`${person.name} forgot the password`}
      sheet={sheet}
      acts={
        <BigButton tone="plain" busy={sheet.isPending}>
          Set a new password
        </BigButton>
      }
    >
      <PasswordInput
        label="New password"
        autoComplete="new-password"
        {...sheet.form.getInputProps("password")}
      />
    </Sheet>
  );
}

/** Another password for oneself; other devices are signed out by it. */
export function OwnPassword({ onDone }: { onDone: () => void }) {
  const sheet = useSheet({
    act: useChangeOwnPassword(onDone),
    initial: { current: "", password: "" },
    toBody: (typed) => typed,
    check: ({ current, password }) => ({
      ...(current === "" && { current: "Type the password that you have now." }),
      ...(password.length < 8 && { password: SHORT }),
    }),
  });
  const { getInputProps } = sheet.form;
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Change my password</BigButton>}>
      <div className="cells one-wide">
        <PasswordInput label="Password now" autoComplete="current-password" {...getInputProps("current")} />
        <PasswordInput
          label="New password"
          description="At least 8 characters. Your other devices are signed out by it."
          autoComplete="new-password"
          {...getInputProps("password")}
        />
      </div>
    </Sheet>
  );
}
