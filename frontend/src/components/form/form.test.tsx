import { TextInput } from "@mantine/core";
import { expect, it } from "vitest";
import { useAct } from "@/api/act";
import { show } from "@/test/render";
import { serve, serverIsAway } from "@/test/server";
import { BigButton, Sheet, useSheet } from ".";
import { draftOf, keepDraft } from "./draft";

function Form() {
  const act = useAct("post", "/api/people/");
  const sheet = useSheet({
    act,
    initial: { name: "", username: "", role: "crew" as const, password: "" },
    toBody: (typed) => typed,
    draft: "somebody",
  });
  return (
    <Sheet title="Somebody" sheet={sheet} acts={<BigButton busy={sheet.isPending}>Add</BigButton>}>
      <TextInput label="Name" {...sheet.form.getInputProps("name")} />
      <TextInput label="Sign-in name" {...sheet.form.getInputProps("username")} />
    </Sheet>
  );
}

const refused = {
  status: 400,
  body: {
    type: "/problems/bad-body",
    title: "Some fields need mending",
    detail: "One field needs mending.",
    errors: [
      { pointer: "/username", detail: "Somebody has this name already." },
      { pointer: "/shoe_size", detail: "Nobody asked for this." },
    ],
  },
};

it("marks the refused field, goes to it, and loses nothing that was typed", async () => {
  serve({ "POST /api/people/": refused });
  const { user, getByLabelText, findByText, getByRole } = show(<Form />);
  await user.type(getByLabelText("Name"), "Theo");
  await user.type(getByLabelText("Sign-in name"), "theo");
  await user.click(getByRole("button", { name: "Add" }));
  expect(await findByText("Somebody has this name already.")).toBeVisible();
  expect(getByLabelText("Sign-in name")).toHaveAttribute("aria-invalid", "true");
  expect(getByLabelText("Sign-in name")).toHaveFocus();
  expect(getByLabelText("Name")).toHaveValue("Theo");
  expect(await findByText("Nobody asked for this.")).toBeVisible();
});

it("tries again with the same key after a lost answer, and with another after a change", async () => {
  serverIsAway();
  const { user, getByLabelText, findByRole, getByRole } = show(<Form />);
  await user.type(getByLabelText("Name"), "Theo");
  await user.click(getByRole("button", { name: "Add" }));
  const again = await findByRole("button", { name: "Try again" });

  const sent = serve({ "POST /api/people/": refused });
  await user.click(again);
  await findByRole("alert");
  await user.click(getByRole("button", { name: "Add" }));
  await user.type(getByLabelText("Name"), "dor");
  await user.click(getByRole("button", { name: "Add" }));
  const keys = sent.map(({ headers }) => headers.get("Idempotency-Key"));
  expect(keys).toHaveLength(3);
  expect(keys[0]).toBe(keys[1]);
  expect(keys[2]).not.toBe(keys[0]);
});

it("keeps what was typed through a reload, and forgets it once it is sent", async () => {
  serve({ "POST /api/people/": { status: 201, body: { id: 9 } } });
  const first = show(<Form />);
  await first.user.type(first.getByLabelText("Name"), "Theo");
  first.unmount();

  const second = show(<Form />);
  expect(second.getByLabelText("Name")).toHaveValue("Theo");
  await second.user.click(second.getByRole("button", { name: "Add" }));
  await expect.poll(() => draftOf("somebody")).toEqual({});
});

it("never keeps a password", () => {
  keepDraft("door", { username: "theo", password: "secret", new_password: "secret" });
  expect(draftOf("door")).toEqual({ username: "theo" });
});
