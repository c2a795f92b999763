import { expect, it } from "vitest";
import { show } from "@/test/render";
import { LotRow } from "./LotRow";
import { levelInWords, SECTIONS, shapeFor, surfaceAt } from "./shapes";
import { vesselInWords } from "./Vessel";

it.each([
  [0, "empty"],
  [0.03, "nearly empty"],
  [0.34, "about a third left"],
  [0.5, "about half left"],
  [0.62, "about two thirds left"],
  [0.99, "full"],
])("says a level of %d as %s", (level, words) => expect(levelInWords(level)).toBe(words));

it("draws the surface between floor and brim, never outside", () => {
  for (const section of Object.values(SECTIONS)) {
    expect(surfaceAt(section, 0)).toBe(section.floor);
    expect(surfaceAt(section, 1)).toBe(section.brim);
    expect(surfaceAt(section, 1.4)).toBe(section.brim);
    expect(surfaceAt(section, -1)).toBe(section.floor);
  }
});

it("knows what a kind of material comes in", () => {
  expect(shapeFor("hardener")).toBe("pail");
  expect(shapeFor("powder")).toBe("jar");
  expect(shapeFor("consumable")).toBe("box");
});

it("says everything that it shows", () =>
  expect(
    vesselInWords({
      name: "Lot 12",
      shape: "pail",
      level: 0.34,
      isOpen: true,
      status: "on_hold",
      isExpired: true,
      useBy: "2027-03-12",
    }),
  ).toBe("Lot 12: about a third left, open, on hold, past its use-by, use by 12 Mar 2027"));

it("stands in a list with its figure in the shop's unit and its sign as a word", () => {
  const { getByText, getByRole } = show(
    <LotRow
      name="Lot 12"
      shape="pail"
      level={1}
      status="rejected"
      to="/shelf/lots/12"
      onHand={{ amount: "946.352946", unit: "ml" }}
    />,
  );
  expect(getByRole("link", { name: "Lot 12" })).toHaveAttribute("href", "/shelf/lots/12");
  expect(getByText("Rejected")).toBeVisible();
  expect(getByText("32")).toBeVisible();
  expect(getByRole("img", { name: /rejected/ })).toBeInTheDocument();
});
