import { useSearchParams } from "react-router";
import { FilterRow } from "@/components/entry/FilterRow";
import { SearchField } from "@/components/entry/SearchField";
import { Day, Quantity } from "@/components/figures";
import { LotMarks } from "@/components/notes/StatusMark";
import { Columns, Page, Part } from "@/components/page";
import { Answer } from "../Answer";
import { Downloads } from "../Downloads";
import classes from "../figures.module.css";
import { type Uses, useLotsFound, useUses } from "../queries";
import { FoundList } from "./FoundList";
import { LotFlow } from "./LotFlow";
import { leftOf } from "./stops";
import { UseJobs } from "./UseJobs";

const WHICH = [
  ["", "This lot"],
  ["true", "All lots of this number"],
] as const;

/** Look for the lot first: by its number, the number on its label or its material. */
function FindLot() {
  const [params] = useSearchParams();
  const found = useLotsFound(params.get("search") ?? "");
  return (
    <Page title="Where a lot went" back={{ to: "/figures", label: "Figures" }}>
      <div className={classes.oneField}>
        <SearchField label="Number on the label, our number, or material" />
      </div>
      <Part title="Lots">
        <Answer of={found}>
          {({ results }) => (
            <FoundList
              label="Lots"
              none="No lot of that number. Look at the label once more."
              rows={results.map((lot) => ({
                key: String(lot.id),
                to: `/figures/uses?lot=${lot.id}`,
                title: `${lot.lot_number}, ${lot.material.name}`,
                note: (
                  <>
                    Lot {lot.number} · came in <Day value={lot.received_on} /> ·{" "}
                    <Quantity value={lot.on_hand} /> here
                  </>
                ),
              }))}
            />
          )}
        </Answer>
      </Part>
    </Page>
  );
}

function Traced({ uses, lot }: { uses: Uses; lot: number }) {
  return (
    <Columns lead>
      <Part title="Into which pours and tops">
        <LotFlow uses={uses} lot={lot} />
      </Part>
      <div className={classes.stack}>
        <Part title="Jobs and customers">
          <UseJobs uses={uses} />
        </Part>
      </div>
    </Columns>
  );
}

function OneLot({ lot, all }: { lot: number; all: boolean }) {
  const uses = useUses(lot, all);
  const { data } = uses;
  const named = data?.lots.find(({ id }) => id === lot) ?? data?.lots[0];
  const tops = new Set(data?.pours.flatMap((pour) => pour.tops.map(({ piece }) => piece))).size;
  return (
    <Page
      title={named ? `Where ${all ? named.lot_number : `lot ${named.number}`} went` : "Where a lot went"}
      back={{ to: "/figures/uses", label: "Another lot" }}
      facts={[
        { label: "Material", value: named?.material.name },
        { label: "On the label", value: named?.lot_number },
        { label: "Came in", value: <Quantity value={data?.total} /> },
        { label: "Left of it", value: data && <Quantity value={leftOf(data)} /> },
        { label: "Tops", value: data && tops },
        {
          label: "Stands",
          value: named && (named.status === "usable" ? "OK" : <LotMarks status={named.status} />),
        },
      ]}
    >
      <FilterRow label="Which lots" name="all" choices={WHICH} />
      <Answer of={{ ...uses, isPlaceholderData: false }}>
        {(answer) => <Traced uses={answer} lot={lot} />}
      </Answer>
      <Downloads
        isReady={uses.isSuccess}
        report={`lots/${lot}/uses`}
        name="where it went"
        asked={{ all_of_this_number: all }}
      />
    </Page>
  );
}

/** Forward from a lot: every pour, top, job and customer that got any of it, and where the rest is. */
export function UsesPage() {
  const [params] = useSearchParams();
  const lot = Number(params.get("lot") ?? "");
  if (!Number.isInteger(lot) || lot <= 0) return <FindLot />;
  return <OneLot lot={lot} all={params.get("all") === "true"} />;
}
