import { PasswordInput, TextInput } from "@mantine/core";
import { BigButton, Sheet, useSheet } from "@/components/form";
import { Door } from "./Door";
import { useSignIn } from "./queries";

/** Asks who it is; the doorstep then lets them in to the page they wanted. */
export function SignIn() {
  const sheet = useSheet({
    act: useSignIn(),
    initial: { username: "", password: "" },
    toBody: (typed) => typed,
    check: ({ username, password }) => ({
      ...(username.trim() === "" && { username: "Type the name that you sign in with." }),
      ...(password === "" && { password: "Type your password." }),
    }),
  });
  return (
    <Door title="Sign in" lead="Stock, pours and what each top is made of.">
      <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Sign in</BigButton>}>
        <div className="cells one-wide">
          <TextInput
            label="Sign-in name"
            autoComplete="username"
            autoCapitalize="none"
            autoCorrect="off"
            spellCheck={false}
            {...sheet.form.getInputProps("username")}
          />
          <PasswordInput
            label="Password"
            autoComplete="current-password"
            {...sheet.form.getInputProps("password")}
          />
        </div>
      </Sheet>
    </Door>
  );
}
