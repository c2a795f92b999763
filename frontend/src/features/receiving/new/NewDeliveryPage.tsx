import { Button, Textarea, TextInput } from "@mantine/core";
import { useNavigate, useSearchParams } from "react-router";
import { useAct } from "@/api/act";
import type { Remedy } from "@/api/problem";
import { useMaterials, usePacks, usePlaces, useSuppliers } from "@/api/records";
import { useIsOwner, useMayRecord } from "@/api/session";
import { DayField } from "@/components/entry/DayField";
import { PickOne } from "@/components/entry/PickOne";
import { useToday } from "@/components/figures";
import { BigButton, OneOf, Sheet, useSheet } from "@/components/form";
import { Columns, Page, Part } from "@/components/page";
import { NotYours } from "@/components/page/NotYours";
import classes from "../receiving.module.css";
import { ChargeFields } from "./ChargeFields";
import { LineFields } from "./LineFields";
import { checkDelivery, type DeliveryTyped, deliveryBody, deliveryField, labelsFor, newLine } from "./typed";

/** Suppliers shown as keys, one tap each; beyond that a list. */
const MOST_KEYS = 5;

/** A delivery at the door: what came, what stands on its labels, done. The price may follow. */
export function NewDeliveryPage() {
  return useMayRecord() ? (
    <NewDeliverySheet />
  ) : (
    <NotYours title="Receive a delivery" back={{ to: "/receiving", label: "Receiving" }}>
      Owners and crew receive; a viewer reads.
    </NotYours>
  );
}

function NewDeliverySheet() {
  const isOwner = useIsOwner();
  const [params] = useSearchParams();
  const asked = params.get("material");
  const suppliers = useSuppliers();
  const places = usePlaces();
  const packs = usePacks();
  const materials = useMaterials();
  const today = useToday();
  const navigate = useNavigate();
  const terms = isOwner ? "paid" : "to_follow";
  const inPacks = packs.filter(({ contents }) =>
    contents.some(({ material }) => String(material.id) === asked),
  );
  const [onlyPack] = inPacks.length === 1 ? inPacks : [];
  const start = {
    ...newLine(terms),
    ...(onlyPack && { what: `pack:${onlyPack.id}`, contents: labelsFor(onlyPack) }),
    ...(asked && !onlyPack && { what: `material:${asked}` }),
  };
  const sheet = useSheet<DeliveryTyped, ReturnType<typeof deliveryBody>, { id: number }>({
    act: useAct("post", "/api/deliveries/", {
      onDone: ({ id }) => void navigate(`/receiving/${id}?received=yes`, { replace: true }),
    }),
    initial: {
      supplier: onlyPack
        ? String(onlyPack.supplier.id)
        : suppliers.length === 1
          ? String(suppliers[0]?.id)
          : "",
      received_on: today,
      place: places.length > 1 ? String(places[0]?.id) : "",
      reference: "",
      note: "",
      lines: [start],
      charges: [],
    },
    toBody: (typed) => deliveryBody(typed, { sendsMoney: isOwner }),
    draft: asked ? `delivery-of-${asked}` : "delivery-new",
    fieldFor: deliveryField,
    check: checkDelivery,
  });
  const { form } = sheet;

  function spreadBy({ spread_by }: Remedy) {
    form.setFieldValue(
      "charges",
      form.getValues().charges.map((charge) => ({ ...charge, spread_by: String(spread_by) })),
    );
  }

  return (
    <Page title="Receive a delivery" back={{ to: "/receiving", label: "Receiving" }}>
      <Sheet
        sheet={sheet}
        remedies={{ spread_by: spreadBy }}
        acts={<BigButton busy={sheet.isPending}>Received</BigButton>}
      >
        <Columns lead>
          <div className={classes.stack}>
            {suppliers.length > 0 && suppliers.length <= MOST_KEYS ? (
              <div className={classes.keys}>
                <OneOf
                  label="Who delivered"
                  choices={suppliers.map(({ id, name }) => [String(id), name] as const)}
                  {...form.getInputProps("supplier")}
                />
                {form.errors.supplier && <p className={classes.error}>{form.errors.supplier}</p>}
              </div>
            ) : (
              <PickOne
                label="Who delivered"
                choices={suppliers.map(({ id, name }) => ({ value: String(id), label: name }))}
                description={
                  suppliers.length === 0 ? "There is no supplier yet: add one from the shelf." : undefined
                }
                {...form.getInputProps("supplier")}
              />
            )}
            {form.values.lines.map((_, index) => (
              <LineFields
                // biome-ignore lint/suspicious/noArrayIndexKey: a line has nothing of its own until it is chosen
                key={index}
                form={form}
                index={index}
                packs={packs}
                materials={materials}
                givesMoney={isOwner}
              />
            ))}
            <Button variant="default" onClick={() => form.insertListItem("lines", newLine(terms))}>
              Something else came too
            </Button>
          </div>
          <div className={classes.stack}>
            <Part title="The slip">
              <div className="cells">
                <DayField label="Received on" max={today} {...form.getInputProps("received_on")} />
                <TextInput
                  label="Number on the slip"
                  autoComplete="off"
                  {...form.getInputProps("reference")}
                />
                {places.length > 1 && (
                  <PickOne
                    label="Put at"
                    choices={places.map(({ id, name }) => ({ value: String(id), label: name }))}
                    {...form.getInputProps("place")}
                  />
                )}
                <Textarea label="Note" autosize minRows={1} {...form.getInputProps("note")} />
              </div>
            </Part>
            {isOwner && (
              <Part title="Charges and discounts">
                <div className={classes.stack}>
                  <ChargeFields form={form} />
                </div>
              </Part>
            )}
            {!isOwner && <p className="soft">The owner gives the price later.</p>}
          </div>
        </Columns>
      </Sheet>
    </Page>
  );
}
