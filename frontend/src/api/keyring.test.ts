import { expect, it } from "vitest";
import { createKeyring, randomKey } from "./keyring";

it("makes version 4 identifiers that differ", () => {
  const keys = new Set(Array.from({ length: 200 }, randomKey));
  expect(keys.size).toBe(200);
  for (const key of keys)
    expect(key).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
});

it("keeps the key while the same form is tried again", () => {
  const ring = createKeyring();
  expect(ring.keyFor({ quantity: "32 fl oz" })).toBe(ring.keyFor({ quantity: "32 fl oz" }));
});

it("takes another key for another form, and for the same words after the work is done", () => {
  const ring = createKeyring();
  const first = ring.keyFor({ quantity: "32 fl oz" });
  expect(ring.keyFor({ quantity: "33 fl oz" })).not.toBe(first);
  const last = ring.keyFor({ quantity: "33 fl oz" });
  ring.done();
  expect(ring.keyFor({ quantity: "33 fl oz" })).not.toBe(last);
});
