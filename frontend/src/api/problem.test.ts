import { expect, it } from "vitest";
import { asProblem, fieldName, Problem, problemFrom } from "./problem";

it("reads problem details with their remedies and fields", () => {
  const problem = problemFrom(409, {
    type: "/problems/not-enough-stock",
    title: "There is not enough",
    status: 409,
    detail: "200 mL are missing.",
    remedies: [{ kind: "use_lot", text: "Take lot 12", lot: 12 }],
    errors: [{ pointer: "/usages/0/quantity", detail: "At most 400 mL." }],
    missing: "200",
  });
  expect(problem).toMatchObject({
    slug: "not-enough-stock",
    status: 409,
    detail: "200 mL are missing.",
    extra: { missing: "200" },
  });
  expect(problem.remedies).toEqual([{ kind: "use_lot", text: "Take lot 12", lot: 12 }]);
  expect(problem.fields).toEqual({ "usages.0.quantity": "At most 400 mL." });
});

it.each([
  ["a page of HTML", 502, undefined, "server-fault"],
  ["an empty refusal", 400, undefined, "refused"],
  ["a list", 400, ["no"], "refused"],
  ["wrong kinds inside", 400, { title: 4, remedies: "none", errors: [{ pointer: 1 }, null] }, "refused"],
])("makes something readable of %s", (_, status, body, slug) => {
  const problem = problemFrom(status, body);
  expect(problem.slug).toBe(slug);
  expect(problem.title).not.toBe("");
  expect(problem.detail).not.toBe("");
  expect(problem.remedies).toEqual([]);
  expect(problem.errors).toEqual([]);
});

it.each([
  ["/lines/0/cost", "lines.0.cost"],
  ["#/name", "name"],
  ["/a~1b/c~0d", "a/b.c~d"],
  ["", ""],
])("names the field of %s", (pointer, name) => expect(fieldName(pointer)).toBe(name));

it("keeps a problem as it is and wraps anything else", () => {
  const problem = problemFrom(404, {});
  expect(asProblem(problem)).toBe(problem);
  expect(asProblem(new Error("x is not a function"))).toBeInstanceOf(Problem);
  expect(asProblem(new Error("x is not a function")).detail).toBe("x is not a function");
});
