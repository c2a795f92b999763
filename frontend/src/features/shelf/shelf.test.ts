import { describe, expect, it } from "vitest";
import { inCelsius, NEW_SYSTEM, onScale, recoatInWords, systemBody, systemField } from "./around/systems";
import { countedLots, differenceTo, fieldOfLine, linesOf, NOT_COUNTED } from "./count/counting";
import { costEach } from "./lot/costEach";
import { actsFor, mainActs } from "./lot/lotActs";
import { addDays, useBySteps } from "./lot/useBy";
import { minus, sumOf } from "./material/figures";
import { bodyOf, changesBetween, checkMaterial, NEW_MATERIAL } from "./material/typed";
import { checkMix, mixBody, startOf } from "./mix/mixing";
import type { Lot, LotRow, ShelfRow } from "./queries";
import { boardsOf, onLabel, useByAlert } from "./shelfView";
import { daysInWords } from "./words";

const ml = (amount: string) => ({ amount, unit: "ml" });

function lot(over: Partial<Lot> = {}): Lot {
  return {
    id: 12,
    uuid: "",
    number: 1207,
    material: {
      id: 1,
      code: "FLD-A",
      name: "Flood resin A",
      kind: "resin",
      stock_unit: "ml",
      swatch: "",
      tracks_lots: true,
    },
    lot_number: "QB-0613",
    is_own_number: false,
    origin: "delivery",
    opened_from: null,
    blend: null,
    received_on: "2026-03-08",
    made_on: null,
    expires_on: null,
    opened_on: null,
    use_by: null,
    days_left: null,
    age_days: 10,
    is_expired: false,
    is_usable: true,
    containers: 2,
    status: "usable",
    status_since: null,
    status_reason: "",
    basis: "paid",
    is_provisional: false,
    places: [{ place: 1, name: "Shop", on_hand: ml("1200") }],
    on_hand: ml("1200"),
    reserved: ml("0"),
    came_in: ml("2400"),
    fill: "0.5",
    opened_lots: [],
    notes: [],
    status_events: [],
    ...over,
  };
}

function row(id: number, name: string, kind: LotRow["material"]["kind"] = "resin"): ShelfRow {
  return {
    material: { id, code: `C-${id}`, name, kind, stock_unit: "ml", swatch: "", tracks_lots: true },
    on_hand: ml("1"),
    usable: ml("1"),
    reserved: ml("0"),
    available: ml("1"),
    lots: 1,
    next_use_by: null,
    is_provisional: false,
  };
}

describe("the shelf", () => {
  const rows = [row(1, "Flood resin A"), row(2, "Dye, estuary", "dye")];

  it("stands by kinds, resin before dye", () =>
    expect(boardsOf([...rows].reverse(), [], {}).map(({ title }) => title)).toEqual(["Resin", "Dye"]));

  it("finds a material by a lot's number and by the one on its label, and marks that lot alone", () => {
    for (const search of ["1207", "lot 1207", "qb-06"]) {
      const [board, ...rest] = boardsOf(rows, [lot(), lot({ id: 13, number: 9, lot_number: "Z" })], {
        search,
      });
      expect(rest).toEqual([]);
      expect([...(board?.materials[0]?.found ?? [])]).toEqual([12]);
    }
    expect(boardsOf(rows, [lot()], { search: "120" })).toEqual([]);
  });

  it("is narrowed to a kind", () =>
    expect(boardsOf(rows, [], { kind: "dye" }).map(({ kind }) => kind)).toEqual(["dye"]));

  it("says what is past its use-by before what soon will be", () => {
    expect(useByAlert([lot({ days_left: 12 }), lot({ is_expired: true, days_left: -3 })])).toEqual({
      mark: "stop",
      text: "1 past its use-by",
    });
    expect(useByAlert([lot({ days_left: 12 }), lot({ days_left: 40 })])?.text).toBe("Use by in 12 days");
    expect(useByAlert([lot({ days_left: 61 }), lot()])).toBeNull();
  });

  it("says so where no number is on the label", () =>
    expect(onLabel({ lot_number: "own-1", is_own_number: true })).toBe("none on the label"));
});

describe("a lot", () => {
  it("allows what its state allows", () => {
    const asCrew = { mayRecord: true, isOwner: false };
    expect(actsFor(lot(), { mayRecord: false, isOwner: false })).toEqual([]);
    expect(actsFor(lot(), asCrew)).toContain("open");
    expect(actsFor(lot({ opened_on: "2026-03-09" }), asCrew)).not.toContain("open");
    expect(actsFor(lot({ status: "on_hold" }), asCrew)).not.toContain("release");
    expect(mainActs(actsFor(lot({ status: "on_hold" }), { mayRecord: true, isOwner: true }))[0]).toBe(
      "release",
    );
    expect(actsFor(lot({ on_hand: ml("0") }), asCrew)).not.toContain("move");
  });

  it("explains its use-by: the earlier of its expiry and its opened life", () => {
    const steps = useBySteps(
      lot({ made_on: "2026-01-01", expires_on: "2027-06-25", opened_on: "2026-02-01", use_by: "2026-10-29" }),
      { shelf_life_days: 540, open_life_days: 270 },
    );
    expect(steps.map(({ label, day, decides }) => [label, day, decides])).toEqual([
      ["Made", "2026-01-01", false],
      ["Expires unopened", "2027-06-25", false],
      ["Opened", "2026-02-01", false],
      ["Good once open until", "2026-10-29", true],
    ]);
    expect(steps[1]?.note).toBe("540 days after it was made");
  });

  it("counts days over months and leap years", () => expect(addDays("2028-02-28", 2)).toBe("2028-03-01"));

  it("costs exactly as much by the fluid ounce as by the millilitre", () =>
    expect(costEach("0.02", "ml", { volume: "fl_oz", mass: "g", area: "sqft" })).toEqual({
      cost: "0.591471",
      unit: "fl_oz",
    }));
});

