import { Link } from "react-router";
import { Money, Quantity } from "@/components/figures";
import { linesPage } from "@/components/figures/linesPage";
import { StatusMark } from "@/components/notes/StatusMark";
import own from "./balance.module.css";
import { addsUp, type Balance, type LedgerLine, ledgerOf } from "./ledger";

const SIGNS = { start: "", in: "+", out: "−", rest: "=" };

function Label({ line }: { line: LedgerLine }) {
  const { movements } = line.figure;
  return movements ? <Link to={linesPage(movements)}>{line.label}</Link> : line.label;
}

/** What came in against what is here and what went: each bar hangs where the one before ended, and nothing is left over. */
export function Ledger({ row, seesMoney, title }: { row: Balance; seesMoney: boolean; title: string }) {
  const lines = ledgerOf(row);
  const hasQuantity = row.difference.quantity !== null;
  return (
    <table className={`figures-table ${own.ledger}`} style={{ "--places": 2 } as React.CSSProperties}>
      <caption className="only-read-aloud">{title}</caption>
      <thead>
        <tr>
          <th scope="col">
            <span className="only-read-aloud">What happened</span>
          </th>
          <td className={own.hangs} />
          {hasQuantity && (
            <th scope="col" className="right">
              How much
            </th>
          )}
          {seesMoney && (
            <th scope="col" className="right">
              Money
            </th>
          )}
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.key} data-sign={line.sign}>
            <th scope="row">
              <span className={own.sign}>{SIGNS[line.sign]}</span>
              <Label line={line} />
            </th>
            <td aria-hidden="true" className={own.hangs}>
              <span style={{ marginLeft: `${line.from * 100}%`, width: `${line.length * 100}%` }} />
            </td>
            {hasQuantity && (
              <td className="right">
                <Quantity value={line.figure.quantity} places={2} />
              </td>
            )}
            {seesMoney && (
              <td className="right">
                <Money value={line.figure.value} />
              </td>
            )}
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">
            Difference
            {addsUp(row) ? (
              <StatusMark mark="ok">It adds up</StatusMark>
            ) : (
              <StatusMark mark="stop">Does not add up</StatusMark>
            )}
          </th>
          <td aria-hidden="true" className={own.hangs} />
          {hasQuantity && (
            <td className="right">
              <Quantity value={row.difference.quantity} places={2} />
            </td>
          )}
          {seesMoney && (
            <td className="right">
              <Money value={row.difference.value} />
            </td>
          )}
        </tr>
      </tfoot>
    </table>
  );
}
