import { Checkbox, Textarea } from "@mantine/core";
import type { ReactNode } from "react";
import { type Material, usePlaces } from "@/api/records";
import { MomentField } from "@/components/entry/MomentField";
import { PickOne } from "@/components/entry/PickOne";
import { Quantity } from "@/components/figures";
import { Part } from "@/components/page";
import { COATS } from "@/components/pours/words";
import { LinesEditor } from "../lines/LinesEditor";
import type { Line } from "../lines/line";
import { type Job, useShelf } from "../queries";
import { PeoplePick } from "../seen/PeoplePick";
import { LikeBefore } from "./LikeBefore";
import classes from "./plan.module.css";
import { filledIn, type PlanTyped } from "./planTyped";
import { TopsPick } from "./TopsPick";

export interface PlanFieldsProps {
  plan: PlanTyped;
  set: <Field extends keyof PlanTyped>(field: Field, value: PlanTyped[Field]) => void;
  errorOf: (field: string) => ReactNode;
  jobs: readonly Job[];
  materials: ReadonlyMap<number, Material>;
  /** The job that the page was opened for. */
  first?: number;
}

/** Which coat it is: all in sight, one tap. */
function CoatPick({ plan, set, errorOf }: Pick<PlanFieldsProps, "plan" | "set" | "errorOf">) {
  const error = errorOf("layer");
  return (
    <fieldset className={classes.coats} aria-invalid={error ? true : undefined} tabIndex={-1}>
      <legend>Which coat</legend>
      {COATS.map(([value, label]) => (
        <label key={value}>
          <input
            type="radio"
            name="coat"
            checked={plan.layer === value}
            onChange={() => set("layer", value)}
          />
          <span>{label}</span>
        </label>
      ))}
      {error && (
        <p role="alert" className={classes.wrong}>
          {error}
        </p>
      )}
    </fieldset>
  );
}

/** Coat and tops: what is poured on what. */
export function OnWhat({ plan, set, errorOf, jobs, first }: Omit<PlanFieldsProps, "materials">) {
  return (
    <>
      <CoatPick plan={plan} set={set} errorOf={errorOf} />
      <TopsPick
        jobs={jobs}
        chosen={plan.pieces}
        error={errorOf("pieces")}
        onChange={(pieces) => set("pieces", pieces)}
        {...(first !== undefined && { first })}
      />
      <Checkbox
        label="Laid again over a coat that failed"
        description="Its cost then stands beside the job's, not inside."
        checked={plan.is_redo}
        onChange={(event) => set("is_redo", event.currentTarget.checked)}
      />
    </>
  );
}

/** The tops that are picked, and what they come to in square feet. */
export function picked(jobs: readonly Job[], pieces: readonly number[]) {
  const owners = jobs.filter((job) => job.pieces.some(({ id }) => pieces.includes(id)));
  const tops = owners.flatMap((job) => job.pieces.filter(({ id }) => pieces.includes(id)));
  return { owners, tops };
}

/** What goes in, with what may still be promised of it beside. */
export function Amounts({
  plan,
  set,
  errorOf,
  jobs,
  materials,
  note,
}: PlanFieldsProps & { note?: ReactNode }) {
  const shelf = useShelf();
  const { owners, tops } = picked(jobs, plan.pieces);
  const area = tops.reduce((sum, { area_sqft }) => sum + Number(area_sqft), 0);
  const available = (line: Line) => {
    const row = shelf.get(line.material);
    return row ? (
      <>
        <Quantity value={row.available} /> available
      </>
    ) : (
      "none on the shelf"
    );
  };
  return (
    <Part title={plan.happened ? "What went in" : "What is to go in"}>
      {(plan.layer === "" || tops.length === 0) && (
        <p className={classes.hint}>
          Pick the coat and its tops first: then the amounts of an earlier pour can be filled in.
        </p>
      )}
      {plan.layer !== "" && tops.length > 0 && (
        <LikeBefore
          coat={plan.layer}
          jobs={owners.map(({ id }) => id)}
          customers={owners.map(({ customer }) => customer.name)}
          area={area.toFixed(6)}
          onFill={(lines) => set("usages", filledIn(plan.usages, lines))}
        />
      )}
      {note}
      <LinesEditor
        lines={plan.usages}
        onChange={(lines) => set("usages", lines)}
        materials={materials}
        place={Number(plan.place) || 0}
        errorOf={errorOf}
        under={available}
        more={plan.usages.length === 0 ? "Add a material" : "Add another material"}
        isPlan={!plan.happened}
      />
    </Part>
  );
}

export function PlacePick({ plan, set, errorOf }: Pick<PlanFieldsProps, "plan" | "set" | "errorOf">) {
  const places = usePlaces();
  if (places.length < 2) return null;
  return (
    <PickOne
      label="Where"
      choices={places.map(({ id, name }) => ({ value: String(id), label: name }))}
      value={plan.place || String(places[0]?.id ?? "")}
      error={errorOf("place")}
      onChange={(place) => set("place", place)}
    />
  );
}

/** When, where and who, of a pour that is to be. */
export function WhenAndWho({ plan, set, errorOf }: Pick<PlanFieldsProps, "plan" | "set" | "errorOf">) {
  return (
    <Part title="When and who">
      <div className={classes.rows}>
        <MomentField
          label="Planned for"
          value={plan.poured_at}
          error={errorOf("poured_at")}
          description="Left empty: the day is not settled."
          onChange={(local) => set("poured_at", local)}
        />
        <PlacePick plan={plan} set={set} errorOf={errorOf} />
        <PeoplePick chosen={plan.people} onChange={(people) => set("people", people)} legend="Who pours" />
        <Textarea
          label="Note"
          autosize
          minRows={1}
          maxRows={8}
          value={plan.note}
          error={errorOf("note")}
          onChange={(event) => set("note", event.currentTarget.value)}
        />
      </div>
    </Part>
  );
}
