import { useAct } from "@/api/act";
import { usePlaces } from "@/api/records";
import { useIsOwner } from "@/api/session";
import { MoneyField, moneySaid } from "@/components/entry/MoneyField";
import { PickOne } from "@/components/entry/PickOne";
import { WhyField } from "@/components/entry/WhyField";
import { useWays } from "@/components/figures";
import { BigButton, OneOf, Sheet, useSheet } from "@/components/form";
import { checkTaken, fieldOfTaken, HowMuch, type LotActProps, takenBody, takenFrom } from "./HowMuch";

const NO_WHY = "Say why.";

/** Takes out of the book what is good for nothing any more. */
export function WriteOff({ lot, material, onDone }: LotActProps) {
  const { timeZone } = useWays();
  const act = useAct("post", "/api/lots/{id}/write-off/", {
    params: { id: lot.id },
    onDone: () => onDone("Written off."),
  });
  const sheet = useSheet({
    act,
    initial: { ...takenFrom(lot), reason: "" },
    toBody: ({ reason, ...taken }) => ({ ...takenBody(taken, timeZone), reason }),
    fieldFor: fieldOfTaken,
    check: (typed) => ({ ...checkTaken(typed, lot), ...(typed.reason.trim() === "" && { reason: NO_WHY }) }),
  });
  return (
    <Sheet
      sheet={sheet}
      acts={
        <BigButton tone="stop" busy={sheet.isPending}>
          Write it off
        </BigButton>
      }
    >
      <HowMuch form={sheet.form} lot={lot} material={material} />
      <WhyField
        usual={["Spilled", "Set hard", "Past its use-by", "Contaminated"]}
        {...sheet.form.getInputProps("reason")}
      />
    </Sheet>
  );
}

/** Sends goods back. */
export function SendBack({ lot, material, onDone }: LotActProps) {
  const { timeZone } = useWays();
  const isOwner = useIsOwner();
  const act = useAct("post", "/api/lots/{id}/return/", {
    params: { id: lot.id },
    onDone: () => onDone("Sent back."),
  });
  const sheet = useSheet({
    act,
    initial: {
      ...takenFrom(lot, "all"),
      to: lot.basis === "borrowed" ? ("lender" as string) : "supplier",
      credit: "",
      reason: "",
    },
    toBody: ({ to, credit, reason, ...taken }) => ({
      ...takenBody(taken, timeZone),
      to: to === "lender" ? ("lender" as const) : ("supplier" as const),
      reason,
      ...(isOwner && credit.trim() !== "" && { credit: moneySaid(credit) ?? credit }),
    }),
    fieldFor: fieldOfTaken,
    check: (typed) => ({ ...checkTaken(typed, lot), ...(typed.reason.trim() === "" && { reason: NO_WHY }) }),
  });
  const { form } = sheet;
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Send it back</BigButton>}>
      <HowMuch form={form} lot={lot} material={material} />
      <OneOf
        label="To whom"
        choices={[
          ["supplier", "Supplier"],
          ["lender", "Who lent it"],
        ]}
        {...form.getInputProps("to")}
      />
      {isOwner && form.values.to === "supplier" && (
        <MoneyField
          label="Money that came back"
          description="Noted; what is left of the lot costs what it did."
          {...form.getInputProps("credit")}
        />
      )}
      <WhyField usual={["Damaged", "Wrong goods", "Loan over"]} {...form.getInputProps("reason")} />
    </Sheet>
  );
}

/** Sold or given away. */
export function GiveAway({ lot, material, onDone }: LotActProps) {
  const { timeZone } = useWays();
  const isOwner = useIsOwner();
  const act = useAct("post", "/api/lots/{id}/give/", {
    params: { id: lot.id },
    onDone: () => onDone("Given away."),
  });
  const sheet = useSheet({
    act,
    initial: { ...takenFrom(lot), price: "", reason: "" },
    toBody: ({ price, reason, ...taken }) => ({
      ...takenBody(taken, timeZone),
      reason,
      ...(isOwner && price.trim() !== "" && { price: moneySaid(price) ?? price }),
    }),
    fieldFor: fieldOfTaken,
    check: (typed) => ({
      ...checkTaken(typed, lot),
      ...(typed.reason.trim() === "" && { reason: "Say to whom." }),
    }),
  });
  const { form } = sheet;
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Give it away</BigButton>}>
      <HowMuch form={form} lot={lot} material={material} />
      {isOwner && (
        <MoneyField
          label="Paid for it"
          description="Empty: it was a gift."
          {...form.getInputProps("price")}
        />
      )}
      <WhyField label="To whom, and why" {...form.getInputProps("reason")} />
    </Sheet>
  );
}

/** Carries some of a lot, or all of it, to another place. */
export function Carry({ lot, material, onDone }: LotActProps) {
  const { timeZone } = useWays();
  const places = usePlaces();
  const from = lot.places.length === 1 ? lot.places[0]?.place : undefined;
  const others = places.filter(({ id }) => id !== from);
  const act = useAct("post", "/api/lots/{id}/move/", {
    params: { id: lot.id },
    onDone: () => onDone("Moved."),
  });
  const sheet = useSheet({
    act,
    initial: { ...takenFrom(lot, "all"), to: others.length === 1 ? String(others[0]?.id) : "", reason: "" },
    toBody: ({ to, reason, ...taken }) => {
      const { place, ...body } = takenBody(taken, timeZone) as ReturnType<typeof takenBody> & {
        place?: number;
      };
      return { ...body, to: Number(to), reason, ...(place !== undefined && { from: place }) };
    },
    fieldFor: (name) => (name === "from" ? "place" : fieldOfTaken(name)),
    check: (typed) => ({ ...checkTaken(typed, lot), ...(typed.to === "" && { to: "Say where to." }) }),
  });
  const { form } = sheet;
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Move it</BigButton>}>
      <PickOne
        label="To"
        choices={others.map(({ id, name }) => ({ value: String(id), label: name }))}
        description={others.length === 0 ? "There is no other place yet: add one under Places." : undefined}
        {...form.getInputProps("to")}
      />
      <HowMuch form={form} lot={lot} material={material} />
      <WhyField label="Why, if it matters" {...form.getInputProps("reason")} />
    </Sheet>
  );
}
