import { Suspense } from "react";
import { Link, NavLink, Outlet, ScrollRestoration } from "react-router";
import { useSession } from "@/api/session";
import { PageSkeleton } from "@/components/page";
import { home, tabs } from "../features";
import { PersonMenu } from "./PersonMenu";
import { TabSign } from "./Signs";
import classes from "./shell.module.css";

/** The tabs: along the upper edge of the sheet on a laptop, under the thumb on a phone. */
function Tabs() {
  return (
    <nav className={`${classes.tabs} no-print`} aria-label="The shop's jobs">
      {tabs.map(({ to, label, sign }) => (
        <NavLink key={to} to={to} end={to === "/"} className={classes.tab ?? ""}>
          <TabSign sign={sign} />
          <span>{label}</span>
        </NavLink>
      ))}
    </nav>
  );
}

/** What stands around every page of somebody who is signed in. */
export function Shell() {
  const { shop } = useSession();
  return (
    <div className={classes.shell}>
      <a className={classes.skip} href="#sheet">
        Skip to the sheet
      </a>
      <header className={`${classes.top} no-print`}>
        <Link to={home} className={classes.shop}>
          {shop.name || "Lot & Pour"}
        </Link>
        <PersonMenu />
      </header>
      <Tabs />
      <main id="sheet" tabIndex={-1} className={classes.sheet}>
        <Suspense fallback={<PageSkeleton />}>
          <Outlet />
        </Suspense>
      </main>
      <ScrollRestoration />
    </div>
  );
}
