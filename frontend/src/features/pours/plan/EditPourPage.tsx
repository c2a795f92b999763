import { Navigate, useNavigate, useParams } from "react-router";
import { useMaterials } from "@/api/records";
import { useWays } from "@/components/figures";
import { BigButton, Sheet, useSheet } from "@/components/form";
import { clearUnder } from "@/components/form/clearUnder";
import { Columns, Page } from "@/components/page";
import { byId, titleOf } from "../about";
import { fieldOf } from "../planned/account";
import classes from "../pours.module.css";
import { type Pour, useChangePlan, useJobsUnderWay, usePour } from "../queries";
import { useShort } from "../short/useShort";
import { useTold } from "../short/useTold";
import { Amounts, OnWhat, WhenAndWho } from "./PlanFields";
import { changeBody, missingOfPlan, typedPlan } from "./planTyped";

function EditPlan({ pour }: { pour: Pour }) {
  const navigate = useNavigate();
  const { timeZone } = useWays();
  const materials = byId(useMaterials());
  const jobs = useJobsUnderWay();
  const act = useTold(useChangePlan(pour.id, () => navigate(`/pours/${pour.id}`, { replace: true })));
  const sheet = useSheet({
    act,
    initial: typedPlan(pour, timeZone),
    toBody: (typed) => changeBody(typed, pour, timeZone),
    draft: `plan-${pour.id}`,
    fieldFor: fieldOf,
    check: missingOfPlan,
  });
  const { form } = sheet;
  const short = useShort({
    problem: act.problem,
    onMended() {
      act.reset();
      form.clearErrors();
    },
    lines: form.values.usages,
    setLines: (lines) => form.setFieldValue("usages", lines),
    planShort() {
      form.setFieldValue("allow_short", true);
      sheet.sendAnyway();
    },
    place: Number(form.values.place),
    askTime: () => document.querySelector<HTMLElement>("input[type=datetime-local]")?.focus(),
  });
  const fields = {
    plan: form.values,
    set(field: string, value: unknown) {
      form.setFieldValue(field, value as never);
      clearUnder(form, field);
    },
    errorOf: (field: string) => form.errors[field],
    jobs,
    materials,
  };
  return (
    <Page
      title={`Change the plan of pour ${pour.number}`}
      back={{ to: `/pours/${pour.id}`, label: titleOf(pour) }}
    >
      <Sheet sheet={short.quiet(sheet)} acts={<BigButton busy={sheet.isPending}>Save the plan</BigButton>}>
        <Columns lead>
          <div className={classes.side}>
            <OnWhat {...fields} />
            <Amounts {...fields} note={short.note} />
          </div>
          <WhenAndWho {...fields} />
        </Columns>
      </Sheet>
      {short.drawn}
    </Page>
  );
}

/** Another coat, other tops, amounts or another day for a pour that is still planned. */
export function EditPourPage() {
  const id = Number(useParams().id);
  const pour = usePour(id);
  return pour.status === "planned" ? <EditPlan pour={pour} /> : <Navigate to={`/pours/${id}`} replace />;
}
