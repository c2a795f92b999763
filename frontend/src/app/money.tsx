import { PasswordInput } from "@mantine/core";
import { createContext, type ReactNode, useContext, useState } from "react";
import { useAct } from "@/api/act";
import { useSession } from "@/api/session";
import { BigButton, Drawn, Sheet, useSheet } from "@/components/form";

interface MoneySwitch {
  isHidden: boolean;
  hide: () => void;
  /** Asks for the password before money is shown again. */
  askToShow: () => void;
}

const KEY = "money-is-hidden";
const MoneyContext = createContext<MoneySwitch>({
  isHidden: false,
  hide: () => undefined,
  askToShow: () => undefined,
});

export function useMoneySwitch(): MoneySwitch {
  return useContext(MoneyContext);
}

function remember(isHidden: boolean) {
  try {
    if (isHidden) localStorage.setItem(KEY, "yes");
    else localStorage.removeItem(KEY);
  } catch {
    // Then it holds until the page is loaded again.
  }
}

function recall(): boolean {
  try {
    return localStorage.getItem(KEY) === "yes";
  } catch {
    return false;
  }
}

function AskPassword({ onShown }: { onShown: () => void }) {
  const username = useSession().person?.username ?? "";
  const act = useAct("post", "/api/session/", { onDone: onShown });
  const sheet = useSheet({
    act,
    initial: { password: "" },
    toBody: ({ password }) => ({ username, password }),
  });
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Show money</BigButton>}>
      <PasswordInput
        label="Your password"
        autoComplete="current-password"
        data-autofocus
        {...sheet.form.getInputProps("password")}
      />
    </Sheet>
  );
}

/** One switch that keeps all money off this device until the password is given, also after a reload. */
export function MoneyProvider({ children }: { children: (showsMoney: boolean) => ReactNode }) {
  const [isHidden, setHidden] = useState(recall);
  const [isAsking, setAsking] = useState(false);
  function set(next: boolean) {
    remember(next);
    setHidden(next);
    setAsking(false);
  }
  return (
    <MoneyContext value={{ isHidden, hide: () => set(true), askToShow: () => setAsking(true) }}>
      {children(!isHidden)}
      <Drawn title="Show money again" isOpen={isAsking} onClose={() => setAsking(false)}>
        <AskPassword onShown={() => set(false)} />
      </Drawn>
    </MoneyContext>
  );
}
