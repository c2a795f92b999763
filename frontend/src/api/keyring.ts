/**
 * A random identifier (UUID version 4, RFC 9562). `crypto.randomUUID` is missing on a plain http:// address in the shop's
 * own network, `getRandomValues` is not.
 */
export function randomKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x40;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}

export interface Keyring {
  /** The key for this body: the same one again while the body is the same and nothing has come of it yet. */
  keyFor(body: unknown): string;
  /** The work is done: the next submit is another piece of work, even with the same words. */
  done(): void;
}

/** Keeps one Idempotency-Key per typed form, so that pressing again after a lost answer posts nothing twice. */
export function createKeyring(): Keyring {
  let kept: { body: string; key: string } | undefined;
  return {
    keyFor(body) {
      const text = JSON.stringify(body) ?? "";
      if (kept?.body !== text) kept = { body: text, key: randomKey() };
      return kept.key;
    },
    done() {
      kept = undefined;
    },
  };
}