describe("a count", () => {
  const said = (text: string) => ({ ...NOT_COUNTED, said: { text, body: text } });

  it("differs by exactly what is missing, whatever unit was typed", () => {
    expect(differenceTo(said("1 l"), ml("1200"))).toEqual(ml("-200"));
    expect(differenceTo({ ...NOT_COUNTED, isNone: true }, ml("1200"))).toEqual(ml("-1200"));
    expect(differenceTo(NOT_COUNTED, ml("1200"))).toBeNull();
    expect(differenceTo(said("40 g"), ml("1200"))).toBeNull();
  });

  it("sends only what was counted, and finds the field of a refused line", () => {
    const counts = { 12: said("1 l"), 13: NOT_COUNTED, 14: { ...NOT_COUNTED, isNone: true } };
    expect(countedLots(counts)).toEqual([12, 14]);
    expect(linesOf(counts, [lot(), lot({ id: 14 })])).toEqual([
      { lot: 12, quantity: "1 l" },
      { lot: 14, quantity: ml("0") },
    ]);
    expect(fieldOfLine("lines.1.quantity", [12, 14])).toBe("counts.14.said");
    expect(fieldOfLine("lines.0.quantity.unit", [12, 14])).toBe("counts.12.said");
    expect(fieldOfLine("place", [12])).toBe("place");
  });
});

describe("a material's form", () => {
  it("sends nothing typed as nothing, and days as numbers", () =>
    expect(bodyOf({ ...NEW_MATERIAL, name: "X", code: "Y", shelf_life_days: "540" })).toMatchObject({
      density_g_per_ml: null,
      shelf_life_days: 540,
      open_life_days: null,
      main_supplier: null,
    }));

  it("says what is missing", () =>
    expect(Object.keys(checkMaterial({ ...NEW_MATERIAL, shelf_life_days: "1.5" }))).toEqual([
      "code",
      "name",
      "shelf_life_days",
    ]));

  it("shows what somebody else changed meanwhile", () =>
    expect(
      changesBetween(NEW_MATERIAL, { ...NEW_MATERIAL, density_g_per_ml: "1.13", tracks_lots: false }),
    ).toEqual(["Density: nothing → 1.13", "Lots kept apart: yes → no"]));

  it("sums and subtracts exactly", () => {
    expect(sumOf([ml("0.1"), ml("0.2")], "ml")).toEqual(ml("0.3"));
    expect(minus(ml("0.3"), ml("0.1"))).toEqual(ml("0.2"));
  });

  it("says days as people do", () =>
    expect([540, 365, 45, 1].map(daysInWords)).toEqual(["18 months", "1 year", "45 days", "1 day"]));
});

describe("a mix", () => {
  it("starts as a bottle of what the lot holds", () => {
    const typed = startOf(lot());
    expect(typed).toMatchObject({ material: "1", place: "1" });
    expect(checkMix(typed)).toEqual({ "inputs.0.quantity": "Say how much, with its unit." });
  });

  it("leaves out what was not said", () => {
    const typed = startOf(lot());
    const body = mixBody({ ...typed, inputs: typed.inputs.map((input) => ({ ...input, how: "all" })) });
    expect(body).toEqual({ material: 1, inputs: [{ lot: 12, all: true, place: 1 }], place: 1, reason: "" });
  });
});

describe("a resin system", () => {
  it("turns degrees exactly", () => {
    expect(inCelsius("77", "F")).toBe("25");
    expect(onScale("25", "F")).toBe("77");
    expect(inCelsius("21.5", "C")).toBe("21.5");
  });

  it("sends a ratio by what was typed, and windows with an open end", () => {
    const [a, b] = NEW_SYSTEM.parts;
    if (!a || !b) throw new Error("a system starts with two parts");
    const body = systemBody(
      {
        ...NEW_SYSTEM,
        parts: [
          { ...a, material: "1", by_volume: "2" },
          { ...b, material: "2", by_volume: "1" },
        ],
        sanded_from: "24",
      },
      "F",
    );
    expect(body).toMatchObject({
      ratio_by_volume: { A: "2", B: "1" },
      ratio_by_mass: null,
      recoat_sanded_h: ["24", null],
      pot_life: null,
    });
  });

  it("finds the field of a refused figure", () => {
    expect(systemField("ratio_by_mass.B")).toBe("parts.1.by_mass");
    expect(systemField("pot_life.at_c")).toBe("pot_at");
    expect(systemField("recoat_tacky_h")).toBe("tacky_from");
    expect(recoatInWords(["24", null])).toBe("after 24 h");
  });
});
