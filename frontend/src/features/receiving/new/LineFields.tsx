import { Button, TextInput } from "@mantine/core";
import type { UseFormReturnType } from "@mantine/form";
import type { Material, Pack } from "@/api/records";
import { AmountField } from "@/components/entry/AmountField";
import { MoneyField } from "@/components/entry/MoneyField";
import { PickOne } from "@/components/entry/PickOne";
import classes from "../receiving.module.css";
import { LabelFields } from "./LabelFields";
import { TermsKeys } from "./TermsKeys";
import { type DeliveryTyped, labelsFor, materialOf, packOf } from "./typed";

interface LineFieldsProps {
  form: UseFormReturnType<DeliveryTyped>;
  index: number;
  packs: readonly Pack[];
  materials: readonly Material[];
  /** Whether the person gives prices; crew does not. */
  givesMoney: boolean;
}

/** What came, as the supplier sells it: packs of whom it is, or of all while nobody is named; and any material. */
function offers(supplier: string, packs: readonly Pack[], materials: readonly Material[]) {
  const own = packs.filter((pack) => supplier === "" || String(pack.supplier.id) === supplier);
  return [
    ...own.map((pack) => ({
      value: `pack:${pack.id}`,
      label: pack.name,
      swatch: pack.contents[0]?.material.swatch ?? null,
      note: pack.contents.map(({ material }) => material.name).join(" + "),
    })),
    ...materials.map((material) => ({
      value: `material:${material.id}`,
      label: `${material.name}, loose`,
      swatch: material.swatch,
      note: "by amount, not by pack",
    })),
  ];
}

/** One line of a delivery: what, how many, what stands on its labels, and what it cost. */
export function LineFields({ form, index, packs, materials, givesMoney }: LineFieldsProps) {
  const { supplier, lines } = form.values;
  const line = lines[index];
  if (!line) return null;
  const at = `lines.${index}`;
  const pack = packOf(line.what, packs);
  const material = materials.find(({ id }) => id === materialOf(line.what));
  const name = pack?.name ?? material?.name ?? `line ${index + 1}`;

  function choose(what: string) {
    const chosen = packOf(what, packs);
    form.setFieldValue(at, { ...line, what, contents: chosen ? labelsFor(chosen) : [] });
    if (chosen && supplier === "") form.setFieldValue("supplier", String(chosen.supplier.id));
  }

  return (
    <section className={classes.line} aria-label={`Line ${index + 1}`}>
      <div className={pack ? classes.top : undefined}>
        <PickOne
          label="What came"
          choices={offers(supplier, packs, materials)}
          {...form.getInputProps(`${at}.what`)}
          onChange={choose}
        />
        {pack && <TextInput label="How many" inputMode="numeric" {...form.getInputProps(`${at}.count`)} />}
      </div>
      {material && (
        <AmountField label="Amount in all" material={material} {...form.getInputProps(`${at}.quantity`)} />
      )}
      {material && (
        <LabelFields
          form={form}
          at={at}
          name={material.name}
          swatch={material.swatch}
          containers="Containers"
        />
      )}
      {pack?.contents.map((content, i) => (
        <LabelFields
          key={content.material.id}
          form={form}
          at={`${at}.contents.${i}`}
          name={content.material.name}
          swatch={content.material.swatch}
          containers="Containers of it in all"
        />
      ))}
      {givesMoney && (pack || material) && (
        <div className={classes.terms}>
          <TermsKeys name={name} {...form.getInputProps(`${at}.terms`)} />
          {line.terms === "paid" && (
            <MoneyField label="Cost of this line" {...form.getInputProps(`${at}.cost`)} />
          )}
        </div>
      )}
      {lines.length > 1 && (
        <Button variant="default" onClick={() => form.removeListItem("lines", index)}>
          Take this line out<span className="only-read-aloud">: {name}</span>
        </Button>
      )}
    </section>
  );
}
