import { useMaterials } from "@/api/records";
import { Quantity, useAlignment } from "@/components/figures";
import { Cautions } from "@/components/notes/Cautions";
import { EmptyState } from "@/components/notes/EmptyState";
import { Swatch } from "@/components/notes/Swatch";
import { Part } from "@/components/page";
import { actsFor, byId } from "../about";
import type { Pour } from "../queries";

interface PlannedAmountsProps {
  pour: Pour;
  /** Whether somebody may still do as it says: then the cautions stand under it. */
  isToCome?: boolean;
}

/** The plan to read. */
export function PlannedAmounts({ pour, isToCome = true }: PlannedAmountsProps) {
  const materials = byId(useMaterials());
  const room = useAlignment(pour.planned.map(({ quantity }) => quantity));
  const used = [...materials.values()].filter(({ id }) =>
    pour.planned.some(({ material }) => material === id),
  );
  return (
    <Part title={isToCome ? "What goes in" : "What was planned"}>
      {pour.planned.length === 0 ? (
        <EmptyState title="No amounts" />
      ) : (
        <table className="figures-table" style={room}>
          <thead>
            <tr>
              <th scope="col">Material</th>
              <th scope="col" className="right">
                How much
              </th>
            </tr>
          </thead>
          <tbody>
            {pour.planned.map(({ position, material, material_name, quantity }) => (
              <tr key={position}>
                <th scope="row">
                  <Swatch colour={materials.get(material)?.swatch} /> {material_name}
                </th>
                <td className="right">
                  <Quantity value={quantity} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {isToCome && <Cautions acts={actsFor(pour.layer, used)} materials={used} />}
    </Part>
  );
}
