import { Popover, useMantineColorScheme } from "@mantine/core";
import { useState } from "react";
import { Link } from "react-router";
import { useAct } from "@/api/act";
import { useIsOwner, useSession } from "@/api/session";
import { OneOf } from "@/components/form";
import { useMoneySwitch } from "../money";
import classes from "./shell.module.css";

const SCHEMES = [
  ["auto", "Device"],
  ["light", "Light"],
  ["dark", "Dark"],
] as const;

type Scheme = (typeof SCHEMES)[number][0];

const ROLES = { owner: "Owner", crew: "Crew", viewer: "Viewer" };

/** Whose device this is: the shop's settings, light or dark, money out of sight, signing out. */
export function PersonMenu() {
  const { person } = useSession();
  const isOwner = useIsOwner();
  const { colorScheme, setColorScheme } = useMantineColorScheme();
  const money = useMoneySwitch();
  const [isOpen, setOpen] = useState(false);
  const signOut = useAct("delete", "/api/session/", { onDone: () => globalThis.location.assign("/sign-in") });
  if (!person) return null;

  function closing(act: () => void) {
    return () => {
      setOpen(false);
      act();
    };
  }

  return (
    <Popover
      opened={isOpen}
      onChange={setOpen}
      position="bottom-end"
      width={280}
      withinPortal={false}
      trapFocus
      returnFocus
    >
      <Popover.Target>
        <button type="button" className={classes.person} onClick={() => setOpen(!isOpen)}>
          {person.name}
          <span className="soft">{ROLES[person.role]}</span>
        </button>
      </Popover.Target>
      <Popover.Dropdown className={classes.menu ?? ""} aria-label="Shop, device and signing out">
        <Link to="/shop" onClick={() => setOpen(false)}>
          The shop
        </Link>
        <Link to="/shop/people" onClick={() => setOpen(false)}>
          People, roles and my password
        </Link>
        {isOwner && (
          <button type="button" onClick={closing(money.isHidden ? money.askToShow : money.hide)}>
            {money.isHidden ? "Show money again" : "Hide money: a customer is looking"}
          </button>
        )}
        <OneOf
          label="Light or dark"
          choices={SCHEMES}
          value={colorScheme}
          onChange={(scheme) => setColorScheme(scheme as Scheme)}
        />
        <button type="button" onClick={() => signOut.submit(undefined)}>
          Sign out
        </button>
      </Popover.Dropdown>
    </Popover>
  );
}
