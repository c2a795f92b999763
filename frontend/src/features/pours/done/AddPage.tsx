import { Navigate, useNavigate, useParams } from "react-router";
import { useAct } from "@/api/act";
import { useMaterials } from "@/api/records";
import { MomentField } from "@/components/entry/MomentField";
import { momentAt } from "@/components/entry/moment";
import { useWays } from "@/components/figures";
import { BigButton, Sheet, useSheet } from "@/components/form";
import { clearUnder } from "@/components/form/clearUnder";
import { Page, Part } from "@/components/page";
import { byId, titleOf } from "../about";
import { LinesEditor } from "../lines/LinesEditor";
import { type Line, usageBody } from "../lines/line";
import { fieldOf, missingOf } from "../planned/account";
import { FoundList } from "../planned/FoundList";
import { type Pour, usePour } from "../queries";
import { type Found, foundBody } from "../short/found";
import { useShort } from "../short/useShort";
import { useTold } from "../short/useTold";

type Added = { usages: Line[]; found: Found[]; poured_at: string };

function Add({ pour }: { pour: Pour }) {
  const navigate = useNavigate();
  const { timeZone } = useWays();
  const materials = byId(useMaterials());
  const act = useTold(
    useAct("post", "/api/pours/{id}/additions/", {
      params: { id: pour.id },
      onDone: () => navigate(`/pours/${pour.id}`, { replace: true }),
    }),
  );
  const sheet = useSheet<Added, Parameters<typeof act.send>[0], unknown>({
    act,
    initial: { usages: [], found: [], poured_at: "" },
    toBody({ usages, found, poured_at }) {
      const moment = momentAt(poured_at, timeZone);
      return {
        usages: usages.map(usageBody),
        ...(found.length > 0 && { found: found.map(foundBody) }),
        ...(moment && { poured_at: moment }),
      };
    },
    draft: `added-${pour.id}`,
    fieldFor: fieldOf,
    check: ({ usages }) => ({
      ...missingOf({ usages, leftover: null }),
      ...(usages.length === 0 && { usages: "Say what else went in." }),
    }),
  });
  const { form } = sheet;
  const { usages, found, poured_at } = form.values;
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
    <Page
      title={`More went into pour ${pour.number}`}
      back={{ to: `/pours/${pour.id}`, label: titleOf(pour) }}
    >
      <Sheet sheet={short.quiet(sheet)} acts={<BigButton busy={sheet.isPending}>Add it</BigButton>}>
        <Part title="What else went in">
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
            more="Pick what went in"
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
        <div id="poured-at" className="cells">
          <MomentField
            label="Added at"
            value={poured_at}
            description={poured_at === "" ? "Left empty: now." : undefined}
            error={errorOf("poured_at")}
            onChange={(local) => form.setFieldValue("poured_at", local)}
          />
        </div>
      </Sheet>
      {short.drawn}
    </Page>
  );
}

/** A top-up, or another kit: joins a completed pour without undoing it. */
export function AddPage() {
  const pour = usePour(Number(useParams().id));
  return pour.status === "completed" ? <Add pour={pour} /> : <Navigate to={`/pours/${pour.id}`} replace />;
}
