import { Link, useSearchParams } from "react-router";
import { StatusMark } from "@/components/notes/StatusMark";
import { Amount, useAmountRoom } from "../Amount";
import type { BalanceRow } from "../queries";
import own from "./balance.module.css";
import { addsUp, sidesOf } from "./ledger";

function Row({ row }: { row: BalanceRow }) {
  const [params] = useSearchParams();
  const { came, went, here } = sidesOf(row);
  const next = new URLSearchParams(params);
  for (const name of ["lot", "lot_number", "material"]) next.delete(name);
  if (row.lot) next.set("lot", String(row.lot.id));
  else next.set("material", String(row.material.id));
  return (
    <li className={own.balance}>
      <span>
        <Link to={{ search: next.toString() }}>
          {row.lot ? `Lot ${row.lot.number}, ${row.lot.lot_number}` : row.material.name}
        </Link>
        {!addsUp(row) && <StatusMark mark="stop">Does not add up</StatusMark>}
      </span>
      <dl>
        <dt>Came</dt>
        <dd>
          <Amount value={came} />
        </dd>
        <dt>Went</dt>
        <dd>
          <Amount value={went} />
        </dd>
        <dt>Is here</dt>
        <dd>
          <Amount value={here} />
        </dd>
      </dl>
    </li>
  );
}

/** What came, what went and what is here, row by row; each opens its own ledger. */
export function BalanceRows({ rows }: { rows: readonly BalanceRow[] }) {
  const room = useAmountRoom(rows.flatMap((row) => Object.values(sidesOf(row))));
  return (
    <ul className={own.balances} style={room} aria-label="What came, went and is here">
      {rows.map((row) => (
        <Row key={row.lot?.id ?? row.material.id} row={row} />
      ))}
    </ul>
  );
}
