import { Link } from "react-router";
import { Day, Money, Quantity, unitShown, useAlignment } from "@/components/figures";
import { StatusMark } from "@/components/notes/StatusMark";
import { Swatch } from "@/components/notes/Swatch";
import { Reckoning, Why } from "@/components/notes/Why";
import { BASES, type DeliveryLine } from "../queries";
import classes from "../receiving.module.css";
import { type Group, groupsOf } from "./groups";

function Landed({ line }: { line: DeliveryLine }) {
  if (line.landed_cost === undefined) return null;
  if (line.basis !== "paid") return <span className="soft">{BASES[line.basis]}</span>;
  return (
    <Why figure={<Money value={line.landed_cost} />} label="how this cost with freight came about">
      <Reckoning
        lines={[
          {
            label: line.is_provisional ? "Last price, until the real one is here" : "Its part of the price",
            figure: <Money value={line.booked_cost} />,
          },
          { label: "Its share of charges and discounts", figure: <Money value={line.charges} /> },
        ]}
        total={{
          label: "Cost with freight",
          figure: <Money value={line.landed_cost} />,
          note: (
            <>
              <Money value={line.unit_cost} places={4} /> per {unitShown(line.quantity.unit)}
            </>
          ),
        }}
      />
    </Why>
  );
}

function Line({ line }: { line: DeliveryLine }) {
  const { lot, material } = line;
  return (
    <li className={classes.delivered}>
      <Swatch colour={material.swatch} />
      <span className={classes.what}>
        <Link to={`/shelf/lots/${lot.id}`}>
          Lot {lot.number}, {material.name}
        </Link>
        <small>
          {lot.is_own_number ? "none on the label" : lot.lot_number}
          {line.containers > 1 && ` · ${line.containers} containers`}
          {lot.use_by && (
            <>
              {" · use by "}
              <Day value={lot.use_by} />
            </>
          )}
        </small>
        {lot.status !== "usable" && (
          <StatusMark mark={lot.status === "on_hold" ? "look" : "stop"}>
            {lot.status === "on_hold" ? "On hold" : "Rejected"}
          </StatusMark>
        )}
      </span>
      <Quantity value={line.quantity} />
      <Landed line={line} />
    </li>
  );
}

function GroupHead({ group }: { group: Group }) {
  return (
    <div className={classes.groupHead}>
      <h3>{group.title}</h3>
      {group.isProvisional ? (
        <StatusMark mark="look">Price to follow</StatusMark>
      ) : (
        group.isPaid && <Money value={group.cost} />
      )}
    </div>
  );
}

/** What came, as it was sold: each pack with its lots, each lot with its cost and why. */
export function DeliveredLines({ lines }: { lines: readonly DeliveryLine[] }) {
  const room = useAlignment(lines.map(({ quantity }) => quantity));
  return (
    <div
      className={classes.groups}
      style={room}
      data-money={lines.some((line) => line.landed_cost !== undefined)}
    >
      {groupsOf(lines).map((group) => (
        <section key={group.key} aria-label={group.title}>
          <GroupHead group={group} />
          <ul className={classes.lines}>
            {group.lines.map((line) => (
              <Line key={line.id} line={line} />
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}
