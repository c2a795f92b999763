import { TextInput } from "@mantine/core";
import type { UseFormReturnType } from "@mantine/form";
import { useState } from "react";
import type { Material } from "@/api/records";
import { AmountField, UNSAID } from "@/components/entry/AmountField";
import { Quantity } from "@/components/figures";
import { StatusMark } from "@/components/notes/StatusMark";
import { Swatch } from "@/components/notes/Swatch";
import type { LotRow } from "../queries";
import { onLabel } from "../shelfView";
import classes from "./count.module.css";
import { bookAt, type Counts, differenceTo, isCounted, NOT_COUNTED } from "./counting";

export interface CountTyped extends Record<string, unknown> {
  counts: Counts;
  reason: string;
}

interface CountLineProps {
  lot: LotRow;
  place: number;
  material: Material | undefined;
  form: UseFormReturnType<CountTyped>;
}

/** One lot to count. What the book says stays hidden until the count is said, so that nobody counts towards it. */
export function CountLine({ lot, place, material, form }: CountLineProps) {
  const counted = form.values.counts[lot.id] ?? NOT_COUNTED;
  const [isLeft, setLeft] = useState(isCounted(counted));
  const name = `counts.${lot.id}`;
  const book = bookAt(lot, place);
  const difference = differenceTo(counted, book);
  const differs = difference !== null && difference.amount !== "0";
  const isShown = isLeft && isCounted(counted);
  return (
    <li className={classes.line} data-counted={isShown || undefined}>
      <div className={classes.lot}>
        <Swatch colour={lot.material.swatch} />
        <span>
          <strong>Lot {lot.number}</strong> {lot.material.name}
          <small>
            {onLabel(lot)}
            {lot.opened_on && " · open"}
          </small>
        </span>
        <button
          type="button"
          className={classes.none}
          aria-pressed={counted.isNone}
          onClick={() => {
            setLeft(true);
            form.setFieldValue("counts", {
              ...form.getValues().counts,
              [lot.id]: { ...counted, isNone: !counted.isNone, said: UNSAID },
            });
          }}
        >
          None left<span className="only-read-aloud"> of lot {lot.number}</span>
        </button>
      </div>
      <div>
        {counted.isNone ? (
          <p className={classes.noneSaid}>None left</p>
        ) : (
          <AmountField
            label={`Counted of lot ${lot.number}`}
            material={material ?? { id: lot.material.id, stock_unit: lot.material.stock_unit }}
            onLeave={() => setLeft(true)}
            {...form.getInputProps(`${name}.said`)}
          />
        )}
      </div>
      {isShown && (
        <div className={classes.book} aria-live="polite">
          <span>
            Book <Quantity value={book} />
          </span>
          {difference === null ? (
            <span className="soft">difference known once posted</span>
          ) : differs ? (
            <span>
              <StatusMark mark="look">difference</StatusMark> <Quantity value={difference} />
            </span>
          ) : (
            <StatusMark mark="ok">as in the book</StatusMark>
          )}
          {differs && (
            <TextInput
              label={`Why lot ${lot.number} differs`}
              autoComplete="off"
              {...form.getInputProps(`${name}.reason`)}
            />
          )}
        </div>
      )}
    </li>
  );
}
