import { Link } from "react-router";
import { useMaterials } from "@/api/records";
import { useIsOwner } from "@/api/session";
import { Money, Quantity, useAlignment } from "@/components/figures";
import { EmptyState } from "@/components/notes/EmptyState";
import { StatusMark } from "@/components/notes/StatusMark";
import { Swatch } from "@/components/notes/Swatch";
import { byId } from "../about";
import type { Pour, Provenance, Usage } from "../queries";
import classes from "./done.module.css";
import { type WentIn, whatWentIn } from "./whatWentIn";

const KNOWN: Record<Provenance, string> = {
  typed: "typed",
  weighed: "weighed",
  scanned: "scanned",
  assumed: "assumed",
};

/** How the amount is known and how the lot is. */
function knownBy({ provenance, lot_provenance }: Usage): string {
  return provenance === lot_provenance
    ? KNOWN[provenance]
    : `${KNOWN[provenance]}, lot ${KNOWN[lot_provenance]}`;
}

function FromLot({ usage, hasMoney, isOnly }: { usage: Usage; hasMoney: boolean; isOnly: boolean }) {
  return (
    <li className={classes.lot}>
      <span>
        <Link to={`/shelf/lots/${usage.lot}`}>Lot {usage.number}</Link>{" "}
        <span className="soft">
          {usage.lot_number}
          {usage.bucket !== null && `, bucket ${usage.bucket}`} · {knownBy(usage)}
        </span>
        {usage.is_waste && (
          <StatusMark mark="look">{`Wasted${usage.reason ? `: ${usage.reason}` : ""}`}</StatusMark>
        )}
        {usage.was_expired && <StatusMark mark="stop">Past its use-by</StatusMark>}
        {usage.lot_status === "on_hold" && <StatusMark mark="look">Was on hold</StatusMark>}
        {usage.given_by !== null && <Link to={`/pours/${usage.given_by}`}>left over from another pour</Link>}
      </span>
      {!isOnly && (
        <span className={classes.fromLot}>
          <Quantity value={usage.quantity} />
        </span>
      )}
      {hasMoney && (
        <span className={classes.value}>
          <Money value={usage.value} />
        </span>
      )}
    </li>
  );
}

function Row({ row, swatch, hasMoney }: { row: WentIn; swatch: string | undefined; hasMoney: boolean }) {
  const isOther = row.difference !== null && Number(row.difference) !== 0;
  return (
    <li className={classes.material}>
      <div className={classes.head}>
        <span className={classes.name}>
          <Swatch colour={swatch} /> {row.name}
        </span>
        <span className={classes.used}>
          {row.used ? <Quantity value={row.used} /> : <span className="soft">did not go in</span>}
        </span>
        <span className={classes.planned}>
          {row.planned ? (
            isOther || !row.used ? (
              <>
                planned <Quantity value={row.planned} />
              </>
            ) : (
              "as planned"
            )
          ) : (
            "not planned"
          )}
        </span>
      </div>
      <ul className={classes.lots}>
        {row.usages.map((usage) => (
          <FromLot key={usage.id} usage={usage} hasMoney={hasMoney} isOnly={row.usages.length === 1} />
        ))}
      </ul>
    </li>
  );
}

/** What went in, from which lot, how it is known, beside what was planned; the value for whoever may see money. */
export function WhatWentIn({ pour }: { pour: Pour }) {
  const materials = byId(useMaterials());
  const hasMoney = useIsOwner();
  const rows = whatWentIn(pour.planned, pour.usages);
  const room = useAlignment(
    rows.flatMap(({ used, usages }) => [used, ...usages.map(({ quantity }) => quantity)]),
  );
  if (rows.length === 0) return <EmptyState title="Nothing went in" />;
  return (
    <ul className={classes.went} style={room} aria-label="What went in" data-money={hasMoney || undefined}>
      {rows.map((row) => (
        <Row key={row.material} row={row} swatch={materials.get(row.material)?.swatch} hasMoney={hasMoney} />
      ))}
    </ul>
  );
}
