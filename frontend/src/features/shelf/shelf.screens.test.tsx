import { expect, it } from "vitest";
import { openAt } from "@/test/render";
import { serve, signedIn } from "@/test/server";

const page = (results: unknown[]) => ({
  body: { count: results.length, next: null, previous: null, results },
});
const material = {
  id: 2,
  number: 2,
  code: "FLD-B",
  name: "Flood hardener B",
  kind: "hardener",
  stock_unit: "ml",
  swatch: "#f0e6c8",
  tracks_lots: true,
  density_g_per_ml: "0.96",
  measures: [],
  hazard_codes: ["H314"],
  cautions: "Gloves at all times.",
  shelf_life_days: 365,
  open_life_days: 180,
};
const lot = {
  id: 53,
  number: 53,
  material,
  lot_number: "QB-0613",
  is_own_number: false,
  origin: "opened",
  opened_from: 50,
  blend: null,
  received_on: "2026-03-08",
  made_on: "2026-02-10",
  expires_on: "2027-02-10",
  opened_on: "2026-03-08",
  use_by: "2026-09-04",
  is_expired: false,
  is_usable: true,
  containers: 1,
  status: "usable",
  status_reason: "",
  basis: "paid",
  is_provisional: false,
  places: [{ place: 1, name: "Shop", on_hand: { amount: "2957.3529", unit: "ml" } }],
  on_hand: { amount: "2957.3529", unit: "ml" },
  reserved: { amount: "0", unit: "ml" },
  came_in: { amount: "2957.3529", unit: "ml" },
  fill: "1.0000",
  opened_lots: [],
  notes: [],
  status_events: [],
};

const calls = {
  "GET /api/session/": signedIn,
  "GET /api/lots/53/": { body: lot },
  "GET /api/lots/": page([lot]),
  "GET /api/materials/2/": { body: material },
  "GET /api/materials/": page([material]),
  "GET /api/places/": page([
    { id: 1, number: 1, name: "Shop", is_archived: false },
    { id: 2, number: 2, name: "Van", is_archived: false },
  ]),
  "GET /api/movements/": page([]),
};

it("puts a lot on hold: the whole number unless said otherwise", async () => {
  const sent = serve({ ...calls, "POST /api/lots/53/hold/": { body: { ...lot, status: "on_hold" } } });
  const { user, findByRole, getByRole, findByText, getByLabelText } = openAt("/shelf/lots/53");
  await user.click(await findByRole("button", { name: "Hold" }));
  const confirm = await findByRole("button", { name: "Put on hold" });
  await user.click(confirm);
  expect(await findByText("Say why.")).toBeVisible();
  expect(sent.filter(({ method }) => method === "POST")).toEqual([]);
  await user.type(getByLabelText("Why"), "Soft top");
  await user.click(confirm);
  expect(await findByText("On hold.")).toBeVisible();
  expect(getByRole("status")).toHaveTextContent("On hold.");
  expect(sent.find(({ method }) => method === "POST")?.body).toEqual({
    reason: "Soft top",
    all_of_this_number: true,
  });
});

it("shows how a use-by came about when asked", async () => {
  serve(calls);
  const { user, findByRole } = openAt("/shelf/lots/53");
  await user.click(await findByRole("button", { name: /how this use-by came about/ }));
  const why = await findByRole("region", { name: "how this use-by came about" });
  expect(why).toHaveTextContent("Good once open until180 days after opening4 Sep 2026");
});

it("has no money on the page of a lot where the server sends none", async () => {
  serve(calls);
  const { findByRole, queryByText } = openAt("/shelf/lots/53");
  await findByRole("heading", { name: "Lot 53" });
  expect(queryByText("Cost with freight")).toBeNull();
});

it("hides what the book says until a count is typed, then shows the difference", async () => {
  const sent = serve({
    ...calls,
    "POST /api/stock-counts/": {
      status: 400,
      body: {
        title: "A field needs mending",
        errors: [{ pointer: "/lines/0/quantity", detail: "Too much." }],
      },
    },
  });
  const { user, findByLabelText, queryByText, findByText, getByRole } = openAt("/shelf/count");
  const field = await findByLabelText("Counted of lot 53");
  expect(queryByText("Book")).toBeNull();
  await user.type(field, "99 fl oz");
  expect(queryByText("Book")).toBeNull();
  await user.tab();
  const book = (await findByText(/^Book/)).parentElement;
  expect(book).toHaveTextContent("Book 100fl oz");
  expect(book).toHaveTextContent("difference −1fl oz");
  await user.click(getByRole("button", { name: "Post 1 counted" }));
  expect(await findByText("Too much.")).toBeVisible();
  expect(field).toHaveValue("99 fl oz");
  expect(sent.find(({ method }) => method === "POST")?.body).toMatchObject({
    place: 1,
    lines: [{ lot: 53, quantity: "99 fl oz" }],
  });
});
