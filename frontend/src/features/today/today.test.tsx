import { expect, it } from "vitest";
import { openAt } from "@/test/render";
import { owner, serve, shop, signedIn } from "@/test/server";
import { daysFrom, groupsOf, mayAct, pageOf, poursToCome, poursToLog } from "./groups";
import type { Need } from "./queries";

function need(
  kind: Need["kind"],
  act: Need["act"],
  noun: string,
  id: number,
  on: string | null = null,
): Need {
  return { kind, act, title: `${noun} ${id}`, detail: "28 fl oz left", on, link: { noun, id } };
}

const rows: Need[] = [
  need("pour_overdue", "complete", "pour", 7, "2026-11-24"),
  need("pour_today", "complete", "pour", 8, "2026-11-25"),
  need("lot_on_hold", "release_or_reject", "lot", 53),
  need("material_below", "order", "material", 2),
  need("pour_coming", "prepare", "pour", 9, "2026-11-27"),
];

const crew = { ...signedIn, body: { ...signedIn.body, person: { ...owner, role: "crew" } } };

it("sets planned pours to log apart from those to come, and from everything else", () => {
  expect(poursToLog(rows).map(({ link }) => link.id)).toEqual([7, 8]);
  expect(poursToCome(rows).map(({ link }) => link.id)).toEqual([9]);
  expect(groupsOf(rows).map(({ title }) => title)).toEqual(["Below the reorder point", "On hold"]);
});

it("leads each row to the record that its act is on", () => {
  expect(rows.map(pageOf)).toEqual([
    "/pours/7",
    "/pours/8",
    "/shelf/lots/53",
    "/shelf/materials/2",
    "/pours/9",
  ]);
});

it("lays each planned pour on its day, over the turn of a month", () => {
  const days = daysFrom("2026-11-25", rows);
  expect(days.map(({ day }) => day.slice(5))).toEqual([
    "11-25",
    "11-26",
    "11-27",
    "11-28",
    "11-29",
    "11-30",
    "12-01",
    "12-02",
  ]);
  expect(days.map(({ pours }) => pours.length)).toEqual([1, 0, 1, 0, 0, 0, 0, 0]);
});

it("offers an act to those who may carry it out", () => {
  expect([mayAct("complete", "crew"), mayAct("price", "crew"), mayAct("price", "owner")]).toEqual([
    true,
    false,
    true,
  ]);
  expect(mayAct("complete", "viewer")).toBe(false);
});

it("has a planned pour one tap away", async () => {
  serve({ "GET /api/session/": signedIn, "GET /api/today/": { body: { on: "2026-11-25", rows } } });
  const { findAllByRole, getByRole } = openAt("/");
  const [overdue, today] = await findAllByRole("link", { name: /Log this pour/ });
  expect(overdue).toHaveAttribute("href", "/pours/7");
  expect(today).toHaveAttribute("href", "/pours/8");
  expect(getByRole("link", { name: /lot 53.*OK again or reject/ })).toHaveAttribute("href", "/shelf/lots/53");
  expect(getByRole("img", { name: "25 Nov 2026: 1 pour; 27 Nov 2026: 1 pour" })).toBeInTheDocument();
});

it("shows crew what is below, without the owner's act", async () => {
  serve({ "GET /api/session/": crew, "GET /api/today/": { body: { on: "2026-11-25", rows } } });
  const { findByRole } = openAt("/");
  expect(await findByRole("link", { name: /material 2/ })).not.toHaveTextContent("Look and order");
});

it("says calmly that nothing needs a hand, and what comes next", async () => {
  const coming = rows.filter(({ kind }) => kind === "pour_coming");
  serve({
    "GET /api/session/": { body: { person: owner, shop, needs_set_up: false } },
    "GET /api/today/": { body: { on: "2026-11-25", rows: coming } },
  });
  const { findByText, queryByRole } = openAt("/");
  expect(await findByText("Nothing needs a hand")).toBeInTheDocument();
  expect(await findByText(/^Next: pour 9/)).toBeInTheDocument();
  expect(queryByRole("link", { name: /Log this pour/ })).toBeNull();
});
