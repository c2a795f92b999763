import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, normalize, relative } from "node:path";
import { describe, expect, it } from "vitest";

const ROOT = join(import.meta.dirname, "..");

interface Source {
  path: string;
  text: string;
}

const sources: Source[] = readdirSync(ROOT, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && /\.(tsx?|css)$/.test(entry.name) && entry.name !== "schema.gen.ts")
  .map((entry) => {
    const file = join(entry.parentPath, entry.name);
    return { path: relative(ROOT, file), text: readFileSync(file, "utf8") };
  });
const shipped = sources.filter(({ path }) => !/\.test\.|^test\/|\.css$/.test(path));

/** The files of the front end that a file imports, as paths from src. */
function importsOf({ path, text }: Source): string[] {
  const named = [...text.matchAll(/(?:from|import)\s*\(?\s*"([^"]+)"/g)].map(([, name = ""]) => name);
  return named.flatMap((name) => {
    if (name.startsWith("@/")) return [name.slice(2)];
    return name.startsWith(".") ? [normalize(join(dirname(path), name))] : [];
  });
}

const roomOf = (path: string) => path.split("/")[0] ?? "";
const featureOf = (path: string) => (roomOf(path) === "features" ? path.split("/")[1] : undefined);

/** "file → what it imports", for each import that breaks the rule. */
function astray(files: Source[], isAstray: (from: string, to: string) => boolean): string[] {
  return files.flatMap((file) =>
    importsOf(file)
      .filter((to) => isAstray(file.path, to))
      .map((to) => `${file.path} → ${to}`),
  );
}

describe("the rooms of the front end", () => {
  it("are read by this test, imports and all", () => {
    expect(shipped.length).toBeGreaterThan(60);
    expect(shipped.flatMap(importsOf).length).toBeGreaterThan(100);
  });

  it("api/ and components/, being shared, import no feature and nothing of the app", () =>
    expect(
      astray(
        shipped.filter(({ path }) => ["api", "components"].includes(roomOf(path))),
        (_, to) => ["features", "app"].includes(roomOf(to)),
      ),
      "move what is needed to components/ or api/",
    ).toEqual([]));

  it("a feature imports no other feature and nothing of the app", () =>
    expect(
      astray(
        shipped.filter(({ path }) => featureOf(path)),
        (from, to) =>
          roomOf(to) === "app" || (featureOf(to) !== undefined && featureOf(to) !== featureOf(from)),
      ),
      "a part that two features need moves to components/",
    ).toEqual([]));

  it("components know no address of the API", () =>
    expect(
      shipped.filter(({ path, text }) => roomOf(path) === "components" && /"\/api\//.test(text)),
    ).toEqual([]));

  it("everybody leaves fetching to the one client", () =>
    expect(shipped.filter(({ path, text }) => path !== "api/client.ts" && /\bfetch\(/.test(text))).toEqual(
      [],
    ));

  it("no file has more than 250 lines", () =>
    expect(sources.filter(({ text }) => text.split("\n").length > 251).map(({ path }) => path)).toEqual([]));
});
