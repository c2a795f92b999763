import { expect, it } from "vitest";
import { openAt } from "@/test/render";
import { owner, serve, shop, signedIn } from "@/test/server";

const people = {
  count: 2,
  next: null,
  previous: null,
  results: [
    { ...owner, is_active: true },
    { id: 2, username: "theo", name: "Theo Lind", role: "crew", is_active: true },
  ],
};

it("opens the shop with its first owner", async () => {
  const sent = serve({
    "GET /api/session/": { body: { person: null, shop, needs_set_up: true } },
    "POST /api/set-up/": { status: 201, body: signedIn.body },
  });
  const { user, findByLabelText, getByLabelText, getByRole, getAllByLabelText } = openAt("/set-up");
  const [shopName] = await findByLabelText("Name").then(() => getAllByLabelText("Name"));
  if (shopName) await user.type(shopName, "Ridgeline Tops");
  await user.type(getByLabelText("Your name"), "Maren Holt");
  await user.type(getByLabelText("Sign-in name"), "maren");
  await user.type(getByLabelText("Password"), "a long password");
  await user.click(getByRole("button", { name: "Open the shop" }));
  await expect
    .poll(() => sent.find(({ path }) => path === "/api/set-up/")?.body)
    .toMatchObject({
      name: "Ridgeline Tops",
      currency: "USD",
      owner_name: "Maren Holt",
      username: "maren",
      password: "a long password",
    });
});

it("says what is missing before it sends anything", async () => {
  const sent = serve({ "GET /api/session/": { body: { person: null, shop, needs_set_up: true } } });
  const { user, findByRole, findByText } = openAt("/set-up");
  await user.click(await findByRole("button", { name: "Open the shop" }));
  expect(await findByText("Give the shop a name.")).toBeVisible();
  expect(
    await findByText(/at least 8 characters\.$/, { selector: ".mantine-InputWrapper-error" }),
  ).toBeVisible();
  expect(sent.filter(({ method }) => method === "POST")).toEqual([]);
});

it("saves a setting over the version that was read", async () => {
  let version = 4;
  const sent = serve({
    "GET /api/session/": signedIn,
    "GET /api/shop/": () => ({ body: shop, headers: { etag: `"${version}"` } }),
    "PATCH /api/shop/": () => {
      version = 5;
      return { body: { ...shop, units: { ...shop.units, volume: "ml" } }, headers: { etag: '"5"' } };
    },
  });
  const { user, findByLabelText, getByRole, findByText } = openAt("/shop");
  await user.click(await findByLabelText("mL"));
  await user.click(getByRole("button", { name: "Save the settings" }));
  expect(await findByText("Saved")).toBeVisible();
  const change = sent.find(({ method }) => method === "PATCH");
  expect(change?.headers.get("If-Match")).toBe('"4"');
  expect(change?.body).toMatchObject({ units: { volume: "ml" } });
});

it("lets one choose when somebody else changed the settings meanwhile", async () => {
  const theirs = { ...shop, name: "Ridgeline Countertops" };
  let isChanged = false;
  serve({
    "GET /api/session/": signedIn,
    "GET /api/shop/": () => ({
      body: isChanged ? theirs : shop,
      headers: { etag: isChanged ? '"5"' : '"4"' },
    }),
    "PATCH /api/shop/": ({ headers }) => {
      isChanged = true;
      if (headers.get("If-Match") === '"5"') return { body: theirs, headers: { etag: '"6"' } };
      return { status: 412, body: { title: "Somebody changed this", detail: "Read it again." } };
    },
  });
  const { user, findByLabelText, getByLabelText, getByRole, findByRole } = openAt("/shop");
  await user.type(await findByLabelText("Poison help"), "555 0100");
  await user.click(getByRole("button", { name: "Save the settings" }));
  await user.click(await findByRole("button", { name: "Show what is there now" }));
  await expect.poll(() => (getByLabelText("Name") as HTMLInputElement).value).toBe("Ridgeline Countertops");
});

it("shows crew the settings without letting them change any", async () => {
  const crew = { ...owner, role: "crew" };
  serve({
    "GET /api/session/": { body: { ...signedIn.body, person: crew } },
    "GET /api/shop/": { body: shop },
  });
  const { findByLabelText, queryByRole } = openAt("/shop");
  expect(await findByLabelText("Name")).toBeDisabled();
  expect(queryByRole("button", { name: "Save the settings" })).toBeNull();
});

it("adds somebody, and the list shows them", async () => {
  const results = [...people.results];
  const sent = serve({
    "GET /api/session/": signedIn,
    "GET /api/people/": () => ({ body: { ...people, results } }),
    "POST /api/people/": () => {
      const ines = { id: 3, username: "ines", name: "Ines Roca", role: "crew", is_active: true };
      results.push(ines);
      return { status: 201, body: ines };
    },
  });
  const { user, findByRole, getByLabelText, getByRole, findByText } = openAt("/shop/people");
  await user.click(await findByRole("button", { name: "Add somebody" }));
  await findByRole("dialog");
  await user.type(getByLabelText("Name"), "Ines Roca");
  await user.type(getByLabelText("Sign-in name"), "ines");
  await user.type(getByLabelText("First password"), "a long password");
  await user.click(getByRole("button", { name: "Add them" }));
  expect(await findByText("Ines Roca")).toBeVisible();
  const post = sent.find(({ method }) => method === "POST");
  expect(post?.body).toEqual({
    name: "Ines Roca",
    username: "ines",
    role: "crew",
    password: "a long password",
  });
  expect(post?.headers.get("Idempotency-Key")).toMatch(/^[0-9a-f-]{36}$/);
});

it("ends somebody's access without sending a password that nobody typed", async () => {
  const sent = serve({
    "GET /api/session/": signedIn,
    "GET /api/people/": { body: people },
    "PATCH /api/people/2/": { body: people.results[1] },
  });
  const { user, findByRole, getByRole } = openAt("/shop/people");
  await user.click(await findByRole("button", { name: /Theo Lind/ }));
  await user.click(await findByRole("switch", { name: /May sign in/ }));
  await user.click(getByRole("button", { name: "Save" }));
  await expect
    .poll(() => sent.find(({ method }) => method === "PATCH")?.body)
    .toEqual({ name: "Theo Lind", role: "crew", is_active: false });
});

it("does not let an owner lock themselves out", async () => {
  serve({ "GET /api/session/": signedIn, "GET /api/people/": { body: people } });
  const { user, findByRole } = openAt("/shop/people");
  await user.click(await findByRole("button", { name: /Maren Holt maren/ }));
  expect(await findByRole("switch", { name: /May sign in/ })).toBeDisabled();
});
