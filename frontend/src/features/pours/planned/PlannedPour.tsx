import { useState } from "react";
import { Link } from "react-router";
import { useMaterials } from "@/api/records";
import { useMayRecord } from "@/api/session";
import { Cup } from "@/components/cup/Cup";
import { useWays } from "@/components/figures";
import { BigButton, Sheet, useSheet } from "@/components/form";
import { clearUnder } from "@/components/form/clearUnder";
import { Cautions } from "@/components/notes/Cautions";
import { Columns, Page, Part } from "@/components/page";
import { actsFor, byId, factsOf, inTheCup, PourMarks, SamePours, titleOf } from "../about";
import { LinesEditor } from "../lines/LinesEditor";
import classes from "../pours.module.css";
import { type Pour, useCompletePour, useLastPour } from "../queries";
import { GroupCheck } from "../seen/GroupCheck";
import { useShort } from "../short/useShort";
import { useTold } from "../short/useTold";
import { completeBody, fieldOf, happeningOf, missingOf } from "./account";
import { CallOff } from "./CallOff";
import { FoundList } from "./FoundList";
import { HappenedFields } from "./HappenedFields";
import { PlannedAmounts } from "./PlannedAmounts";
import { FromLots, ProposalNote } from "./Proposal";

/** The form that says what happened: one tap where all went as planned, line by line where it did not. */
function CompleteSheet({ pour }: { pour: Pour }) {
  const { timeZone, units } = useWays();
  const materials = useMaterials();
  const last = useLastPour();
  const act = useTold(useCompletePour(pour.id));
  const planned = pour.planned.length;
  const sheet = useSheet({
    act,
    initial: happeningOf(pour),
    toBody: (typed) =>
      completeBody(typed, planned, { timeZone, temperature: units.temperature, before: last?.conditions }),
    draft: `pour-${pour.id}`,
    fieldFor: fieldOf,
    check: missingOf,
  });
  const { form } = sheet;
  const { usages, found, ...around } = form.values;
  const errorOf = (field: string) => form.errors[field];
  const short = useShort({
    problem: act.problem,
    onMended() {
      act.reset();
      form.clearErrors();
    },
    lines: usages,
    setLines: (lines) => form.setFieldValue("usages", lines),
    addFound: (each) => form.setFieldValue("found", [...form.getValues().found, each]),
    place: pour.place,
    askTime: () => document.querySelector<HTMLElement>("#poured-at input")?.focus(),
  });
  const isConfirmed = usages.every(({ is_touched, weighed }) => is_touched || weighed);
  const isPast = pour.planned_for !== null && Date.parse(pour.planned_for) < Date.now();
  const used = materials.filter(({ id }) => usages.some(({ material }) => material === id));
  return (
    <>
      <Sheet sheet={short.quiet(sheet)} acts={<BigButton busy={sheet.isPending}>Pour completed</BigButton>}>
        <Columns lead>
          <div className={classes.side}>
            <Part
              title="What goes in"
              aside={
                usages.length > 0 && (
                  <GroupCheck
                    isDone={isConfirmed}
                    onCheck={() =>
                      form.setFieldValue(
                        "usages",
                        usages.map((line) => ({ ...line, is_touched: true })),
                      )
                    }
                  >
                    All as planned
                  </GroupCheck>
                )
              }
            >
              {short.note}
              <ProposalNote proposal={pour.proposal} />
              <LinesEditor
                lines={usages}
                onChange={(lines) => {
                  form.setFieldValue("usages", lines);
                  clearUnder(form, "usages");
                }}
                materials={byId(materials)}
                place={pour.place}
                errorOf={errorOf}
                under={(line) => <FromLots line={line} pour={pour} />}
              />
              <FoundList
                found={found}
                errorOf={errorOf}
                onRemove={(at) =>
                  form.setFieldValue(
                    "found",
                    found.filter((_, i) => i !== at),
                  )
                }
              />
            </Part>
            <Cautions acts={actsFor(pour.layer, used)} materials={used} />
          </div>
          <div className={classes.side}>
            <HappenedFields
              typed={{ ...around, found }}
              set={(field, value) => form.setFieldValue(field, value as never)}
              errorOf={errorOf}
              last={last}
              otherwise={isPast ? "at the planned time" : "now"}
              pour={pour.id}
            />
          </div>
        </Columns>
      </Sheet>
      {short.drawn}
    </>
  );
}

/** A pour that is to be: what goes in and from where, to be confirmed or mended when it has happened. */
export function PlannedPour({ pour }: { pour: Pour }) {
  const mayRecord = useMayRecord();
  const materials = byId(useMaterials());
  const [isCallingOff, setCallingOff] = useState(false);
  const [first] = pour.pieces;
  return (
    <Page
      title={titleOf(pour)}
      back={first ? { to: `/jobs/${first.job}`, label: first.job_title } : { to: "/pours", label: "Pours" }}
      drawing={<Cup parts={inTheCup(pour.planned, materials)} name="What goes into the bucket" />}
      marks={<PourMarks pour={pour} />}
      facts={factsOf(pour)}
    >
      <SamePours pour={pour} />
      {mayRecord ? <CompleteSheet pour={pour} /> : <PlannedAmounts pour={pour} />}
      {mayRecord && (
        <div className={`${classes.others} no-print`}>
          <Link to={`/pours/${pour.id}/edit`}>Change the plan</Link>
          <button type="button" onClick={() => setCallingOff(true)}>
            Call it off
          </button>
        </div>
      )}
      <CallOff pour={pour} isOpen={isCallingOff} onClose={() => setCallingOff(false)} />
    </Page>
  );
}
