import { expect, it } from "vitest";
import { openAt } from "@/test/render";
import { owner, serve, signedIn } from "@/test/server";

const page = (results: unknown[]) => ({
  body: { count: results.length, next: null, previous: null, results },
});
const quillfen = { id: 1, number: 1, name: "Quillfen Resins", lead_time_days: 5, is_archived: false };
const resin = {
  id: 1,
  code: "FLD-A",
  name: "Flood resin A",
  swatch: "#e9ecec",
  stock_unit: "ml",
  kind: "resin",
  measures: [],
};
const kit = {
  id: 3,
  number: 3,
  supplier: { id: 1, name: "Quillfen Resins" },
  name: "Flood kit",
  contents: [
    { material: resin, quantity: { amount: "1", unit: "ml" }, as_typed: { amount: "1", unit: "gal" } },
  ],
  is_archived: false,
};

function lists() {
  return {
    "GET /api/suppliers/": page([quillfen]),
    "GET /api/places/": page([{ id: 1, number: 1, name: "Shop", is_archived: false }]),
    "GET /api/packs/": page([kit]),
    "GET /api/materials/": page([resin]),
  };
}

const twice = {
  status: 422,
  body: {
    type: "/problems/lot-twice",
    title: "A lot stands there twice",
    detail: "Flood resin A, lot AA-1, is in this delivery already.",
    errors: [{ pointer: "/lines/0/contents/0/lot_number", detail: "Give it one line." }],
  },
};

it("receives a kit that its material asked for, its label and price filled in", async () => {
  const sent = serve({
    "GET /api/session/": signedIn,
    ...lists(),
    "POST /api/deliveries/": twice,
  });
  const { user, findByLabelText, getByLabelText, getByRole, findByText } =
    openAt("/receiving/new?material=1");
  await user.type(await findByLabelText(/Flood resin A: lot number/), "AA-1");
  await user.click(getByRole("button", { name: "Received" }));
  expect(await findByText(/Type what it cost/)).toBeVisible();
  expect(sent.filter(({ method }) => method === "POST")).toEqual([]);

  await user.type(getByLabelText(/^Cost of this line/), "246");
  await user.click(getByRole("button", { name: "Received" }));
  expect(await findByText("Give it one line.")).toBeVisible();
  expect(getByLabelText(/Flood resin A: lot number/)).toHaveValue("AA-1");
  expect(sent.find(({ method }) => method === "POST")?.body).toMatchObject({
    supplier: 1,
    lines: [{ pack: 3, count: 1, cost: "246", contents: [{ material: 1, lot_number: "AA-1" }] }],
  });
});

it("asks crew for no money, and sends none", async () => {
  const crew = { ...owner, role: "crew" };
  const sent = serve({
    "GET /api/session/": { body: { ...signedIn.body, person: crew } },
    ...lists(),
    "POST /api/deliveries/": twice,
  });
  const { user, findByLabelText, queryByLabelText, queryByText, getByRole } =
    openAt("/receiving/new?material=1");
  await findByLabelText(/Flood resin A: lot number/);
  expect(queryByLabelText(/^Cost/)).toBeNull();
  expect(queryByText("Charges and discounts")).toBeNull();
  await user.click(getByRole("button", { name: "Received" }));
  await expect.poll(() => sent.find(({ method }) => method === "POST")?.body).toBeTruthy();
  const body = JSON.stringify(sent.find(({ method }) => method === "POST")?.body);
  expect(body).not.toMatch(/cost|basis|charges/);
});

it("tells a viewer who receives, before anything is typed", async () => {
  serve({
    "GET /api/session/": { body: { ...signedIn.body, person: { ...owner, role: "viewer" } } },
    ...lists(),
  });
  const { findByText, queryByRole } = openAt("/receiving/new");
  expect(await findByText("Not with your role")).toBeVisible();
  expect(queryByRole("button", { name: "Received" })).toBeNull();
});
