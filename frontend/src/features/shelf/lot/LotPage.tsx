import { useState } from "react";
import { useNavigate, useParams, useSearchParams } from "react-router";
import { useIsOwner, useMayRecord } from "@/api/session";
import { Money, Quantity } from "@/components/figures";
import { BigButton, Drawn } from "@/components/form";
import { LotMarks } from "@/components/notes/StatusMark";
import { Page, Part } from "@/components/page";
import { shapeFor } from "@/components/vessel/shapes";
import { Vessel } from "@/components/vessel/Vessel";
import { InAndOut } from "../InAndOut";
import { type Lot, useLot, useMaterial, useMovements } from "../queries";
import { onLabel } from "../shelfView";
import { UndoPosting } from "../UndoPosting";
import { ActDrawn } from "./ActDrawn";
import { History } from "./History";
import classes from "./lot.module.css";
import { ACT_WORDS, actsFor, type LotAct, mainActs } from "./lotActs";
import { Origin } from "./Origin";
import { UseBy } from "./UseBy";
import { WhereItLies } from "./WhereItLies";
import { WhereItWent } from "./WhereItWent";

const POSTED = new Set(["Moved.", "Written off.", "Sent back.", "Given away.", "Empty."]);

/** What was just done, with the way back. */
function Done({ said, lot }: { said: string; lot: Lot }) {
  const [isUndoing, setUndoing] = useState(false);
  const latest = useMovements({ lot: lot.id }, 1).data?.results[0];
  return (
    <div className={classes.done} role="status">
      <strong>{said}</strong>
      {POSTED.has(said) && latest && latest.posting_kind !== "reversed" && (
        <>
          <button type="button" onClick={() => setUndoing(true)}>
            Undo
          </button>
          <Drawn title="Undo, entry mistake" isOpen={isUndoing} onClose={() => setUndoing(false)}>
            <UndoPosting posting={latest.posting} onDone={() => setUndoing(false)} />
          </Drawn>
        </>
      )}
    </div>
  );
}

function facts(lot: Lot) {
  return [
    { label: "On hand", value: <Quantity value={lot.on_hand} /> },
    { label: "Set aside", value: <Quantity value={lot.reserved} /> },
    { label: "On the label", value: onLabel(lot) },
    ...(lot.value === undefined
      ? []
      : [
          {
            label: "Cost with freight",
            value: lot.basis === "paid" ? <Money value={lot.value} /> : "nothing paid",
          },
        ]),
  ];
}

/** One lot: the vessel, where it lies, until when it is good, where it went, and what can be done with it. */
export function LotPage() {
  const id = Number(useParams().id);
  const lot = useLot(id);
  const material = useMaterial(lot.material.id);
  const [params, setParams] = useSearchParams();
  const [said, setSaid] = useState("");
  const navigate = useNavigate();
  const allowed = actsFor(lot, { mayRecord: useMayRecord(), isOwner: useIsOwner() });
  const chosen = params.get("act") as LotAct | "more" | null;

  function choose(act: LotAct | "more" | null) {
    setParams(
      (now) => {
        if (act) now.set("act", act);
        else now.delete("act");
        return now;
      },
      { replace: true, preventScrollReset: true },
    );
  }

  function done(words: string, other?: Lot) {
    setSaid(words);
    if (other && other.id !== lot.id) void navigate(`/shelf/lots/${other.id}`, { replace: true });
    else choose(null);
  }

  return (
    <Page
      title={`Lot ${lot.number}`}
      back={{ to: `/shelf/materials/${lot.material.id}`, label: lot.material.name }}
      drawing={
        <Vessel
          name={`Lot ${lot.number}, ${lot.material.name}`}
          shape={shapeFor(lot.material.kind)}
          level={Number(lot.fill)}
          colour={lot.material.swatch || null}
          status={lot.status}
          isOpen={lot.opened_on !== null}
          isExpired={lot.is_expired}
          useBy={lot.use_by}
          count={lot.containers}
          size="full"
        />
      }
      marks={
        <LotMarks
          status={lot.status}
          isExpired={lot.is_expired}
          isOpen={lot.opened_on !== null}
          isProvisional={lot.is_provisional}
        />
      }
      facts={facts(lot)}
      acts={
        allowed.length > 0 && (
          <>
            {mainActs(allowed).map((act, i) => (
              <BigButton key={act} type="button" tone={i === 0 ? "go" : "plain"} onClick={() => choose(act)}>
                {ACT_WORDS.find((words) => words.act === act)?.label ?? act}
              </BigButton>
            ))}
            <BigButton type="button" tone="plain" onClick={() => choose("more")}>
              More
            </BigButton>
          </>
        )
      }
    >
      {said && <Done said={said} lot={lot} />}
      {lot.status !== "usable" && lot.status_reason && (
        <p className={classes.reason}>
          <strong>{lot.status === "on_hold" ? "On hold" : "Rejected"}:</strong> {lot.status_reason}
        </p>
      )}
      <div className={classes.beside}>
        <div className={classes.stack}>
          <Part title="Use by">
            <UseBy lot={lot} material={material} />
          </Part>
          <Part title="Where it lies">
            <WhereItLies lot={lot} />
          </Part>
          <Part title="Where it came from">
            <Origin lot={lot} />
          </Part>
          <Part title="Seen and decided">
            <History lot={lot} />
          </Part>
        </div>
        <div className={classes.stack}>
          <Part title="Where it went">
            <WhereItWent lot={lot} />
          </Part>
          <Part title="In and out">
            <InAndOut lot={lot.id} />
          </Part>
        </div>
      </div>
      <ActDrawn
        lot={lot}
        material={material}
        allowed={allowed}
        chosen={chosen}
        onChoose={choose}
        onClose={() => choose(null)}
        onDone={done}
      />
    </Page>
  );
}
