import { Navigate, Outlet, useLocation } from "react-router";
import { useSession } from "@/api/session";
import { WaysProvider } from "@/components/figures";
import { MoneyProvider } from "../money";

/** Lets in whoever is signed in; others are asked to sign in and come back to the page they wanted. */
export function Gate() {
  const { person, shop, needs_set_up } = useSession();
  const { pathname, search } = useLocation();
  if (needs_set_up) return <Navigate to="/set-up" replace />;
  if (!person) {
    const wanted = `${pathname}${search}`;
    return (
      <Navigate to={wanted === "/" ? "/sign-in" : `/sign-in?next=${encodeURIComponent(wanted)}`} replace />
    );
  }
  return (
    <MoneyProvider>
      {(showsMoney) => (
        <WaysProvider
          ways={{
            units: shop.units,
            currency: shop.currency,
            timeZone: shop.time_zone,
            poisonHelp: shop.poison_help,
            showsMoney,
          }}
        >
          <Outlet />
        </WaysProvider>
      )}
    </MoneyProvider>
  );
}

/** The pages before signing in: set up the shop first, and nothing to sign in to for whoever already is. */
export function Doorstep() {
  const { person, needs_set_up } = useSession();
  const { pathname, search } = useLocation();
  if (needs_set_up && pathname !== "/set-up") return <Navigate to="/set-up" replace />;
  if (!needs_set_up && pathname === "/set-up") return <Navigate to="/" replace />;
  const next = new URLSearchParams(search).get("next") ?? "/";
  if (person) return <Navigate to={next.startsWith("/") && !next.startsWith("//") ? next : "/"} replace />;
  return (
    <main id="sheet">
      <Outlet />
    </main>
  );
}
