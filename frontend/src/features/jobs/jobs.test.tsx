import { expect, it } from "vitest";
import { openAt } from "@/test/render";
import { owner, serve, signedIn } from "@/test/server";

const page = (results: unknown[]) => ({
  body: { count: results.length, next: null, previous: null, results },
});
const ann = {
  id: 4,
  number: 4,
  name: "Ann Tully",
  phone: "",
  email: "",
  address: "",
  note: "",
  is_archived: false,
};

const bar = {
  id: 8,
  number: 8,
  job: 3,
  name: "Bar",
  shape: { length_in: "93", width_in: "24" },
  top_sqft: "15.500000",
  edge_sqft: "0.000000",
  splash_sqft: "0.000000",
  cutout_sqft: "0.000000",
  area_sqft: "15.500000",
  area_source: "quoted",
  is_scrapped: false,
  scrapped_reason: "",
};

const job = {
  id: 3,
  number: 3,
  title: "Bar, estuary",
  customer: ann,
  purpose: "customer",
  site: "",
  note: "",
  due_on: null,
  finished_on: null,
  handed_over_on: null,
  is_archived: false,
  counting_rule: { counts_top: true, counts_edges: true, counts_splash: true, deducts_cutouts: false },
  area_sqft: "15.500000",
  pieces: [bar],
};

const cost = {
  key: "3",
  label: "Job 3",
  state: "unfinished",
  area_sqft: "15.500000",
  tops: 1,
  scrapped: 0,
  cost: "93.0000",
  cost_per_sqft: "6.0000",
  by_kind: {},
  waste_cost: "0.0000",
  waste_by_kind: {},
  redo_cost: "0.0000",
  notes: ["materials only"],
  reason: null,
  link: null,
  movements: null,
};

it("keeps the filter in the address", async () => {
  serve({ "GET /api/session/": signedIn, "GET /api/jobs/": page([job]) });
  const { user, findByRole, router } = openAt("/jobs?search=bar");
  expect(await findByRole("link", { name: "Bar, estuary" })).toHaveAttribute("href", "/jobs/3");
  await user.click(await findByRole("link", { name: "Under way" }));
  expect(router.state.location.search).toBe("?search=bar&state=unfinished");
});

it("shows the owner what a square foot cost, and crew nothing of it", async () => {
  const shown = {
    "GET /api/jobs/3/": { body: job },
    "GET /api/pours/": page([]),
    "GET /api/reports/cost-per-sqft/": { body: { rows: [cost], total: cost, unfinished_total: null } },
  };
  serve({ ...shown, "GET /api/session/": signedIn });
  const first = openAt("/jobs/3");
  expect(await first.findByRole("button", { name: /per sq ft/ })).toBeVisible();
  first.unmount();

  const crew = { body: { ...signedIn.body, person: { ...owner, role: "crew" } } };
  const sent = serve({ ...shown, "GET /api/session/": crew });
  const second = openAt("/jobs/3");
  expect(await second.findByRole("link", { name: "Bar" })).toHaveAttribute("href", "/tops/8");
  expect(second.queryByText("What it cost")).toBeNull();
  expect(sent.some(({ path }) => path.includes("cost-per-sqft"))).toBe(false);
});

it("puts a refused measure's reason into its field, and a name on record is no new customer", async () => {
  const sent = serve({
    "GET /api/session/": signedIn,
    "GET /api/customers/": page([ann]),
    "POST /api/jobs/": {
      status: 400,
      body: {
        title: "Some fields need mending",
        detail: "One field needs mending.",
        errors: [{ pointer: "/pieces/0/length_in", detail: "No top is that long." }],
      },
    },
  });
  const { user, findByLabelText, getByLabelText, getByRole, findByText } = openAt("/jobs/new");
  await user.type(await findByLabelText("Customer", { selector: "input" }), "ann tully");
  await user.type(getByLabelText("What it is called"), "Bar");
  await user.type(getByLabelText("Name of the top"), "Bar");
  await user.type(getByLabelText("Length, in"), "9300");
  await user.click(getByRole("button", { name: "Put the job down" }));
  expect(await findByText("No top is that long.")).toBeVisible();
  expect(getByLabelText("Length, in")).toHaveAttribute("aria-invalid", "true");
  expect(sent.find(({ method }) => method === "POST")?.body).toMatchObject({ customer: 4, title: "Bar" });
  await user.type(getByLabelText("Length, in"), "{Backspace}{Backspace}");
  expect(getByLabelText("Length, in")).not.toHaveAttribute("aria-invalid", "true");
});
