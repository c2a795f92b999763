import { Button, TextInput } from "@mantine/core";
import type { UseFormReturnType } from "@mantine/form";
import { useAct } from "@/api/act";
import { api } from "@/api/query";
import { useMaterials, useSuppliers } from "@/api/records";
import { AmountField, fieldOfAmount, type Said, UNSAID, unsaid } from "@/components/entry/AmountField";
import { MoneyField, moneySaid } from "@/components/entry/MoneyField";
import { PickOne } from "@/components/entry/PickOne";
import { unitShown } from "@/components/figures";
import { BigButton, Sheet, useSheet } from "@/components/form";
import { ArchiveAct } from "./ArchiveAct";
import classes from "./around.module.css";

interface ContentTyped {
  material: string;
  quantity: Said;
  cost_share_percent: string;
}

interface PackTyped extends Record<string, unknown> {
  supplier: string;
  name: string;
  price: string;
  contents: ContentTyped[];
}

const NEW_CONTENT: ContentTyped = { material: "", quantity: UNSAID, cost_share_percent: "" };

function toBody({ supplier, name, price, contents }: PackTyped) {
  return {
    supplier: Number(supplier),
    name,
    price: price.trim() === "" ? null : (moneySaid(price) ?? price),
    contents: contents.map(({ material, quantity, cost_share_percent }) => ({
      material: Number(material),
      quantity: quantity.body ?? quantity.text,
      cost_share_percent: cost_share_percent.trim() === "" ? null : cost_share_percent,
    })),
  };
}

function check({ supplier, name, contents }: PackTyped) {
  const wrong: Record<string, string> = {};
  if (supplier === "") wrong.supplier = "Say who sells it.";
  if (name.trim() === "") wrong.name = "Say what it is called.";
  contents.forEach(({ material, quantity }, i) => {
    if (material === "") wrong[`contents.${i}.material`] = "Say what is inside.";
    const said = unsaid(quantity);
    if (said) wrong[`contents.${i}.quantity`] = said;
  });
  return wrong;
}

function Content({ form, index }: { form: UseFormReturnType<PackTyped>; index: number }) {
  const materials = useMaterials();
  const at = `contents.${index}`;
  const chosen = form.values.contents[index]?.material;
  const material = materials.find(({ id }) => String(id) === chosen);
  const isKit = form.values.contents.length > 1;
  return (
    <div className={classes.content}>
      <PickOne
        label="Inside is"
        choices={materials.map(({ id, name, swatch }) => ({ value: String(id), label: name, swatch }))}
        {...form.getInputProps(`${at}.material`)}
      />
      {material && (
        <AmountField
          label="Amount in one pack"
          material={material}
          {...form.getInputProps(`${at}.quantity`)}
        />
      )}
      {isKit && (
        <>
          <TextInput
            label="Share of the price, in %"
            description="Empty: by last prices, else by weight."
            inputMode="decimal"
            {...form.getInputProps(`${at}.cost_share_percent`)}
          />
          <Button variant="default" onClick={() => form.removeListItem("contents", index)}>
            Take out<span className="only-read-aloud"> {material?.name}</span>
          </Button>
        </>
      )}
    </div>
  );
}

function Fields({ form }: { form: UseFormReturnType<PackTyped> }) {
  const suppliers = useSuppliers();
  return (
    <div className={classes.stack}>
      <div className="cells">
        <TextInput label="Name" autoComplete="off" {...form.getInputProps("name")} />
        <PickOne
          label="Sold by"
          choices={suppliers.map(({ id, name }) => ({ value: String(id), label: name }))}
          {...form.getInputProps("supplier")}
        />
        <MoneyField label="Usual price" description="May stay empty." {...form.getInputProps("price")} />
      </div>
      {form.values.contents.map((_, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a content has nothing of its own until it is chosen
        <Content key={index} form={form} index={index} />
      ))}
      <Button variant="default" onClick={() => form.insertListItem("contents", { ...NEW_CONTENT })}>
        More inside: it is a kit
      </Button>
    </div>
  );
}

/** A pack that a supplier sells. */
export function AddPack({ onDone }: { onDone: () => void }) {
  const sheet = useSheet({
    act: useAct("post", "/api/packs/", { onDone }),
    initial: { supplier: "", name: "", price: "", contents: [NEW_CONTENT] } as PackTyped,
    toBody,
    draft: "pack-new",
    fieldFor: fieldOfAmount,
    check,
  });
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Add the pack</BigButton>}>
      <Fields form={sheet.form} />
    </Sheet>
  );
}

/** What was delivered already stays as it was. */
export function ChangePack({ id, onDone }: { id: number; onDone: () => void }) {
  const now = api.useSuspenseQuery("get", "/api/packs/{id}/", { params: { path: { id } } }).data;
  const options = { params: { id }, onDone };
  const archive = useAct("post", "/api/packs/{id}/archive/", options);
  const unarchive = useAct("post", "/api/packs/{id}/unarchive/", options);
  const sheet = useSheet({
    act: useAct("patch", "/api/packs/{id}/", { ...options, keepsVersion: true }),
    initial: {
      supplier: String(now.supplier.id),
      name: now.name,
      price: now.price ?? "",
      contents: now.contents.map(({ material, as_typed, cost_share_percent }) => ({
        material: String(material.id),
        quantity: { text: `${as_typed.amount} ${unitShown(as_typed.unit)}`, body: as_typed },
        cost_share_percent: cost_share_percent ?? "",
      })),
    } as PackTyped,
    toBody,
    fieldFor: fieldOfAmount,
    check,
  });
  return (
    <>
      <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Save</BigButton>}>
        <Fields form={sheet.form} />
      </Sheet>
      <ArchiveAct isArchived={now.is_archived} archive={archive} unarchive={unarchive} />
    </>
  );
}
