import { Link } from "react-router";
import { api } from "@/api/query";
import { Day, dayOf, Money, Quantity, unitShown, useWays } from "@/components/figures";
import { FlowList } from "@/components/flow/FlowList";
import { Reckoning, Why } from "@/components/notes/Why";
import type { Lot } from "../queries";
import { BASES } from "../words";
import { costEach } from "./costEach";
import classes from "./lot.module.css";

function Mixed({ blend }: { blend: number }) {
  const { timeZone } = useWays();
  const { data } = api.useSuspenseQuery("get", "/api/blends/{id}/", { params: { path: { id: blend } } });
  return (
    <>
      <p>
        A house mix of <Day value={dayOf(new Date(data.made_at), timeZone)} /> by {data.by.name}
        {data.is_undone && ", undone"}. What went in:
      </p>
      <FlowList
        label="What went into the mix"
        stops={data.inputs.map(({ lot, material, quantity }) => ({
          key: String(lot.id),
          kind: "lot" as const,
          title: `Lot ${lot.number}, ${material.name}`,
          to: `/shelf/lots/${lot.id}`,
          quantity,
        }))}
      />
    </>
  );
}

function CameWith({ lot }: { lot: Lot }) {
  const { results } = api.useSuspenseQuery("get", "/api/deliveries/", {
    params: { query: { material: lot.material.id, lot_number: lot.lot_number } },
  }).data;
  const delivery = results.find(({ received_on }) => received_on === lot.received_on);
  if (!delivery) return null;
  return (
    <p>
      <Link to={`/receiving/${delivery.id}`}>Delivery {delivery.number}</Link> from {delivery.supplier.name}
      {delivery.is_undone && ", undone"}.
    </p>
  );
}

function Cost({ lot }: { lot: Lot }) {
  const { units } = useWays();
  if (lot.value === undefined) return null;
  if (lot.basis !== "paid") return <p>{BASES[lot.basis]}: it costs nothing in any top.</p>;
  const each = costEach(lot.unit_cost ?? "0", lot.material.stock_unit, units);
  return (
    <Why
      figure={<Money value={each.cost} per={`per ${unitShown(each.unit)}`} />}
      label="how this cost came about"
    >
      <Reckoning
        lines={[
          {
            label: "Worth of what is left",
            figure: <Money value={lot.value} />,
            note: "price and its share of charges",
          },
          { label: "What is left", figure: <Quantity value={lot.on_hand} /> },
        ]}
        total={{ label: "One over the other", figure: <Money value={each.cost} places={4} /> }}
      />
      {lot.is_provisional && <p>The price is to follow; until then the material's last price stands in.</p>}
    </Why>
  );
}

/** How a lot came to be: delivered, opened out of another, or mixed; and what it costs. */
export function Origin({ lot }: { lot: Lot }) {
  return (
    <>
      {lot.origin === "delivery" && (
        <p>
          Received on <Day value={lot.received_on} away />, <Quantity value={lot.came_in} /> in all.
        </p>
      )}
      {lot.origin === "delivery" && <CameWith lot={lot} />}
      {lot.opened_from !== null && (
        <p>
          Opened on <Day value={lot.opened_on} /> out of{" "}
          <Link to={`/shelf/lots/${lot.opened_from}`}>the sealed lot</Link>, received on{" "}
          <Day value={lot.received_on} />.
        </p>
      )}
      {lot.blend !== null && <Mixed blend={lot.blend} />}
      {lot.opened_lots.length > 0 && (
        <ul className={classes.opened} aria-label="Opened out of it">
          {lot.opened_lots.map((opened) => (
            <li key={opened.id}>
              <Link to={`/shelf/lots/${opened.id}`}>Lot {opened.number}</Link>
              <span className="soft">
                opened <Day value={opened.opened_on} />
              </span>
              <Quantity value={opened.on_hand} />
            </li>
          ))}
        </ul>
      )}
      <Cost lot={lot} />
    </>
  );
}
