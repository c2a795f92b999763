import { Button } from "@mantine/core";
import type { UseFormReturnType } from "@mantine/form";
import { MoneyField } from "@/components/entry/MoneyField";
import { PickOne } from "@/components/entry/PickOne";
import { OneOf } from "@/components/form";
import { SPREADS } from "../queries";
import classes from "../receiving.module.css";
import { type DeliveryTyped, NEW_CHARGE } from "./typed";

export const CHARGES = ["Freight", "Duty", "Handling", "Discount"].map((kind) => ({
  value: kind,
  label: kind,
}));

/** Freight, duty, handling and discounts: each becomes part of what the lots cost. */
export function ChargeFields({ form }: { form: UseFormReturnType<DeliveryTyped> }) {
  const { charges } = form.values;
  return (
    <>
      {charges.map(({ kind }, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a charge has nothing of its own until it is typed
        <section key={i} className={classes.line} aria-label={`Charge ${i + 1}`}>
          <div className="cells" style={{ "--cell-width": "150px" } as React.CSSProperties}>
            <PickOne label="What for" choices={CHARGES} {...form.getInputProps(`charges.${i}.kind`)} />
            <MoneyField
              label="Amount"
              maySubtract
              description={kind === "Discount" ? "Below zero: −12.50." : undefined}
              {...form.getInputProps(`charges.${i}.amount`)}
            />
          </div>
          <OneOf label="Spread" choices={SPREADS} {...form.getInputProps(`charges.${i}.spread_by`)} />
          <Button variant="default" onClick={() => form.removeListItem("charges", i)}>
            Take it out<span className="only-read-aloud">: {kind}</span>
          </Button>
        </section>
      ))}
      <Button variant="default" onClick={() => form.insertListItem("charges", { ...NEW_CHARGE })}>
        Add freight, duty or a discount
      </Button>
    </>
  );
}
