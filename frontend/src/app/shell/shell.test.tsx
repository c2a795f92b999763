import { expect, it } from "vitest";
import { openAt } from "@/test/render";
import { serve, serverIsAway, shop, signedIn, signedOut } from "@/test/server";

it("asks whoever is not signed in to sign in, and remembers the page they wanted", async () => {
  serve({ "GET /api/session/": signedOut });
  const { findByRole, router } = openAt("/shop/people");
  expect(await findByRole("heading", { name: "Sign in" })).toBeVisible();
  expect(router.state.location.search).toBe("?next=%2Fshop%2Fpeople");
});

it("leads to the page they wanted once they are signed in", async () => {
  let isIn = false;
  serve({
    "GET /api/session/": () => (isIn ? signedIn : signedOut),
    "POST /api/session/": () => {
      isIn = true;
      return signedIn;
    },
    "GET /api/shop/": { body: shop },
  });
  const { user, findByLabelText, getByLabelText, getByRole, findByRole } = openAt("/sign-in?next=/shop");
  await user.type(await findByLabelText("Sign-in name"), "maren");
  await user.type(getByLabelText("Password"), "a long password");
  await user.click(getByRole("button", { name: "Sign in" }));
  expect(await findByRole("heading", { name: "The shop", level: 1 })).toBeVisible();
});

it("does not follow a way out to another site", async () => {
  serve({ "GET /api/session/": signedIn, "GET /api/shop/": { body: shop } });
  const { router, findByRole } = openAt("/sign-in?next=//elsewhere.example");
  await findByRole("heading", { level: 1 });
  expect(router.state.location.pathname).not.toContain("elsewhere");
});

it("says in the field that the password does not fit, and keeps the name", async () => {
  serve({
    "GET /api/session/": signedOut,
    "POST /api/session/": {
      status: 400,
      body: { title: "Not signed in", detail: "The name or the password is wrong." },
    },
  });
  const { user, findByLabelText, getByLabelText, getByRole, findByText } = openAt("/sign-in");
  await user.type(await findByLabelText("Sign-in name"), "maren");
  await user.type(getByLabelText("Password"), "wrong");
  await user.click(getByRole("button", { name: "Sign in" }));
  expect(await findByText("The name or the password is wrong.")).toBeVisible();
  expect(getByLabelText("Sign-in name")).toHaveValue("maren");
});

it("sends an empty shop to be set up first", async () => {
  serve({ "GET /api/session/": { body: { person: null, shop, needs_set_up: true } } });
  expect(await openAt("/").findByRole("heading", { name: "Set up the shop" })).toBeVisible();
});

it("asks to sign in again when the session ends in the middle, and comes back", async () => {
  let isOver = false;
  serve({
    "GET /api/session/": () => (isOver ? signedOut : signedIn),
    "GET /api/shop/": () => {
      isOver = true;
      return { status: 401, body: { title: "Sign in", detail: "Your session ended." } };
    },
  });
  const { router, findByRole } = openAt("/shop");
  expect(await findByRole("heading", { name: "Sign in" })).toBeVisible();
  expect(router.state.location.search).toBe("?next=%2Fshop");
});

it("says when the server is away, and goes on when it is back", async () => {
  serverIsAway();
  const { user, findByRole, getByRole } = openAt("/shop");
  expect(await findByRole("heading", { name: "The shop's server did not answer" })).toBeVisible();
  serve({ "GET /api/session/": signedIn, "GET /api/shop/": { body: shop } });
  await user.click(getByRole("button", { name: "Try again" }));
  expect(await findByRole("heading", { name: "The shop", level: 1 })).toBeVisible();
});

it("says when the server broke, within the shop's frame", async () => {
  serve({ "GET /api/session/": signedIn, "GET /api/shop/": { status: 500 } });
  const { findByRole, getByRole } = openAt("/shop");
  expect(await findByRole("heading", { name: "Something broke on the server" })).toBeVisible();
  expect(getByRole("link", { name: "Ridgeline Tops" })).toBeVisible();
});

it("says when no page has the address", async () => {
  serve({ "GET /api/session/": signedIn });
  expect(await openAt("/nowhere").findByRole("heading", { name: "No page has this address" })).toBeVisible();
});

it("takes money off the screen at once, and asks for the password before it comes back", async () => {
  const wrong = { status: 400, body: { title: "Not signed in", detail: "The password is wrong." } };
  let answer: object = wrong;
  serve({
    "GET /api/session/": signedIn,
    "GET /api/shop/": { body: shop },
    "POST /api/session/": () => answer,
  });
  const { user, findByRole, findByLabelText, getByRole, findByText } = openAt("/shop");
  await user.click(await findByRole("button", { name: /Maren Holt/ }));
  await user.click(await findByRole("button", { name: /Hide money/ }));
  expect(localStorage.getItem("money-is-hidden")).toBe("yes");

  await user.click(getByRole("button", { name: /Maren Holt/ }));
  await user.click(await findByRole("button", { name: "Show money again" }));
  await user.type(await findByLabelText("Your password"), "guess");
  await user.click(getByRole("button", { name: "Show money" }));
  expect(await findByText("The password is wrong.")).toBeVisible();
  expect(localStorage.getItem("money-is-hidden")).toBe("yes");

  answer = signedIn;
  await user.click(getByRole("button", { name: "Show money" }));
  await expect.poll(() => localStorage.getItem("money-is-hidden")).toBeNull();
});
