import { expect, it } from "vitest";
import { show } from "@/test/render";
import { Day, dayInWords, dayOf, daysAway } from "./Day";
import { Money } from "./Money";
import { Quantity } from "./Quantity";

it("writes an amount in the shop's unit, with the exact one behind it", () => {
  const { container } = show(<Quantity value={{ amount: "3785.411784", unit: "ml" }} />);
  expect(container).toHaveTextContent("128fl oz");
  expect(container.querySelector("[title]")).toHaveAttribute("title", "3785.411784 mL");
});

it("keeps the server's unit where that is asked for, and marks what is about right", () => {
  const { container } = show(<Quantity value={{ amount: "500", unit: "ml" }} as="kept" isApproximate />);
  expect(container).toHaveTextContent("~500mL");
});

it("writes nothing where there is no amount and no money", () => {
  const { container } = show(
    <>
      <Quantity value={null} />
      <Money value={undefined} />
    </>,
  );
  expect(container.querySelectorAll("span")).toHaveLength(0);
});

it("rounds money to the currency's places without losing a digit on the way", () => {
  expect(show(<Money value="1234567.8950" />).container).toHaveTextContent("$1,234,567.90");
  expect(show(<Money value="-12.5" />).container).toHaveTextContent("−$12.50");
  expect(show(<Money value="1200" />, { currency: "JPY" }).container).toHaveTextContent("¥1,200");
});

it("keeps money off the screen while a customer is looking", () => {
  const { container } = show(<Money value="12.5" />, { showsMoney: false });
  expect(container).toHaveTextContent("hidden");
  expect(container.innerHTML).not.toContain("12.5");
});

it("writes days as they are, in no time zone at all", () => {
  expect(dayInWords("2027-03-12")).toBe("12 Mar 2027");
  expect(show(<Day value="2027-01-01" />).container).toHaveTextContent("1 Jan 2027");
});

it("takes the day of a moment from the shop's clock", () => {
  const moment = new Date("2026-11-25T03:00:00Z");
  expect(dayOf(moment, "America/Denver")).toBe("2026-11-24");
  expect(dayOf(moment, "UTC")).toBe("2026-11-25");
});

it.each([
  ["2026-11-25", "today"],
  ["2026-11-26", "tomorrow"],
  ["2026-11-24", "yesterday"],
  ["2026-12-07", "in 12 days"],
  ["2026-11-01", "24 days ago"],
])("counts how far %s is away", (day, away) => expect(daysAway(day, "2026-11-25")).toBe(away));
