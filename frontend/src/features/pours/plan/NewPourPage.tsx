import { useNavigate, useSearchParams } from "react-router";
import { useMaterials, usePlaces } from "@/api/records";
import { useSession } from "@/api/session";
import { useWays } from "@/components/figures";
import { BigButton, OneOf, Sheet, useSheet } from "@/components/form";
import { clearUnder } from "@/components/form/clearUnder";
import { Cautions } from "@/components/notes/Cautions";
import { Columns, Page } from "@/components/page";
import { actsFor, byId } from "../about";
import { fieldOf } from "../planned/account";
import { FoundList } from "../planned/FoundList";
import { HappenedFields } from "../planned/HappenedFields";
import classes from "../pours.module.css";
import { useJobsUnderWay, useLastPour, usePlanPour } from "../queries";
import { useShort } from "../short/useShort";
import { useTold } from "../short/useTold";
import { Amounts, OnWhat, PlacePick, WhenAndWho } from "./PlanFields";
import { missingOfPlan, NEW_PLAN, pourBody } from "./planTyped";
import { topsOf } from "./TopsPick";

/** A pour that is to be, or one that was poured without a plan. */
export function NewPourPage() {
  const navigate = useNavigate();
  const [params] = useSearchParams();
  const { timeZone, units } = useWays();
  const me = useSession().person?.id;
  const materials = useMaterials();
  const places = usePlaces();
  const jobs = useJobsUnderWay();
  const last = useLastPour();
  const job = jobs.find(({ id }) => String(id) === params.get("job"));
  const act = useTold(usePlanPour((pour) => navigate(`/pours/${pour.id}`, { replace: true })));
  const sheet = useSheet({
    act,
    initial: {
      ...NEW_PLAN,
      happened: params.get("happened") === "yes",
      pieces: job ? topsOf(job).map(({ id }) => id) : [],
      place: String(places[0]?.id ?? ""),
      people: me === undefined ? [] : [me],
    },
    toBody: (typed) =>
      pourBody(typed, { timeZone, temperature: units.temperature, before: last?.conditions }),
    draft: `pour-new-${job?.id ?? ""}`,
    fieldFor: fieldOf,
    check: missingOfPlan,
  });
  const { form } = sheet;
  const plan = form.values;
  const errorOf = (field: string) => form.errors[field];
  function set(field: string, value: unknown) {
    form.setFieldValue(field, value as never);
    clearUnder(form, field);
  }
  function planShort() {
    form.setFieldValue("allow_short", true);
    sheet.sendAnyway();
  }
  const short = useShort({
    problem: act.problem,
    onMended() {
      act.reset();
      form.clearErrors();
    },
    lines: plan.usages,
    setLines: (lines) => form.setFieldValue("usages", lines),
    ...(plan.happened
      ? { addFound: (each) => form.setFieldValue("found", [...form.getValues().found, each]) }
      : { planShort }),
    place: Number(plan.place),
    askTime: () => document.querySelector<HTMLElement>("#poured-at input")?.focus(),
  });
  const used = materials.filter(({ id }) => plan.usages.some(({ material }) => material === id));
  const fields = { plan, set, errorOf, jobs, materials: byId(materials), ...(job && { first: job.id }) };
  return (
    <Page
      title={plan.happened ? "Log a pour" : "Plan a pour"}
      back={job ? { to: `/jobs/${job.id}`, label: job.title } : { to: "/pours", label: "Pours" }}
    >
      <Sheet
        sheet={short.quiet(sheet)}
        acts={
          <BigButton busy={sheet.isPending}>{plan.happened ? "Pour completed" : "Plan the pour"}</BigButton>
        }
      >
        <Columns lead>
          <div className={classes.side}>
            <OneOf
              label="It is"
              choices={[
                ["plan", "to be poured"],
                ["log", "poured already"],
              ]}
              value={plan.happened ? "log" : "plan"}
              onChange={(what) => set("happened", what === "log")}
            />
            <OnWhat {...fields} />
            <Amounts {...fields} note={short.note} />
            <FoundList
              found={plan.found}
              errorOf={errorOf}
              onRemove={(at) =>
                set(
                  "found",
                  plan.found.filter((_, i) => i !== at),
                )
              }
            />
            {used.length > 0 && <Cautions acts={actsFor(plan.layer, used)} materials={used} />}
          </div>
          <div className={classes.side}>
            {plan.happened ? (
              <>
                <PlacePick {...fields} />
                <HappenedFields typed={plan} set={set} errorOf={errorOf} last={last} otherwise="now" />
              </>
            ) : (
              <WhenAndWho {...fields} />
            )}
          </div>
        </Columns>
      </Sheet>
      {short.drawn}
    </Page>
  );
}
