import { Switch, TextInput } from "@mantine/core";
import { useState } from "react";
import { Link } from "react-router";
import { useAct } from "@/api/act";
import { api } from "@/api/query";
import type { Place } from "@/api/records";
import { useMayRecord } from "@/api/session";
import { BigButton, Drawn, Sheet, useSheet } from "@/components/form";
import { StatusMark } from "@/components/notes/StatusMark";
import { Page } from "@/components/page";
import classes from "./around.module.css";

const checkName = ({ name }: { name: string }) => ({
  ...(name.trim() === "" && { name: "Say what people call it." }),
});

function AddPlace({ onDone }: { onDone: () => void }) {
  const sheet = useSheet({
    act: useAct("post", "/api/places/", { onDone }),
    initial: { name: "" },
    toBody: (typed) => typed,
    check: checkName,
  });
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Add the place</BigButton>}>
      <TextInput label="Name" data-autofocus autoComplete="off" {...sheet.form.getInputProps("name")} />
    </Sheet>
  );
}

function ChangePlace({ place, onDone }: { place: Place; onDone: () => void }) {
  const now = api.useSuspenseQuery("get", "/api/places/{id}/", { params: { path: { id: place.id } } }).data;
  const sheet = useSheet({
    act: useAct("patch", "/api/places/{id}/", { params: { id: place.id }, keepsVersion: true, onDone }),
    initial: { name: now.name, is_archived: now.is_archived },
    toBody: (typed) => typed,
    check: checkName,
  });
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Save</BigButton>}>
      <TextInput label="Name" autoComplete="off" {...sheet.form.getInputProps("name")} />
      <Switch
        label="Archived"
        description="No longer offered; what happened there stays."
        {...sheet.form.getInputProps("is_archived", { type: "checkbox" })}
      />
    </Sheet>
  );
}

/** Wherever something may lie: the shop, the van, a site. */
export function PlacesPage() {
  const { results } = api.useSuspenseQuery("get", "/api/places/", {
    params: { query: { page_size: 200 } },
  }).data;
  const mayRecord = useMayRecord();
  const [chosen, setChosen] = useState<Place | "new" | null>(null);
  const close = () => setChosen(null);
  return (
    <Page
      title="Places"
      back={{ to: "/shelf", label: "The shelf" }}
      acts={
        mayRecord && (
          <BigButton type="button" onClick={() => setChosen("new")}>
            Add a place
          </BigButton>
        )
      }
    >
      <ul className={classes.rows}>
        {results.map((place) => (
          <li key={place.id} className={classes.row}>
            <span>
              <strong>{place.name}</strong>
              {place.is_archived && <StatusMark mark="quiet">Archived</StatusMark>}
            </span>
            <Link to={`/shelf/count?place=${place.id}`}>
              Count<span className="only-read-aloud"> {place.name}</span>
            </Link>
            {mayRecord && (
              <button type="button" onClick={() => setChosen(place)}>
                Change<span className="only-read-aloud"> {place.name}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
      <Drawn
        title={chosen === "new" ? "Add a place" : (chosen?.name ?? "")}
        isOpen={chosen !== null}
        onClose={close}
      >
        {chosen === "new" && <AddPlace onDone={close} />}
        {chosen && chosen !== "new" && <ChangePlace place={chosen} onDone={close} />}
      </Drawn>
    </Page>
  );
}
