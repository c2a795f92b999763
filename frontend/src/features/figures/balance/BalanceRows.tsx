import { Link, useSearchParams } from "react-router";
import { Quantity, useAlignment } from "@/components/figures";
import { StatusMark } from "@/components/notes/StatusMark";
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
    <tr>
      <th scope="row">
        <Link to={{ search: next.toString() }}>
          {row.lot ? `Lot ${row.lot.number}, ${row.lot.lot_number}` : row.material.name}
        </Link>
        {!addsUp(row) && <StatusMark mark="stop">Does not add up</StatusMark>}
      </th>
      {[came, went, here].map((quantity, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: three columns that never change places
        <td key={i} className="right">
          <Quantity value={quantity} />
        </td>
      ))}
    </tr>
  );
}

/** What came, what went and what is here, row by row; each opens its own ledger. */
export function BalanceRows({ rows }: { rows: readonly BalanceRow[] }) {
  const room = useAlignment(rows.flatMap((row) => Object.values(sidesOf(row))));
  return (
    <table className={`figures-table ${own.balances}`} style={room}>
      <caption className="only-read-aloud">What came, went and is here</caption>
      <thead>
        <tr>
          <th scope="col">Which</th>
          <th scope="col" className="right">
            Came
          </th>
          <th scope="col" className="right">
            Went
          </th>
          <th scope="col" className="right">
            Is here
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <Row key={row.lot?.id ?? row.material.id} row={row} />
        ))}
      </tbody>
    </table>
  );
}
