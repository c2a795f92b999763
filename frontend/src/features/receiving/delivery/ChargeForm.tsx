import { useAct } from "@/api/act";
import type { components } from "@/api/schema.gen";
import { DayField } from "@/components/entry/DayField";
import { MoneyField, moneySaid } from "@/components/entry/MoneyField";
import { PickOne } from "@/components/entry/PickOne";
import { useToday } from "@/components/figures";
import { BigButton, OneOf, Sheet, useSheet } from "@/components/form";
import { CHARGES } from "../new/ChargeFields";
import { type Delivery, SPREADS } from "../queries";

/** Freight, duty or a credit whose paper came after the goods. */
export function ChargeForm({ delivery, onDone }: { delivery: Delivery; onDone: () => void }) {
  const today = useToday();
  const sheet = useSheet({
    act: useAct("post", "/api/deliveries/{id}/charges/", { params: { id: delivery.id }, onDone }),
    initial: { kind: "Freight", amount: "", spread_by: "value" as string, charged_on: today },
    toBody: ({ amount, spread_by, ...typed }) => ({
      ...typed,
      amount: moneySaid(amount) ?? amount,
      spread_by: spread_by as components["schemas"]["SpreadByEnum"],
    }),
    draft: `charge-on-delivery-${delivery.id}`,
    check: ({ amount, charged_on }) => ({
      ...(moneySaid(amount) === undefined && { amount: "Type the amount; below zero for a credit." }),
      ...(charged_on === "" && { charged_on: "Say which day its paper bears." }),
    }),
  });
  const { form } = sheet;
  return (
    <Sheet
      sheet={sheet}
      remedies={{ spread_by: ({ spread_by }) => form.setFieldValue("spread_by", String(spread_by)) }}
      acts={<BigButton busy={sheet.isPending}>Book the charge</BigButton>}
    >
      <div className="cells">
        <PickOne label="What for" choices={CHARGES} {...form.getInputProps("kind")} />
        <MoneyField
          label="Amount"
          maySubtract
          description="Below zero for a discount or credit: −12.50."
          {...form.getInputProps("amount")}
        />
        <DayField label="Day on its paper" max={today} {...form.getInputProps("charged_on")} />
      </div>
      <OneOf label="Spread" choices={SPREADS} {...form.getInputProps("spread_by")} />
      {form.errors.spread_by && <p role="alert">{form.errors.spread_by}</p>}
      <p className="soft">
        It goes into what every lot of this delivery costs, and on into what was made of them.
      </p>
    </Sheet>
  );
}
