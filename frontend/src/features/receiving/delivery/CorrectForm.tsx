import { TextInput } from "@mantine/core";
import { useAct } from "@/api/act";
import { useMaterials } from "@/api/records";
import { AmountField, fieldOfAmount, UNSAID, unsaid } from "@/components/entry/AmountField";
import { PickOne } from "@/components/entry/PickOne";
import { WhyField } from "@/components/entry/WhyField";
import { Quantity } from "@/components/figures";
import { BigButton, Sheet, useSheet } from "@/components/form";
import type { Delivery } from "../queries";

/** Another quantity came than was written down. What was paid stays. */
export function CorrectForm({ delivery, onDone }: { delivery: Delivery; onDone: () => void }) {
  const materials = useMaterials();
  const [first, ...others] = delivery.lines;
  const sheet = useSheet({
    act: useAct("post", "/api/deliveries/{id}/correct/", { params: { id: delivery.id }, onDone }),
    initial: {
      line: first && others.length === 0 ? String(first.id) : "",
      quantity: UNSAID,
      containers: "",
      reason: "",
    },
    toBody: ({ line, quantity, containers, reason }) => ({
      lines: [
        {
          line: Number(line),
          quantity: quantity.body ?? quantity.text,
          ...(containers.trim() !== "" && { containers: Number(containers) }),
        },
      ],
      reason,
    }),
    fieldFor: (name) => fieldOfAmount(name).replace(/^lines\.0\./, ""),
    check: ({ line, quantity, reason }) => {
      const said = unsaid(quantity);
      return {
        ...(line === "" && { line: "Say which." }),
        ...(said && { quantity: said }),
        ...(reason.trim() === "" && { reason: "Say what was wrong." }),
      };
    },
  });
  const { form } = sheet;
  const line = delivery.lines.find(({ id }) => String(id) === form.values.line);
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Correct it</BigButton>}>
      <PickOne
        label="Which lot"
        choices={delivery.lines.map(({ id, lot, material }) => ({
          value: String(id),
          label: `Lot ${lot.number}, ${material.name}`,
          swatch: material.swatch,
        }))}
        {...form.getInputProps("line")}
      />
      {line && (
        <>
          <p>
            Written down: <Quantity value={line.as_typed} as="kept" />, {line.containers}{" "}
            {line.containers === 1 ? "container" : "containers"}.
          </p>
          <AmountField
            label="What really came"
            material={materials.find(({ id }) => id === line.material.id) ?? line.material}
            {...form.getInputProps("quantity")}
          />
          <TextInput
            label="Containers"
            description="Empty: their number was right."
            inputMode="numeric"
            {...form.getInputProps("containers")}
          />
        </>
      )}
      <WhyField
        usual={["Short delivered", "Misread the slip", "Entry mistake"]}
        {...form.getInputProps("reason")}
      />
    </Sheet>
  );
}
