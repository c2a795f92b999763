import { useRef } from "react";
import { useNavigate, useSearchParams } from "react-router";
import { useAct } from "@/api/act";
import { useMaterials, usePlaces } from "@/api/records";
import { useMayRecord } from "@/api/session";
import { FilterRow } from "@/components/entry/FilterRow";
import { WhyField } from "@/components/entry/WhyField";
import { BigButton, Sheet, useSheet } from "@/components/form";
import { EmptyState } from "@/components/notes/EmptyState";
import { Page } from "@/components/page";
import { NotYours } from "@/components/page/NotYours";
import { useLots } from "../queries";
import { CountLine, type CountTyped } from "./CountLine";
import classes from "./count.module.css";
import { countedLots, fieldOfLine, linesOf, NOT_COUNTED } from "./counting";

function CountForm({ place }: { place: number }) {
  const lots = useLots({ place });
  const materials = new Map(useMaterials().map((material) => [material.id, material]));
  const navigate = useNavigate();
  const sent = useRef<number[]>([]);
  const inOrder = [...lots].sort(
    (a, b) => a.material.name.localeCompare(b.material.name) || a.number - b.number,
  );
  const act = useAct("post", "/api/stock-counts/", {
    onDone: ({ number }) => void navigate(`/shelf/counts?done=${number}`),
  });
  const sheet = useSheet({
    act,
    initial: {
      counts: Object.fromEntries(lots.map(({ id }) => [id, NOT_COUNTED])),
      reason: "",
    } as CountTyped,
    toBody: ({ counts, reason }) => {
      sent.current = countedLots(counts);
      return { place, counted_at: new Date().toISOString(), lines: linesOf(counts, lots), reason };
    },
    draft: `count-${place}`,
    fieldFor: (name) => fieldOfLine(name, sent.current),
    check: ({ counts }) => ({
      ...(countedLots(counts).length === 0 && { reason: "Count at least one lot." }),
    }),
  });
  const done = countedLots(sheet.form.values.counts).length;
  if (lots.length === 0) return <EmptyState title="The book has nothing there" />;
  return (
    <Sheet
      sheet={sheet}
      acts={
        <BigButton busy={sheet.isPending}>{done === 0 ? "Post the count" : `Post ${done} counted`}</BigButton>
      }
    >
      <p className="soft">
        What the book says shows once a count is typed. Lots left empty stay as they are. {done} of{" "}
        {lots.length} counted.
      </p>
      <ol className={classes.lines}>
        {inOrder.map((lot) => (
          <CountLine
            key={lot.id}
            lot={lot}
            place={place}
            material={materials.get(lot.material.id)}
            form={sheet.form}
          />
        ))}
      </ol>
      <WhyField label="About the whole count" {...sheet.form.getInputProps("reason")} />
    </Sheet>
  );
}

/** Counting one place: lot by lot, the book hidden, all differences posted together. */
export function CountPage() {
  return useMayRecord() ? (
    <CountSheet />
  ) : (
    <NotYours title="Count" back={{ to: "/shelf", label: "The shelf" }}>
      Owners and crew count; a viewer reads.
    </NotYours>
  );
}

function CountSheet() {
  const places = usePlaces();
  const [params] = useSearchParams();
  const [first] = places;
  const asked = Number(params.get("place") ?? "");
  const place = places.find(({ id }) => id === asked) ?? first;
  return (
    <Page title={place ? `Count: ${place.name}` : "Count"} back={{ to: "/shelf", label: "The shelf" }}>
      {places.length > 1 && (
        <FilterRow
          label="Places"
          name="place"
          choices={places.map(({ id, name }) => [id === first?.id ? "" : String(id), name] as const)}
        />
      )}
      {place ? <CountForm key={place.id} place={place.id} /> : <EmptyState title="There is no place yet" />}
    </Page>
  );
}
