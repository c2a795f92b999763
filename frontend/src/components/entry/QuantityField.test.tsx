import { useState } from "react";
import { expect, it, vi } from "vitest";
import { show } from "@/test/render";
import { QuantityField } from "./QuantityField";

function Field({ onBody }: { onBody: (body: unknown) => void }) {
  const [text, setText] = useState("");
  return (
    <QuantityField
      label="Flood resin A"
      material="7"
      value={text}
      units={["fl_oz", "ml"]}
      measures={["pump"]}
      onChange={(next, body) => {
        setText(next);
        onBody(body);
      }}
    />
  );
}

it("sends the words that were typed", async () => {
  const onBody = vi.fn();
  const { user, getByLabelText } = show(<Field onBody={onBody} />);
  await user.type(getByLabelText("Flood resin A"), "1 1/2 cups");
  expect(onBody).toHaveBeenLastCalledWith("1 1/2 cups");
});

it("takes the unit from one tap", async () => {
  const onBody = vi.fn();
  const { user, getByLabelText, getByRole } = show(<Field onBody={onBody} />);
  await user.type(getByLabelText("Flood resin A"), "3");
  await user.click(getByRole("button", { name: "pump" }));
  expect(onBody).toHaveBeenLastCalledWith("3 pump");
});

it("asks once what oz means for a material, and remembers it", async () => {
  const onBody = vi.fn();
  const first = show(<Field onBody={onBody} />);
  await first.user.type(first.getByLabelText("Flood resin A"), "32 oz");
  expect(onBody).toHaveBeenLastCalledWith(undefined);
  await first.user.click(first.getByRole("button", { name: "oz by weight" }));
  expect(onBody).toHaveBeenLastCalledWith("32 oz by weight");
  first.unmount();

  const again = show(<Field onBody={onBody} />);
  await again.user.type(again.getByLabelText("Flood resin A"), "5 oz");
  expect(onBody).toHaveBeenLastCalledWith("5 oz by weight");
});

it("says in the field what it cannot understand, once the field is left", async () => {
  const { user, getByLabelText, queryByText } = show(<Field onBody={() => undefined} />);
  await user.type(getByLabelText("Flood resin A"), "3 blobs");
  expect(queryByText(/no unit known here/)).toBeNull();
  await user.tab();
  expect(queryByText(/no unit known here/)).toBeInTheDocument();
});
