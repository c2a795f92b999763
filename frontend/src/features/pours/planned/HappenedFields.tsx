import { Button, Textarea } from "@mantine/core";
import type { ReactNode } from "react";
import { MomentField } from "@/components/entry/MomentField";
import { onTheClock } from "@/components/entry/moment";
import { PickOne } from "@/components/entry/PickOne";
import { QuantityField } from "@/components/entry/QuantityField";
import { useWays } from "@/components/figures";
import { Part } from "@/components/page";
import { coatLabel, topsInWords } from "@/components/pours/words";
import classes from "../pours.module.css";
import { type Pour, usePours } from "../queries";
import { PeoplePick } from "../seen/PeoplePick";
import { SeenFields } from "../seen/SeenFields";
import { type Happened, NO_LEFTOVER } from "./account";

type Around = Omit<Happened, "usages">;

export interface HappenedFieldsProps {
  typed: Around;
  set: <Field extends keyof Around>(field: Field, value: Around[Field]) => void;
  errorOf: (field: string) => ReactNode;
  last: Pour | undefined;
  /** What holds where no time is said. */
  otherwise: string;
  /** This pour, which its left-over cannot go to. */
  pour?: number;
}

function LeftOver({
  typed,
  set,
  errorOf,
  pour,
}: Pick<HappenedFieldsProps, "typed" | "set" | "errorOf" | "pour">) {
  const { units } = useWays();
  const { data } = usePours({ status: ["completed"], ordering: ["-poured_at"], page_size: 20 });
  const { leftover } = typed;
  if (!leftover) {
    return (
      <div>
        <Button variant="default" onClick={() => set("leftover", NO_LEFTOVER)}>
          Some was left in the bucket
        </Button>
      </div>
    );
  }
  const others = (data?.results ?? []).filter(({ id }) => id !== pour);
  return (
    <div className={classes.part}>
      <QuantityField
        label="Left over, of all that was mixed"
        material="left over"
        units={[units.volume, "g"]}
        value={leftover.quantity.text}
        error={errorOf("leftover.quantity") ?? errorOf("leftover")}
        onChange={(text, body) => set("leftover", { ...leftover, quantity: { text, body } })}
      />
      <PickOne
        label="Where it went"
        value={leftover.went_to}
        choices={[
          { value: "bin", label: "Into the bin" },
          ...others.map(({ id, number, layer, pieces }) => ({
            value: String(id),
            label: `Onto pour ${number}`,
            note: `${coatLabel(layer)} on ${topsInWords(pieces)}`,
          })),
        ]}
        error={errorOf("leftover.went_to")}
        onChange={(went_to) => set("leftover", { ...leftover, went_to })}
      />
      <div>
        <Button variant="subtle" c="var(--brick)" onClick={() => set("leftover", null)}>
          Nothing was left
        </Button>
      </div>
    </div>
  );
}

/** What was around the pour: when, who, the room, what was left. */
export function HappenedFields({ typed, set, errorOf, last, otherwise, pour }: HappenedFieldsProps) {
  const { timeZone } = useWays();
  return (
    <>
      <SeenFields seen={typed.seen} onChange={(seen) => set("seen", seen)} last={last} />
      <Part title="When and who">
        <div className={classes.part}>
          <div id="poured-at">
            <MomentField
              label="Poured at"
              value={typed.poured_at}
              max={onTheClock(new Date().toISOString(), timeZone)}
              description={typed.poured_at === "" ? `Left empty: ${otherwise}.` : undefined}
              error={errorOf("poured_at")}
              onChange={(local) => set("poured_at", local)}
            />
          </div>
          <PeoplePick
            chosen={typed.people}
            onChange={(people) => set("people", people)}
            legend="Who poured"
          />
          <Textarea
            label="Note"
            autosize
            minRows={1}
            maxRows={8}
            value={typed.note}
            error={errorOf("note")}
            onChange={(event) => set("note", event.currentTarget.value)}
          />
        </div>
      </Part>
      <Part title="Left over">
        <LeftOver typed={typed} set={set} errorOf={errorOf} {...(pour !== undefined && { pour })} />
      </Part>
    </>
  );
}
