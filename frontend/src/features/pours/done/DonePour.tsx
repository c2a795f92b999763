import { Button } from "@mantine/core";
import { useState } from "react";
import { Link } from "react-router";
import { useMaterials } from "@/api/records";
import { useIsOwner, useMayRecord } from "@/api/session";
import { Cup } from "@/components/cup/Cup";
import { Money } from "@/components/figures";
import { Drawn } from "@/components/form";
import { StatusMark } from "@/components/notes/StatusMark";
import { Columns, Page, Part } from "@/components/page";
import { byId, factsOf, inTheCup, PourMarks, SamePours, titleOf } from "../about";
import { PlannedAmounts } from "../planned/PlannedAmounts";
import classes from "../pours.module.css";
import type { Pour } from "../queries";
import { Explain, Undo } from "./DoneActs";
import { History, Recorded } from "./History";
import { TakenBack } from "./TakenBack";
import { WhatWentIn } from "./WhatWentIn";

type Opened = "undo" | "explain";

function OwnersWord({ pour, onExplain }: { pour: Pour; onExplain: () => void }) {
  const isOwner = useIsOwner();
  if (pour.needs_owner_reason) {
    return (
      <div className={classes.hint} role="note">
        <StatusMark mark="look">Owner's word missing</StatusMark>
        <br />
        Something past its use-by, or on hold, went in.{" "}
        {isOwner ? "Say why that was right." : "It is recorded, and waits for the owner's word."}
        {isOwner && (
          <div>
            <Button variant="default" mt={8} onClick={onExplain}>
              Give the reason
            </Button>
          </div>
        )}
      </div>
    );
  }
  return pour.owner_reason ? (
    <p className={classes.hint}>
      <strong>The owner's word:</strong> {pour.owner_reason}
    </p>
  ) : null;
}

function Acts({ pour, onUndo }: { pour: Pour; onUndo: () => void }) {
  const link = { variant: "default", h: 58, px: 14, fz: "1.06rem" } as const;
  return (
    <>
      <Button component={Link} to={`/pours/${pour.id}/add`} {...link}>
        More went in
      </Button>
      <Button component={Link} to={`/pours/${pour.id}/correct`} {...link}>
        Correct
      </Button>
      <Button {...link} c="var(--brick)" bd="1.5px solid var(--brick)" onClick={onUndo}>
        Undo
      </Button>
    </>
  );
}

/** A pour that happened, was undone or called off: what went in, how that is known, and what was booked. */
export function DonePour({ pour }: { pour: Pour }) {
  const mayRecord = useMayRecord();
  const isOwner = useIsOwner();
  const materials = byId(useMaterials());
  const [opened, setOpened] = useState<Opened | null>(null);
  const close = () => setOpened(null);
  const [first] = pour.pieces;
  const isDone = pour.status === "completed";
  return (
    <Page
      title={titleOf(pour)}
      back={first ? { to: `/jobs/${first.job}`, label: first.job_title } : { to: "/pours", label: "Pours" }}
      drawing={
        <Cup parts={inTheCup(isDone ? pour.usages : pour.planned, materials)} name="What was in the bucket" />
      }
      marks={<PourMarks pour={pour} />}
      facts={[
        ...factsOf(pour),
        ...(isOwner && isDone ? [{ label: "Cost", value: <Money value={pour.cost} /> }] : []),
      ]}
      acts={mayRecord && isDone && <Acts pour={pour} onUndo={() => setOpened("undo")} />}
    >
      {!isDone && pour.reason && (
        <p className={classes.hint}>
          <strong>Why:</strong> {pour.reason}
        </p>
      )}
      <OwnersWord pour={pour} onExplain={() => setOpened("explain")} />
      <SamePours pour={pour} />
      <Columns lead>
        <div className={classes.side}>
          {isDone ? (
            <Part title="What went in">
              <WhatWentIn pour={pour} />
            </Part>
          ) : (
            <PlannedAmounts pour={pour} isToCome={false} />
          )}
          <TakenBack pour={pour} />
        </div>
        <div className={classes.side}>
          <Recorded pour={pour} />
          <History pour={pour} />
        </div>
      </Columns>
      <Drawn
        title={opened === "explain" ? "The owner's word" : `Undo pour ${pour.number}`}
        isOpen={opened !== null}
        onClose={close}
      >
        {opened === "undo" && <Undo pour={pour} onDone={close} />}
        {opened === "explain" && <Explain pour={pour} onDone={close} />}
      </Drawn>
    </Page>
  );
}
