import { expect, it } from "vitest";
import { openAt } from "@/test/render";
import { owner, serve, signedIn } from "@/test/server";

const ml = (amount: string) => ({ amount, unit: "ml" });
const page = (results: unknown[]) => ({
  body: { count: results.length, next: null, previous: null, results },
});

const resin = {
  id: 5,
  code: "FLD-A",
  name: "Flood resin A",
  kind: "resin",
  stock_unit: "ml",
  measures: [],
  swatch: "#dfe4e2",
  cautions: "Gloves at all times.",
  hazard_codes: [],
};

const amount = {
  position: 0,
  material: 5,
  material_name: "Flood resin A",
  material_code: "FLD-A",
  material_kind: "resin",
  quantity: ml("532.323532"),
  typed_amount: "18",
  typed_unit: "fl_oz",
  weighed_before: "",
  weighed_after: "",
  bucket: null,
  is_waste: false,
  reason: "",
  provenance: "assumed",
  lot_provenance: "assumed",
};

const planned = {
  id: 140,
  number: 140,
  status: "planned",
  layer: "flood_coat",
  is_redo: false,
  place: 1,
  place_name: "Shop",
  planned_for: "2026-11-25T20:20:00Z",
  poured_at: null,
  people: [{ id: 1, name: "Maren Holt" }],
  pieces: [{ piece: 8, name: "Bar", job: 3, job_number: 3, job_title: "Bar, estuary", customer_name: "Ann" }],
  note: "",
  needs_owner_reason: false,
  conditions: {},
  ticks: {},
  reason: "",
  owner_reason: "",
  planned: [{ ...amount, lot: null, number: null, lot_number: null, place: null }],
  usages: [],
  cost: "0.0000",
  proposal: { takings: [], shortages: [], problem: "" },
  acts: [],
  taken_back: [],
  same_pour_as: [],
};

const completed = {
  ...planned,
  status: "completed",
  poured_at: "2026-11-25T20:25:00Z",
  proposal: null,
  usages: [
    {
      ...amount,
      id: 1,
      lot: 81,
      number: 81,
      lot_number: "FA-1145",
      place: 1,
      place_name: "Shop",
      movement: 9,
      value: "43.1200",
      lot_status: "on_hold",
      was_expired: false,
      given_by: null,
    },
  ],
  cost: "43.1200",
};

const around = {
  "GET /api/session/": signedIn,
  "GET /api/materials/": page([resin]),
  "GET /api/people/": page([{ ...owner, is_active: true }]),
  "GET /api/pours/": page([]),
  "GET /api/lots/": page([]),
};

it("completes as planned in one tap, sending no amount that nobody touched", async () => {
  let pour: object = planned;
  const sent = serve({
    ...around,
    "GET /api/pours/140/": () => ({ body: pour }),
    "POST /api/pours/140/complete/": () => {
      pour = completed;
      return { body: completed };
    },
  });
  const { user, findByRole } = openAt("/pours/140");
  await user.click(await findByRole("button", { name: "Pour completed" }));
  expect(await findByRole("link", { name: "Lot 81" })).toHaveAttribute("href", "/shelf/lots/81");
  const act = sent.find(({ method }) => method === "POST");
  expect(act?.body).not.toHaveProperty("usages");
  expect(act?.headers.get("Idempotency-Key")).toBeTruthy();
});

it("says what is short above the amounts, and takes the rest from the lot that is tapped", async () => {
  const refused = {
    status: 422,
    body: {
      type: "/problems/not-enough-stock",
      title: "There is not enough on the shelf",
      detail: "raw",
      errors: [{ pointer: "/planned/0", detail: "raw" }],
      remedies: [
        { kind: "other_lot", text: "Lot 9 has some.", material: 5, lot: 9, place: 1, quantity: ml("900") },
      ],
      shortages: [
        {
          material: 5,
          name: "Flood resin A",
          lot: null,
          wanted: ml("532.323532"),
          there: ml("332.323532"),
          missing: ml("200"),
        },
      ],
    },
  };
  const sent = serve({
    ...around,
    "GET /api/pours/140/": { body: planned },
    "POST /api/pours/140/complete/": refused,
  });
  const { user, findByRole, findAllByText, queryByRole } = openAt("/pours/140");
  await user.click(await findByRole("button", { name: "Pour completed" }));
  const [told] = await findAllByText(/6.763 fl oz short. 18 fl oz wanted, 11.24 fl oz there/);
  expect(told).toBeVisible();
  await user.click(await findByRole("button", { name: /Lot 9 has some/ }));
  expect(queryByRole("button", { name: /Lot 9 has some/ })).toBeNull();
  await user.click(await findByRole("button", { name: "Pour completed" }));
  await expect.poll(() => sent.filter(({ method }) => method === "POST")).toHaveLength(2);
  expect(sent.findLast(({ method }) => method === "POST")?.body).toMatchObject({
    usages: [
      { material: 5, quantity: ml("332.323532") },
      { material: 5, quantity: ml("200"), lot: 9, place: 1, lot_provenance: "typed" },
    ],
  });
});

it("shows crew what went in and how the lot stood, and no money", async () => {
  const { cost: _, ...noCost } = completed;
  const crew = { body: { ...signedIn.body, person: { ...owner, role: "crew" } } };
  serve({ ...around, "GET /api/session/": crew, "GET /api/pours/140/": { body: noCost } });
  const { findByText, queryByText, getByRole } = openAt("/pours/140");
  expect(await findByText("Was on hold")).toBeVisible();
  expect(queryByText("Cost")).toBeNull();
  expect(queryByText(/\$/)).toBeNull();
  expect(getByRole("link", { name: "Correct" })).toBeVisible();
});

it("lets a viewer read and do nothing", async () => {
  const viewer = { body: { ...signedIn.body, person: { ...owner, role: "viewer" } } };
  serve({ ...around, "GET /api/session/": viewer, "GET /api/pours/140/": { body: planned } });
  const { findByRole, queryByRole, getByText } = openAt("/pours/140");
  expect(await findByRole("heading", { name: "What goes in" })).toBeVisible();
  expect(queryByRole("button", { name: "Pour completed" })).toBeNull();
  expect(queryByRole("button", { name: "Call it off" })).toBeNull();
  expect(getByText("Gloves at all times.", { exact: false })).toBeVisible();
});
