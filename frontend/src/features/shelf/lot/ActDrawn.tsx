import { Link } from "react-router";
import type { MeasuredMaterial } from "@/components/entry/saidUnits";
import { Drawn } from "@/components/form";
import type { Lot } from "../queries";
import { CloseAgain, Empty, MendLabel, Open } from "./acts/ContainerForms";
import { Hold, Note, OkAgain, Reject } from "./acts/StandForms";
import { Carry, GiveAway, SendBack, WriteOff } from "./acts/TakeForms";
import classes from "./lot.module.css";
import { ACT_WORDS, type LotAct } from "./lotActs";

const FORMS = {
  open: Open,
  move: Carry,
  note: Note,
  empty: Empty,
  release: OkAgain,
  hold: Hold,
  reject: Reject,
  "write-off": WriteOff,
  return: SendBack,
  give: GiveAway,
  label: MendLabel,
  close: CloseAgain,
} as const;

interface ActDrawnProps {
  lot: Lot;
  material: MeasuredMaterial;
  allowed: readonly LotAct[];
  /** Which form is drawn; "more" is the list of all of them. */
  chosen: LotAct | "more" | null;
  onChoose: (act: LotAct) => void;
  onClose: () => void;
  onDone: (said: string, lot?: Lot) => void;
}

/** The form of the act that was chosen, or the list to choose from. */
export function ActDrawn({ lot, material, allowed, chosen, onChoose, onClose, onDone }: ActDrawnProps) {
  const words = ACT_WORDS.find(({ act }) => act === chosen);
  const Form = chosen && chosen !== "more" && allowed.includes(chosen) ? FORMS[chosen] : null;
  const title =
    chosen === "more" ? `Lot ${lot.number}: what happened?` : `${words?.label ?? ""}: lot ${lot.number}`;
  return (
    <Drawn title={title} isOpen={chosen === "more" || Form !== null} onClose={onClose}>
      {chosen === "more" && (
        <ul className={classes.acts}>
          {ACT_WORDS.filter(({ act }) => allowed.includes(act)).map(({ act, label, says, isStop }) => (
            <li key={act}>
              <button type="button" data-stop={isStop} onClick={() => onChoose(act)}>
                <strong>{label}</strong>
                <small>{says}</small>
              </button>
            </li>
          ))}
          {lot.on_hand.amount !== "0" && (
            <li>
              <Link to={`/shelf/mix?lot=${lot.id}`}>
                <strong>Mix or fill a bottle</strong>
                <small>Some of it goes into a house mix, a jug or a squeeze bottle.</small>
              </Link>
            </li>
          )}
        </ul>
      )}
      {Form && <Form key={chosen} lot={lot} material={material} onDone={onDone} />}
    </Drawn>
  );
}
