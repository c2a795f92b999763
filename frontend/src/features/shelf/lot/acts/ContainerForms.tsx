import { TextInput } from "@mantine/core";
import { useAct } from "@/api/act";
import { DayField } from "@/components/entry/DayField";
import { PickOne } from "@/components/entry/PickOne";
import { WhyField } from "@/components/entry/WhyField";
import { Quantity, useToday } from "@/components/figures";
import { BigButton, Sheet, useSheet } from "@/components/form";
import type { Lot } from "../../queries";
import { USUAL_MISTAKES } from "../../UndoPosting";

interface ContainerProps {
  lot: Lot;
  /** Also told which lot is open now: a container that was split off has a number of its own. */
  onDone: (said: string, lot?: Lot) => void;
}

/** Opens one container of several, or the only one. Its opened life begins. */
export function Open({ lot, onDone }: ContainerProps) {
  const today = useToday();
  const sheet = useSheet({
    act: useAct("post", "/api/lots/{id}/open/", {
      params: { id: lot.id },
      onDone: (opened) => onDone(`Open: lot ${opened.number}.`, opened),
    }),
    initial: {
      opened_on: today,
      containers: "1",
      place: lot.places.length === 1 ? String(lot.places[0]?.place ?? "") : "",
    },
    toBody: ({ opened_on, containers, place }) => ({
      opened_on,
      containers: Number(containers),
      ...(place !== "" && { place: Number(place) }),
    }),
    check: ({ containers, place }) => ({
      ...(!/^[1-9]\d*$/.test(containers) && { containers: "Type a whole number." }),
      ...(place === "" && lot.places.length > 1 && { place: "It lies in several places. Say where." }),
    }),
  });
  const { form } = sheet;
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Open it</BigButton>}>
      <div className="cells">
        <DayField label="Opened on" max={today} {...form.getInputProps("opened_on")} />
        {lot.containers > 1 && (
          <TextInput
            label={`How many of the ${lot.containers}`}
            inputMode="numeric"
            description="They get a number of their own; the others stay sealed."
            {...form.getInputProps("containers")}
          />
        )}
        {lot.places.length > 1 && (
          <PickOne
            label="Where"
            choices={lot.places.map(({ place, name }) => ({ value: String(place), label: name }))}
            {...form.getInputProps("place")}
          />
        )}
      </div>
    </Sheet>
  );
}

/** It was not opened after all. */
export function CloseAgain({ lot, onDone }: ContainerProps) {
  const sheet = useSheet({
    act: useAct("post", "/api/lots/{id}/undo-opening/", {
      params: { id: lot.id },
      onDone: (closed) => onDone("Closed again.", closed),
    }),
    initial: { reason: "" },
    toBody: (typed) => typed,
    check: ({ reason }) => ({ ...(reason.trim() === "" && { reason: "Say what was wrong." }) }),
  });
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Not opened after all</BigButton>}>
      <WhyField usual={USUAL_MISTAKES} {...sheet.form.getInputProps("reason")} />
    </Sheet>
  );
}

/** The pail is empty, whatever the book says. */
export function Empty({ lot, onDone }: ContainerProps) {
  const sheet = useSheet({
    act: useAct("post", "/api/lots/{id}/empty/", { params: { id: lot.id }, onDone: () => onDone("Empty.") }),
    initial: { reason: "", place: "" },
    toBody: ({ reason, place }) => ({ reason, ...(place !== "" && { place: Number(place) }) }),
  });
  const { form } = sheet;
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>The pail is empty</BigButton>}>
      <p>
        The book still has <Quantity value={lot.on_hand} />. That stayed in the pail: it becomes waste of the
        pours that used this lot, each its share.
      </p>
      {lot.places.length > 1 && (
        <PickOne
          label="Only at"
          mayClear
          placeholder="everywhere"
          choices={lot.places.map(({ place, name }) => ({ value: String(place), label: name }))}
          {...form.getInputProps("place")}
        />
      )}
      <WhyField label="Why, if it matters" {...form.getInputProps("reason")} />
    </Sheet>
  );
}

/** Mends what was read wrong from the label. */
export function MendLabel({ lot, onDone }: ContainerProps) {
  const today = useToday();
  const sheet = useSheet({
    act: useAct("patch", "/api/lots/{id}/", {
      params: { id: lot.id },
      keepsVersion: true,
      onDone: () => onDone("Label corrected."),
    }),
    initial: {
      lot_number: lot.is_own_number ? "" : lot.lot_number,
      made_on: lot.made_on ?? "",
      expires_on: lot.expires_on ?? "",
      containers: String(lot.containers),
    },
    toBody: ({ lot_number, made_on, expires_on, containers }) => ({
      ...(lot_number.trim() !== "" && { lot_number }),
      ...(made_on !== (lot.made_on ?? "") && { made_on: made_on || null }),
      ...(expires_on !== (lot.expires_on ?? "") && { expires_on: expires_on || null }),
      containers: Number(containers),
    }),
    check: ({ containers }) => ({
      ...(!/^[1-9]\d*$/.test(containers) && { containers: "Type a whole number." }),
    }),
  });
  const { form } = sheet;
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Correct the label</BigButton>}>
      <div className="cells">
        <TextInput
          label="Number on the label"
          description={lot.is_own_number ? `Empty: it keeps the shop's own, ${lot.lot_number}.` : undefined}
          {...form.getInputProps("lot_number")}
        />
        <DayField label="Made on" max={today} {...form.getInputProps("made_on")} />
        <DayField label="Expires on" {...form.getInputProps("expires_on")} />
        <TextInput label="Containers" inputMode="numeric" {...form.getInputProps("containers")} />
      </div>
    </Sheet>
  );
}
