import { Button } from "@mantine/core";
import { useState } from "react";
import { Link, useParams } from "react-router";
import { useAct } from "@/api/act";
import { usePacks } from "@/api/records";
import { useIsOwner, useMayRecord } from "@/api/session";
import { Day, Money, Quantity } from "@/components/figures";
import { BigButton, Drawn } from "@/components/form";
import { Cautions } from "@/components/notes/Cautions";
import type { HandlingAct } from "@/components/notes/hazards";
import { ProblemNote } from "@/components/notes/ProblemNote";
import { StatusMark } from "@/components/notes/StatusMark";
import { Swatch } from "@/components/notes/Swatch";
import { Columns, type Fact, Page, Part } from "@/components/page";
import { InAndOut } from "../InAndOut";
import { type ShelfRow, useFigures, useLots, useMaterial } from "../queries";
import { useByAlert } from "../shelfView";
import { kindLabel } from "../words";
import { LotList } from "./LotList";
import classes from "./material.module.css";
import { StockFigures } from "./StockFigures";
import { ComesIn, WhatItIs } from "./WhatItIs";

/** What is done with a material of this kind, and so which general cautions go before its own. */
const HANDLED: Record<string, HandlingAct[]> = {
  spray_can: ["spray", "heat"],
  solvent: ["spray", "heat"],
  powder: ["mix"],
  consumable: [],
};

function Archiving({ id, isArchived, onDone }: { id: number; isArchived: boolean; onDone: () => void }) {
  const params = { params: { id }, onDone };
  const archive = useAct("post", "/api/materials/{id}/archive/", params);
  const back = useAct("post", "/api/materials/{id}/unarchive/", params);
  const act = isArchived ? back : archive;
  return (
    <div className={classes.stack}>
      <p>
        {isArchived
          ? "It is offered again wherever a material is chosen."
          : "It is no longer offered when receiving or pouring. Its lots and its history stay."}
      </p>
      <ProblemNote problem={act.problem} />
      <BigButton
        type="button"
        tone={isArchived ? "go" : "stop"}
        busy={act.isPending}
        onClick={() => act.submit(undefined as never)}
      >
        {isArchived ? "Put it back on the shelf" : "Archive it"}
      </BigButton>
    </div>
  );
}

function factsOf(row: ShelfRow | undefined): Fact[] {
  if (!row) return [];
  return [
    { label: "Available", value: <Quantity value={row.available} /> },
    { label: "On hand", value: <Quantity value={row.on_hand} /> },
    { label: "Next use-by", value: row.next_use_by ? <Day value={row.next_use_by} /> : "none" },
    ...(row.value === undefined ? [] : [{ label: "Cost with freight", value: <Money value={row.value} /> }]),
  ];
}

/** One material: its cautions, what is there of it and why, its lots, what it is, and its in and out. */
export function MaterialPage() {
  const material = useMaterial(Number(useParams().id));
  const row = useFigures(material);
  const lots = useLots({ material: material.id });
  const packs = usePacks().filter(({ contents }) =>
    contents.some((content) => content.material.id === material.id),
  );
  const isOwner = useIsOwner();
  const mayRecord = useMayRecord();
  const [isArchiving, setArchiving] = useState(false);
  const alert = useByAlert(lots);
  const isHazardous = material.hazard_codes.length > 0 || material.cautions !== "";
  return (
    <Page
      title={material.name}
      back={{ to: "/shelf", label: "The shelf" }}
      marks={
        <span className={classes.marks}>
          <span>
            <Swatch colour={material.swatch} /> {kindLabel(material.kind)}
          </span>
          {material.is_archived && <StatusMark mark="quiet">Archived</StatusMark>}
          {alert && <StatusMark mark={alert.mark}>{alert.text}</StatusMark>}
        </span>
      }
      facts={factsOf(row)}
      acts={
        mayRecord && (
          <>
            {!material.is_archived && (
              <Button
                component={Link}
                to={`/receiving/new?material=${material.id}`}
                h={58}
                px={28}
                fz="1.06rem"
              >
                Receive some
              </Button>
            )}
            {isOwner && (
              <Button
                component={Link}
                to={`/shelf/materials/${material.id}/edit`}
                variant="default"
                h={58}
                px={28}
                fz="1.06rem"
              >
                Change
              </Button>
            )}
          </>
        )
      }
    >
      {isHazardous && <Cautions acts={HANDLED[material.kind] ?? ["mix"]} materials={[material]} />}
      <Columns>
        <div className={classes.stack}>
          <Part title="Lots" aside={<span className="soft">{lots.length}</span>}>
            <LotList material={material.id} lots={lots} />
          </Part>
          {row && (
            <Part title="What is there, and why">
              <StockFigures row={row} lots={lots} />
            </Part>
          )}
        </div>
        <div className={classes.stack}>
          <Part title="What it is">
            <WhatItIs material={material} />
          </Part>
          <Part title="Comes in">
            <ComesIn packs={packs} />
          </Part>
        </div>
      </Columns>
      <Part title="In and out">
        <InAndOut material={material.id} />
      </Part>
      {isOwner && (
        <div className="no-print">
          <button type="button" className={classes.plain} onClick={() => setArchiving(true)}>
            {material.is_archived ? "Put it back on the shelf" : "Archive this material"}
          </button>
        </div>
      )}
      <Drawn
        title={material.is_archived ? "Put back" : "Archive"}
        isOpen={isArchiving}
        onClose={() => setArchiving(false)}
      >
        <Archiving id={material.id} isArchived={material.is_archived} onDone={() => setArchiving(false)} />
      </Drawn>
    </Page>
  );
}
