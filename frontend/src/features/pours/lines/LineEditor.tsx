import { Button, Checkbox, TextInput } from "@mantine/core";
import type { ReactNode } from "react";
import type { Material } from "@/api/records";
import { AmountField, UNSAID } from "@/components/entry/AmountField";
import { PickOne } from "@/components/entry/PickOne";
import { QuantityField } from "@/components/entry/QuantityField";
import { WhyField } from "@/components/entry/WhyField";
import { useLotsOf } from "../queries";
import type { Line } from "./line";
import classes from "./lines.module.css";
import { useLotChoices } from "./lotChoices";

interface LineEditorProps {
  line: Line;
  material: Material;
  place: number;
  isPlan: boolean;
  errorOf: (field: string) => ReactNode;
  onChange: (changes: Partial<Line>) => void;
  onRemove: () => void;
}

/** The two weights of a container: what was used is the difference. */
function Weighed({ line, errorOf, onChange }: Pick<LineEditorProps, "line" | "errorOf" | "onChange">) {
  const weighed = line.weighed ?? { before: UNSAID, after: UNSAID };
  const weight = (when: "before" | "after", label: string, error?: ReactNode) => (
    <QuantityField
      label={label}
      material="scale"
      units={["g", "lb"]}
      value={weighed[when].text}
      error={error}
      onChange={(text, body) =>
        onChange({ weighed: { ...weighed, [when]: { text, body } }, is_touched: true })
      }
    />
  );
  return (
    <div className={classes.pair}>
      {weight("before", "Container before", errorOf(".weighed"))}
      {weight("after", "Container after")}
    </div>
  );
}

/** What differed about one amount: how much, on the scale or in words, from which lot, whether it was wasted. */
export function LineEditor(props: LineEditorProps) {
  const { line, material, place, isPlan, errorOf, onChange, onRemove } = props;
  const { choices, needsWord } = useLotChoices(useLotsOf(material.id), place);
  const isGone = line.lot !== "" && !choices.some(({ value }) => value === line.lot);
  const asksWhy = line.is_waste || needsWord.has(line.lot);
  return (
    <div className={classes.fields}>
      {line.weighed ? (
        <Weighed line={line} errorOf={errorOf} onChange={onChange} />
      ) : (
        <AmountField
          label="How much"
          material={material}
          value={line.quantity}
          error={errorOf(".quantity") ?? errorOf("")}
          onChange={(quantity) => onChange({ quantity, is_touched: true })}
        />
      )}
      {!isPlan && (
        <Button
          variant="default"
          onClick={() =>
            onChange({ weighed: line.weighed ? null : { before: UNSAID, after: UNSAID }, is_touched: true })
          }
        >
          {line.weighed ? "Say it in words" : "Weighed before and after"}
        </Button>
      )}
      <PickOne
        label="From which lot"
        choices={[
          { value: "any", label: "Let the shelf decide" },
          ...choices,
          ...(isGone ? [{ value: line.lot, label: "As it was recorded" }] : []),
        ]}
        value={line.lot || "any"}
        error={errorOf(".lot")}
        description={
          needsWord.has(line.lot)
            ? isPlan
              ? "Planned only with the owner's reason."
              : "It is recorded, and waits for the owner's reason."
            : undefined
        }
        onChange={(lot) => onChange({ lot: lot === "any" ? "" : lot, is_lot_touched: lot !== "any" })}
      />
      <TextInput
        label="Bucket, where there are several"
        inputMode="numeric"
        autoComplete="off"
        value={line.bucket}
        error={errorOf(".bucket")}
        onChange={(event) => onChange({ bucket: event.currentTarget.value.replace(/\D/g, "") })}
      />
      {!isPlan && (
        <Checkbox
          label="Wasted: it did not go on the top"
          className={classes.tick ?? ""}
          checked={line.is_waste}
          onChange={(event) => onChange({ is_waste: event.currentTarget.checked, is_touched: true })}
        />
      )}
      {asksWhy && (
        <WhyField
          label={line.is_waste ? "Why it was wasted" : "Why this lot was right"}
          value={line.reason}
          error={errorOf(".reason")}
          usual={
            line.is_waste
              ? ["Spilled", "Set in the bucket", "Wrong colour"]
              : ["Tried on a cup first: it set"]
          }
          onChange={(reason) => onChange({ reason })}
        />
      )}
      <Button variant="subtle" c="var(--brick)" onClick={onRemove}>
        Take this line out
      </Button>
    </div>
  );
}
