import { expect, it, vi } from "vitest";
import { Problem, unreachable } from "@/api/problem";
import { show } from "@/test/render";
import { Cautions } from "./Cautions";
import { ProblemNote } from "./ProblemNote";
import { colourOf } from "./Swatch";
import { Why } from "./Why";

const short = new Problem({
  slug: "not-enough-stock",
  title: "There is not enough",
  status: 409,
  detail: "200 mL are missing.",
  remedies: [
    { kind: "use_lot", text: "Take lot 12", lot: 12 },
    { kind: "wait", text: "Wait for the delivery." },
  ],
});

it("says what is short and offers what helps: a button where this page can do it, advice where it cannot", async () => {
  const take = vi.fn();
  const { user, getByRole, getByText, queryByRole } = show(
    <ProblemNote problem={short} remedies={{ use_lot: take }} />,
  );
  expect(getByRole("alert")).toHaveTextContent("200 mL are missing.");
  await user.click(getByRole("button", { name: "Take lot 12" }));
  expect(take).toHaveBeenCalledWith(expect.objectContaining({ lot: 12 }));
  expect(getByText("Wait for the delivery.")).toBeVisible();
  expect(queryByRole("button", { name: "Wait for the delivery." })).toBeNull();
});

it("offers to try again when the server was away, not when it refused", () => {
  const away = show(<ProblemNote problem={unreachable()} onRetry={() => undefined} />);
  expect(away.getByRole("button", { name: "Try again" })).toBeVisible();
  away.unmount();
  expect(
    show(<ProblemNote problem={short} onRetry={() => undefined} />).queryByRole("button", {
      name: "Try again",
    }),
  ).toBeNull();
});

it("opens a figure into how it came about, and closes it again", async () => {
  const { user, getByRole, queryByText } = show(
    <Why figure="6.86" label="how this cost came about">
      resin 152.10
    </Why>,
  );
  const button = getByRole("button", { name: /6\.86.*how this cost came about/ });
  expect(queryByText("resin 152.10")).toBeNull();
  await user.click(button);
  expect(queryByText("resin 152.10")).toBeVisible();
  expect(button).toHaveAttribute("aria-expanded", "true");
  await user.click(button);
  expect(queryByText("resin 152.10")).toBeNull();
});

it("puts the data sheets first, then the act's cautions, then the materials' own", () => {
  const { getByRole } = show(
    <Cautions
      acts={["mix"]}
      materials={[{ name: "Hardener B", cautions: "Amine.", hazard_codes: ["H317", "H999"] }]}
    />,
    { poisonHelp: "555 0100" },
  );
  const note = getByRole("complementary", { name: "Cautions" });
  expect(note).toHaveTextContent(
    /safety data sheets.*come first.*Poison help: 555 0100.*Nitrile gloves.*Hardener B\. Amine\./,
  );
  expect(note).toHaveTextContent("H317: may cause an allergic skin reaction; H999");
});

it("takes a swatch's colour only when it is one", () => {
  expect(colourOf("#1f4e79")).toBe("#1f4e79");
  expect(colourOf("url(x)")).toBeUndefined();
  expect(colourOf("")).toBeUndefined();
});
