import { describe, expect, it } from "vitest";
import { balanceAsked } from "./balance/balanceAsked";
import { addsUp, type Balance, ledgerOf, sidesOf } from "./balance/ledger";
import { costView } from "./cost/costView";
import { movementsAsked } from "./movements/movementsAsked";
import { type ExpiringLot, fileOf, type ReorderRow, type Uses } from "./queries";
import { inOrder, runOutWithin } from "./reorder/inOrder";
import { barOf } from "./reorder/PointBar";
import { useBySpans } from "./shelf/useBySpans";
import { sumOf } from "./sums";
import { leftOf, stopsOf } from "./trace/stops";
import { monthLong, monthShort } from "./words";

const params = (text: string) => new URLSearchParams(text);
const ml = (amount: string) => ({ amount, unit: "ml" });
const figure = (amount: string, value = "0") => ({ quantity: ml(amount), value, movements: null });

describe("what an address asks for", () => {
  it("is finished customer work by month, where it says nothing", () => {
    expect(costView(params(""))).toEqual({ group_by: "month", purpose: "customer", state: "finished" });
  });

  it("keeps what is said and drops what is no answer", () => {
    expect(costView(params("group_by=job&state=all&purpose=gift&from=2026-01-01&to=soon"))).toEqual({
      group_by: "job",
      purpose: "customer",
      state: "all",
      from: "2026-01-01",
    });
  });

  it("takes a figure's filters over into the list of in and out", () => {
    expect(
      movementsAsked(params("material=30&kind=used&kind=wasted&kind=eaten&happened_to=2026-11-25")),
    ).toEqual({
      page: 1,
      material: 30,
      kind: ["used", "wasted"],
      happened_to: "2026-11-25",
    });
  });

  it("looks at one lot rather than at a number or material", () => {
    expect(balanceAsked(params("lot=12&material=1"))).toEqual({ lot: 12 });
    expect(balanceAsked(params("lot_number=%20H-7%20"))).toEqual({ lot_number: "H-7" });
    expect(balanceAsked(params(""))).toEqual({});
  });

  it("is the same for the file as for the page", () => {
    expect(fileOf("movements", "csv", { material: 30, kind: ["used", "wasted"], lot: undefined })).toBe(
      "/api/movements/?material=30&kind=used&kind=wasted&format=csv",
    );
  });
});

describe("a balance as a ledger", () => {
  const whole: Balance = {
    figures: {
      opening: figure("0"),
      received: figure("1000", "100"),
      counted_up: figure("20"),
      used: figure("300", "30"),
      wasted: figure("20", "2"),
      on_hand: figure("700", "68"),
    },
    difference: figure("0", "0.0000"),
  };

  it("hangs each bar where the one before ended, and closes on what is here", () => {
    const lines = ledgerOf(whole);
    expect(lines.map(({ key }) => key)).toEqual(["received", "counted_up", "used", "wasted", "on_hand"]);
    const ends = lines.map(({ from, length }) => [from, from + length].map((at) => Math.round(at * 1020)));
    expect(ends).toEqual([
      [0, 1000],
      [1000, 1020],
      [720, 1020],
      [700, 720],
      [0, 700],
    ]);
  });

  it("sums both sides exactly", () => {
    expect(sidesOf(whole)).toEqual({ came: ml("1020"), went: ml("320"), here: ml("700") });
    expect(sumOf(["0.1", "0.2", null, undefined])).toBe("0.3");
  });

  it("does not add up when anything is left over", () => {
    expect(addsUp(whole)).toBe(true);
    expect(addsUp({ ...whole, difference: figure("0.000001") })).toBe(false);
    expect(addsUp({ ...whole, difference: figure("0", "0.0001") })).toBe(false);
  });
});

describe("what to order", () => {
  const row = (name: string, is_below: boolean, runs_out_on: string | null) =>
    ({ material: { name }, is_below, runs_out_on }) as ReorderRow;
  const rows = [row("never", false, null), row("later", false, "2027-03-01"), row("low", true, "2027-06-01")];

  it("comes first, then what runs out next", () => {
    expect(inOrder(rows).map(({ material }) => material.name)).toEqual(["low", "later", "never"]);
    expect(runOutWithin(rows, "2027-02-01", 30).map(({ material }) => material.name)).toEqual(["later"]);
    expect(runOutWithin(rows, "2027-01-01", 30)).toEqual([]);
  });

  it("draws the reorder point within the bar, however low the shelf", () => {
    const bar = { available: ml("10"), on_order: ml("0"), reserved: ml("0"), reorder_point: ml("100") };
    expect(barOf(bar)).toEqual({ available: 8, onOrder: 0, reserved: 0, point: 80 });
    expect(barOf({ ...bar, available: ml("0"), reorder_point: null }).point).toBeNull();
  });
});

it("sorts lots by how soon they pass their use-by, no further than asked", () => {
  const lot = (days_left: number, value: string) => ({ days_left, value }) as ExpiringLot;
  const spans = useBySpans([lot(-3, "5"), lot(0, "1.5"), lot(7, "2"), lot(31, "4")], 60);
  expect(spans.map(({ key, lots, value }) => [key, lots, value])).toEqual([
    ["past", 1, "5"],
    ["week", 2, "3.5"],
    ["month", 0, "0"],
    ["two", 1, "4"],
  ]);
});

describe("a traced lot", () => {
  const name = (id: number) => ({ id, number: id, lot_number: "H-7", material: { id: 2, name: "Hardener" } });
  const uses = {
    lots: [name(5)],
    total: ml("1000"),
    pours: [
      {
        pour: 3,
        number: 31,
        layer: "flood_coat",
        is_redo: false,
        quantity: ml("600"),
        wasted: ml("0"),
        tops: [
          { piece: 8, number: 80, name: "Island", quantity: ml("600"), is_board: false, is_scrapped: true },
        ],
      },
    ],
    rest: [
      { what: "written_off", lot: name(5), place: null, quantity: ml("100") },
      { what: "on_hand", lot: name(5), place: "Shop", quantity: ml("200") },
      { what: "on_hand", lot: name(6), place: "Van", quantity: ml("100") },
    ],
  } as unknown as Uses;

  it("has left what still lies somewhere, mixed into other lots or not", () => {
    expect(leftOf(uses)).toEqual(ml("300"));
  });

  it("flows into its pours and their tops, and says what became of the rest", () => {
    const [lot] = stopsOf(uses, 5);
    expect(lot?.quantity).toEqual(ml("1000"));
    expect(lot?.next?.map(({ title }) => title)).toEqual([
      "Still here",
      "Still here, in lot 6, Hardener",
      "Pour 31, flood coat",
      "Written off",
    ]);
    expect(lot?.next?.[2]?.next).toMatchObject([
      { title: "Island, top 80", to: "/tops/8", note: "scrapped" },
    ]);
  });
});

it("writes months as they fit", () => {
  expect([monthShort("2026-10"), monthLong("2026-10")]).toEqual(["Oct 26", "October 2026"]);
});
