import { expect, it } from "vitest";
import { assumedOf, confirmed, seenBody, seenOn } from "./seen";

const last = {
  conditions: { air_temperature: { value: "70", unit: "F", provenance: "typed" as const } },
  ticks: {
    sanded: { value: true, provenance: "typed" as const },
    torch: { value: false, provenance: "typed" as const },
    mixing_minutes: { value: "4", unit: "min", provenance: "typed" as const },
  },
};
const nothing = { conditions: {}, ticks: {} };

it("sends nothing of what was only filled in", () => {
  expect(assumedOf(last, nothing)).toEqual({
    conditions: { air_temperature: "70" },
    ticks: { sanded: true, mixing_minutes: "4" },
  });
  expect(seenBody(nothing, "F")).toEqual(nothing);
});

it("sends all of it once a person has confirmed it, their own word first", () => {
  const seen = { conditions: { air_temperature: "74" }, ticks: {} };
  expect(seenBody(confirmed(seen, assumedOf(last, seen)), "F")).toEqual({
    conditions: { air_temperature: { value: "74", unit: "F", provenance: "typed" } },
    ticks: {
      sanded: { value: true, provenance: "typed" },
      mixing_minutes: { value: "4", unit: "min", provenance: "typed" },
    },
  });
});

it("leaves out what was cleared or unticked again", () => {
  const seen = { conditions: { humidity: " " }, ticks: { sanded: false, mixing_minutes: "" } };
  expect(seenBody(seen, "C")).toEqual(nothing);
});

it("takes over what a pour has already", () => {
  expect(seenOn(last)).toEqual({
    conditions: { air_temperature: "70" },
    ticks: { sanded: true, torch: false, mixing_minutes: "4" },
  });
});
