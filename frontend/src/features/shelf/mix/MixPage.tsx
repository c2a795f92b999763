import { Link, useNavigate, useSearchParams } from "react-router";
import { useAct } from "@/api/act";
import { useMaterials } from "@/api/records";
import { useMayRecord } from "@/api/session";
import { fieldOfAmount } from "@/components/entry/AmountField";
import { BigButton, Sheet, useSheet } from "@/components/form";
import { Cautions } from "@/components/notes/Cautions";
import { EmptyState } from "@/components/notes/EmptyState";
import { Columns, Page, Part } from "@/components/page";
import { NotYours } from "@/components/page/NotYours";
import { useLots } from "../queries";
import { LatelyMixed } from "./LatelyMixed";
import { MixFields } from "./MixFields";
import classes from "./mix.module.css";
import { checkMix, type MixTyped, mixBody, startOf } from "./mixing";

function MixForm({ lot }: { lot: number | null }) {
  const lots = useLots();
  const materials = useMaterials();
  const navigate = useNavigate();
  const act = useAct("post", "/api/blends/", {
    onDone: (mix) => void navigate(`/shelf/lots/${mix.lot.id}`),
  });
  const sheet = useSheet<MixTyped, ReturnType<typeof mixBody>, unknown>({
    act: act as never,
    initial: startOf(lots.find(({ id }) => id === lot)),
    toBody: mixBody,
    draft: `mix-${lot ?? "new"}`,
    fieldFor: fieldOfAmount,
    check: checkMix,
  });
  const { inputs } = sheet.form.values;
  const inside = new Set(
    lots.filter(({ id }) => inputs.some((input) => input.lot === String(id))).map((each) => each.material.id),
  );
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Mixed</BigButton>}>
      <Cautions acts={["mix"]} materials={materials.filter(({ id }) => inside.has(id))} />
      <MixFields form={sheet.form} lots={lots} materials={materials} />
    </Sheet>
  );
}

/** A house colour, a jug, a squeeze bottle filled from a pail: lots go into a new one, traced and with its own use-by. */
export function MixPage() {
  return useMayRecord() ? (
    <MixSheet />
  ) : (
    <NotYours title="House mix or bottle" back={{ to: "/shelf", label: "The shelf" }}>
      Owners and crew mix; a viewer reads.
    </NotYours>
  );
}

function MixSheet() {
  const [params] = useSearchParams();
  const asked = Number(params.get("lot") ?? "");
  const lots = useLots();
  return (
    <Page
      title="House mix or bottle"
      back={asked ? { to: `/shelf/lots/${asked}`, label: "The lot" } : { to: "/shelf", label: "The shelf" }}
    >
      {lots.length === 0 ? (
        <EmptyState
          title="There is nothing to mix"
          act={<Link to="/receiving/new">Receive a delivery</Link>}
        />
      ) : (
        <Columns lead>
          <Part title="What goes in">
            <div className={classes.form}>
              <MixForm key={asked} lot={asked || null} />
            </div>
          </Part>
          <Part title="Lately mixed">
            <LatelyMixed />
          </Part>
        </Columns>
      )}
    </Page>
  );
}
