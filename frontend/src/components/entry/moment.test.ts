import { expect, it } from "vitest";
import { momentAt, onTheClock } from "./moment";

const CHICAGO = "America/Chicago";

it("reads the shop's clock, summer and winter", () => {
  expect(momentAt("2026-11-25T14:20", CHICAGO)).toBe("2026-11-25T20:20:00.000Z");
  expect(momentAt("2026-07-01T14:20", CHICAGO)).toBe("2026-07-01T19:20:00.000Z");
  expect(momentAt("2026-11-25T14:20", "Asia/Kolkata")).toBe("2026-11-25T08:50:00.000Z");
});

it("gives back what was typed, also around the hour that is skipped or comes twice", () => {
  for (const local of ["2026-03-08T01:59", "2026-03-08T03:00", "2026-11-01T00:59", "2026-11-01T02:00"]) {
    expect(onTheClock(momentAt(local, CHICAGO), CHICAGO)).toBe(local);
  }
});

it("makes nothing of what is no time", () => {
  expect(momentAt("", CHICAGO)).toBeUndefined();
  expect(momentAt("soon", CHICAGO)).toBeUndefined();
  expect(onTheClock(null, CHICAGO)).toBe("");
});
