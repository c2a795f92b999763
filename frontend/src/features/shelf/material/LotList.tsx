import { useState } from "react";
import { EmptyState } from "@/components/notes/EmptyState";
import { LotRow as Row } from "@/components/vessel/LotRow";
import { shapeFor } from "@/components/vessel/shapes";
import { type LotRow, useEmptyLots } from "../queries";
import { lotName, onLabel } from "../shelfView";
import classes from "./material.module.css";

function Lots({ lots }: { lots: readonly LotRow[] }) {
  return (
    <ul className={classes.lots}>
      {lots.map((lot) => (
        <li key={lot.id}>
          <Row
            name={lotName(lot)}
            to={`/shelf/lots/${lot.id}`}
            shape={shapeFor(lot.material.kind)}
            level={Number(lot.fill)}
            colour={lot.material.swatch || null}
            status={lot.status}
            isOpen={lot.opened_on !== null}
            isExpired={lot.is_expired}
            isProvisional={lot.is_provisional}
            useBy={lot.use_by}
            count={lot.containers}
            onHand={lot.on_hand}
            note={[onLabel(lot), ...lot.places.map(({ name }) => name)].join(" · ")}
          />
        </li>
      ))}
    </ul>
  );
}

function Emptied({ material }: { material: number }) {
  const { results, count } = useEmptyLots(material);
  if (count === 0) return <p className="soft">No lot was used up yet.</p>;
  return (
    <>
      <Lots lots={results} />
      {count > results.length && (
        <p className="soft">
          The latest {results.length} of {count}. Find an older one on the shelf by its number.
        </p>
      )}
    </>
  );
}

/** A material's lots: those with something left, and on asking those that are empty. */
export function LotList({ material, lots }: { material: number; lots: readonly LotRow[] }) {
  const [showsEmpty, setShowsEmpty] = useState(false);
  return (
    <>
      {lots.length === 0 ? (
        <EmptyState title="None left">Receive a delivery of it, or count what is there.</EmptyState>
      ) : (
        <Lots lots={lots} />
      )}
      <button
        type="button"
        className={classes.plain}
        aria-expanded={showsEmpty}
        onClick={() => setShowsEmpty(!showsEmpty)}
      >
        {showsEmpty ? "Hide the empty ones" : "Show the empty ones"}
      </button>
      {showsEmpty && <Emptied material={material} />}
    </>
  );
}
