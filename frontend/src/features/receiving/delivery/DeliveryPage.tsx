import { useState } from "react";
import { useParams, useSearchParams } from "react-router";
import { useIsOwner, useMayRecord } from "@/api/session";
import { Day, Moment, Money } from "@/components/figures";
import { BigButton, Drawn } from "@/components/form";
import { StatusMark } from "@/components/notes/StatusMark";
import { Columns, type Fact, Page, Part } from "@/components/page";
import { type Delivery, SPREADS, useDelivery } from "../queries";
import classes from "../receiving.module.css";
import { ChargeForm } from "./ChargeForm";
import { CorrectForm } from "./CorrectForm";
import { DeliveredLines } from "./DeliveredLines";
import { PriceForm } from "./PriceForm";
import { UndoForm } from "./UndoForm";

const FORMS = {
  price: { title: "Give the price", Form: PriceForm },
  charge: { title: "Add a charge or discount", Form: ChargeForm },
  correct: { title: "Correct a quantity", Form: CorrectForm },
  undo: { title: "Undo the delivery", Form: UndoForm },
} as const;

type Act = keyof typeof FORMS;

function factsOf(delivery: Delivery): Fact[] {
  return [
    { label: "From", value: delivery.supplier.name },
    { label: "Received", value: <Day value={delivery.received_on} /> },
    { label: "Put at", value: delivery.place.name },
    { label: "On the slip", value: delivery.reference || "no number" },
    ...(delivery.landed_cost === undefined
      ? []
      : [{ label: "Cost with freight", value: <Money value={delivery.landed_cost} /> }]),
  ];
}

function Charges({ charges }: { charges: NonNullable<Delivery["charges"]> }) {
  if (charges.length === 0) return <p className="soft">None.</p>;
  return (
    <ul className={classes.lines}>
      {charges.map(({ id, kind, amount, spread_by, charged_on }) => (
        <li key={id} className={classes.charge}>
          <span className={classes.what}>
            <strong>{kind}</strong>
            <small>
              spread {SPREADS.find(([by]) => by === spread_by)?.[1]} · <Day value={charged_on} />
            </small>
          </span>
          <Money value={amount} />
        </li>
      ))}
    </ul>
  );
}

/** One delivery: what came in it, what each lot costs with freight, and what may still be said of it. */
export function DeliveryPage() {
  const delivery = useDelivery(Number(useParams().id));
  const isOwner = useIsOwner();
  const mayRecord = useMayRecord();
  const [params] = useSearchParams();
  const [act, setAct] = useState<Act | null>(null);
  const close = () => setAct(null);
  const shown = act && FORMS[act];
  const mayAct = mayRecord && !delivery.is_undone;
  return (
    <Page
      title={`Delivery ${delivery.number}`}
      back={{ to: "/receiving", label: "Receiving" }}
      marks={
        <span className={classes.marks}>
          {delivery.is_undone && <StatusMark mark="quiet">Undone, entry mistake</StatusMark>}
          {delivery.is_provisional && !delivery.is_undone && (
            <StatusMark mark="look">Price to follow</StatusMark>
          )}
          {params.get("received") && !delivery.is_undone && (
            <span role="status">
              <StatusMark mark="ok">Received: it is on the shelf</StatusMark>
            </span>
          )}
        </span>
      }
      facts={factsOf(delivery)}
      acts={
        mayAct && (
          <>
            {isOwner && (
              <BigButton
                type="button"
                tone={delivery.is_provisional ? "go" : "plain"}
                onClick={() => setAct("price")}
              >
                {delivery.is_provisional ? "Give the price" : "Correct price"}
              </BigButton>
            )}
            <BigButton type="button" tone="plain" onClick={() => setAct("correct")}>
              Correct quantity
            </BigButton>
          </>
        )
      }
    >
      <Columns lead>
        <Part title="What came">
          <DeliveredLines lines={delivery.lines} />
        </Part>
        <div className={classes.stack}>
          {delivery.charges !== undefined && (
            <Part
              title="Charges and discounts"
              aside={
                mayAct && (
                  <button type="button" className={classes.more} onClick={() => setAct("charge")}>
                    Add one
                  </button>
                )
              }
            >
              <Charges charges={delivery.charges} />
            </Part>
          )}
          <Part title="Written down">
            <p>
              By {delivery.by.name}, <Moment value={delivery.recorded_at} />
            </p>
            {delivery.note && <p>{delivery.note}</p>}
            {mayAct && (
              <button type="button" className={classes.more} onClick={() => setAct("undo")}>
                Undo this delivery
              </button>
            )}
          </Part>
        </div>
      </Columns>
      <Drawn title={shown?.title ?? ""} isOpen={shown !== null} onClose={close}>
        {shown && <shown.Form key={act} delivery={delivery} onDone={close} />}
      </Drawn>
    </Page>
  );
}
