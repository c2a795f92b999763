import { expect, it } from "vitest";
import { show } from "@/test/render";
import { FlowList, strength } from "./FlowList";

const ml = (amount: string) => ({ amount, unit: "ml" });

it("draws a line as thick as what flowed", () => {
  expect(strength(ml("100"), 100)).toBe(9);
  expect(strength(ml("0.1"), 100)).toBe(2);
  expect(strength(null, 100)).toBe(2);
  expect(strength(ml("5"), 0)).toBe(2);
});

it("hangs each stop from the one it came from", () => {
  const { getByRole } = show(
    <FlowList
      label="Where lot 12 went"
      stops={[
        {
          key: "p",
          kind: "pour",
          title: "Pour 3",
          to: "/pours/3",
          quantity: ml("295.735295625"),
          next: [{ key: "t", kind: "piece", title: "Island", quantity: ml("295.735295625") }],
        },
      ]}
    />,
  );
  const pour = getByRole("link", { name: "Pour 3" }).closest("li");
  expect(pour).toHaveTextContent(/Pour 310fl oz.*Island10fl oz/);
  expect(pour?.querySelector("ol")).toHaveTextContent("Island");
});
