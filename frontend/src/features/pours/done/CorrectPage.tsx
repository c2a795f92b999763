import { Navigate, useNavigate, useParams } from "react-router";
import { useAct } from "@/api/act";
import { useMaterials } from "@/api/records";
import { onTheClock } from "@/components/entry/moment";
import { WhyField } from "@/components/entry/WhyField";
import { useWays } from "@/components/figures";
import { BigButton, Sheet, useSheet } from "@/components/form";
import { clearUnder } from "@/components/form/clearUnder";
import { Columns, Page, Part } from "@/components/page";
import { byId, titleOf } from "../about";
import { LinesEditor } from "../lines/LinesEditor";
import { type Line, usageBody, usedLines } from "../lines/line";
import { aroundBody, fieldOf, type Happened, missingOf } from "../planned/account";
import { FoundList } from "../planned/FoundList";
import { HappenedFields } from "../planned/HappenedFields";
import classes from "../pours.module.css";
import { type Pour, usePour } from "../queries";
import { seenOn } from "../seen/seen";
import { useShort } from "../short/useShort";
import { useTold } from "../short/useTold";
import { leftoverOf } from "./leftover";

type Corrected = Happened & { reason: string };

function recorded(pour: Pour, timeZone: string): Corrected {
  return {
    usages: usedLines(pour.usages),
    found: [],
    poured_at: onTheClock(pour.poured_at, timeZone),
    people: pour.people.map(({ id }) => id),
    seen: seenOn(pour),
    note: pour.note,
    leftover: leftoverOf(pour),
    reason: "",
  };
}

/** From which lot it was recorded; several gave of it where none is named. */
function RecordedLot({ line, pour }: { line: Line; pour: Pour }) {
  const usage = pour.usages.find(({ lot, place }) => line.lot === `${lot}@${place}`);
  return usage ? (
    <>
      from lot {usage.number} ({usage.lot_number})
    </>
  ) : (
    "from where the shelf decides"
  );
}

function Correct({ pour }: { pour: Pour }) {
  const navigate = useNavigate();
  const { timeZone, units } = useWays();
  const materials = byId(useMaterials());
  const start = recorded(pour, timeZone);
  const act = useTold(
    useAct("post", "/api/pours/{id}/correct/", {
      params: { id: pour.id },
      onDone: () => navigate(`/pours/${pour.id}`, { replace: true }),
    }),
  );
  const sheet = useSheet<Corrected, Parameters<typeof act.send>[0], unknown>({
    act,
    initial: start,
    toBody({ usages, reason, ...around }) {
      const { poured_at, ...rest } = around;
      const said = poured_at === start.poured_at ? "" : poured_at;
      const before = pour.conditions;
      return {
        usages: usages.map(usageBody),
        ...aroundBody({ ...rest, poured_at: said }, { timeZone, temperature: units.temperature, before }),
        reason: reason.trim(),
      };
    },
    draft: `corrected-${pour.id}`,
    fieldFor: fieldOf,
    check: (typed) => ({
      ...missingOf(typed),
      ...(typed.reason.trim() === "" && { reason: "Say what was wrong." }),
    }),
  });
  const { form } = sheet;
  const { usages, found, reason, ...around } = form.values;
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
  return (
    <Page title={`Correct pour ${pour.number}`} back={{ to: `/pours/${pour.id}`, label: titleOf(pour) }}>
      <Sheet sheet={short.quiet(sheet)} acts={<BigButton busy={sheet.isPending}>Correct it</BigButton>}>
        <Columns lead>
          <Part title="What really went in">
            <p className="soft">
              All of it is booked anew. Where some was left over and went onto another pour, say that again
              too.
            </p>
            {short.note}
            <LinesEditor
              lines={usages}
              onChange={(lines) => {
                form.setFieldValue("usages", lines);
                clearUnder(form, "usages");
              }}
              materials={materials}
              place={pour.place}
              errorOf={errorOf}
              untouched="as recorded"
              under={(line) => <RecordedLot line={line} pour={pour} />}
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
            <WhyField
              label="What was wrong"
              value={reason}
              error={errorOf("reason")}
              usual={["Another lot went in", "The amount was mistyped", "Logged from memory"]}
              onChange={(next) => form.setFieldValue("reason", next)}
            />
          </Part>
          <div className={classes.side}>
            <HappenedFields
              typed={{ ...around, found }}
              set={(field, value) => form.setFieldValue(field, value as never)}
              errorOf={errorOf}
              last={undefined}
              otherwise="as it was recorded"
              pour={pour.id}
            />
          </div>
        </Columns>
      </Sheet>
      {short.drawn}
    </Page>
  );
}

/** What went in was otherwise: all of it is taken back and booked anew, in one act. */
export function CorrectPage() {
  const pour = usePour(Number(useParams().id));
  return pour.status === "completed" ? (
    <Correct pour={pour} />
  ) : (
    <Navigate to={`/pours/${pour.id}`} replace />
  );
}
