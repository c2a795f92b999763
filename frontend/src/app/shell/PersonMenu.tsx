import { Menu, useMantineColorScheme } from "@mantine/core";
import { Link } from "react-router";
import { useAct } from "@/api/act";
import { useIsOwner, useSession } from "@/api/session";
import { useMoneySwitch } from "../money";
import classes from "./shell.module.css";

const SCHEMES = [
  ["auto", "As this device"],
  ["light", "Light"],
  ["dark", "Dark"],
] as const;

const ROLES = { owner: "Owner", crew: "Crew", viewer: "Viewer" };

/** Whose device this is: the shop's settings, light or dark, money out of sight, signing out. */
export function PersonMenu() {
  const { person } = useSession();
  const isOwner = useIsOwner();
  const { colorScheme, setColorScheme } = useMantineColorScheme();
  const money = useMoneySwitch();
  const signOut = useAct("delete", "/api/session/", { onDone: () => globalThis.location.assign("/sign-in") });
  if (!person) return null;
  return (
    <Menu position="bottom-end" width={260} closeOnItemClick>
      <Menu.Target>
        <button type="button" className={classes.person}>
          {person.name}
          <span className="soft">{ROLES[person.role]}</span>
        </button>
      </Menu.Target>
      <Menu.Dropdown className={classes.menu ?? ""}>
        <Menu.Item component={Link} to="/shop">
          The shop
        </Menu.Item>
        {isOwner && (
          <Menu.Item component={Link} to="/shop/people">
            People and roles
          </Menu.Item>
        )}
        {isOwner && (
          <Menu.Item onClick={money.isHidden ? money.askToShow : money.hide}>
            {money.isHidden ? "Show money again" : "Hide money: a customer is looking"}
          </Menu.Item>
        )}
        <Menu.Divider />
        <Menu.Label>Light or dark</Menu.Label>
        {SCHEMES.map(([scheme, label]) => (
          <Menu.Item
            key={scheme}
            role="menuitemradio"
            aria-checked={colorScheme === scheme}
            closeMenuOnClick={false}
            onClick={() => setColorScheme(scheme)}
          >
            {label}
          </Menu.Item>
        ))}
        <Menu.Divider />
        <Menu.Item onClick={() => signOut.submit(undefined)}>Sign out</Menu.Item>
      </Menu.Dropdown>
    </Menu>
  );
}
