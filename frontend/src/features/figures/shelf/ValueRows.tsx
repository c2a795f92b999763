import { Link } from "react-router";
import { Money } from "@/components/figures";
import { linesPage } from "@/components/figures/linesPage";
import { Amount, useAmountRoom } from "../Amount";
import type { ShelfValue } from "../queries";
import { kindLabel } from "../words";
import own from "./shelf.module.css";

/** Each material under its kind, with what lay there and what it was worth; the figure leads to its lines. */
export function ValueRows({ report, seesMoney }: { report: ShelfValue; seesMoney: boolean }) {
  const room = useAmountRoom(report.rows.map(({ quantity }) => quantity));
  return (
    <table className={`figures-table ${own.valueTable}`} style={room}>
      <caption className="only-read-aloud">What lay on the shelf, by material</caption>
      <thead>
        <tr>
          <th scope="col">Material</th>
          <th scope="col" className="right">
            Lay there
          </th>
          {seesMoney && (
            <th scope="col" className="right">
              Value
            </th>
          )}
        </tr>
      </thead>
      {report.kinds.map(({ kind, value }) => (
        <tbody key={kind}>
          <tr className={own.kindRow}>
            <th scope="rowgroup" colSpan={2}>
              {kindLabel(kind)}
            </th>
            {seesMoney && (
              <td className="right">
                <Money value={value} />
              </td>
            )}
          </tr>
          {report.rows
            .filter(({ material }) => material.kind === kind)
            .map(({ material, quantity, value: worth, movements }) => (
              <tr key={material.id}>
                <th scope="row">
                  <Link to={`/shelf/materials/${material.id}`}>{material.name}</Link>
                </th>
                <td className="right">
                  <Link to={linesPage(movements)}>
                    <Amount value={quantity} />
                    <span className="only-read-aloud">, in and out of {material.name} until then</span>
                  </Link>
                </td>
                {seesMoney && (
                  <td className="right">
                    <Money value={worth} />
                  </td>
                )}
              </tr>
            ))}
        </tbody>
      ))}
    </table>
  );
}
