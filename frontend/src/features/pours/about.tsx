import { Link } from "react-router";
import type { Material } from "@/api/records";
import type { CupPart } from "@/components/cup/Cup";
import { Moment } from "@/components/figures";
import type { HandlingAct } from "@/components/notes/hazards";
import { StatusMark } from "@/components/notes/StatusMark";
import type { Fact } from "@/components/page";
import { coatLabel, jobsUnder, statusLabel, topsInWords } from "@/components/pours/words";
import classes from "./pours.module.css";
import type { Pour } from "./queries";

export function titleOf(pour: Pick<Pour, "layer" | "pieces">): string {
  return `${coatLabel(pour.layer)} on ${topsInWords(pour.pieces)}`;
}

/** Which job, when, who: what to know of any pour first. */
export function factsOf(pour: Pour): Fact[] {
  const jobs = jobsUnder(pour.pieces);
  return [
    {
      label: jobs.length === 1 ? "Job" : "Jobs",
      value: jobs.map(({ job, job_number, job_title }) => (
        <Link key={job} to={`/jobs/${job}`} className={classes.job}>
          {jobs.length === 1 ? job_title : `${job_number} `}
        </Link>
      )),
    },
    pour.poured_at
      ? { label: "Poured", value: <Moment value={pour.poured_at} /> }
      : {
          label: "Planned for",
          value: pour.planned_for ? <Moment value={pour.planned_for} /> : "no time yet",
        },
    { label: "Who", value: pour.people.map(({ name }) => name).join(", ") || "nobody named" },
  ];
}

export function PourMarks({ pour }: { pour: Pour }) {
  return (
    <span className={classes.marks}>
      <span className="soft">
        Pour {pour.number}, {pour.place_name}
      </span>
      {pour.status !== "planned" && pour.status !== "completed" && (
        <StatusMark mark="stop">{statusLabel(pour.status)}</StatusMark>
      )}
      {pour.is_redo && <StatusMark mark="look">Laid again over one that failed</StatusMark>}
    </span>
  );
}

/** A pour that somebody else put down and that may be the very same. */
export function SamePours({ pour }: { pour: Pour }) {
  if (pour.status !== "planned" && pour.status !== "completed") return null;
  return pour.same_pour_as.map(({ id, number, by, status }) => (
    <p key={id} className={classes.hint} role="note">
      <StatusMark mark="look">Same pour?</StatusMark>{" "}
      <Link to={`/pours/${id}`}>
        Pour {number}, put down by {by.name}
      </Link>{" "}
      is the same coat on one of these tops on the same day, {status === "planned" ? "planned" : "logged"}. If
      it is one and the same, {pour.status === "planned" ? "call one of them off" : "undo one of them"}.
    </p>
  ));
}

/** Materials under their ids. */
export function byId(materials: readonly Material[]): ReadonlyMap<number, Material> {
  return new Map(materials.map((material) => [material.id, material]));
}

/** What somebody is about to do, by what goes in and which coat it is. */
export function actsFor(coat: string, materials: readonly Material[]): HandlingAct[] {
  const kinds = new Set(materials.map(({ kind }) => kind));
  const isResin = kinds.has("resin") || kinds.has("hardener");
  const acts: [HandlingAct, boolean][] = [
    ["mix", isResin],
    ["sand", ["seal_coat", "flood_coat", "top_coat", "repair", "touch_up"].includes(coat)],
    ["spray", kinds.has("spray_can") || kinds.has("solvent")],
    ["heat", coat === "flood_coat" || coat === "accent" || coat === "repair"],
  ];
  return acts.flatMap(([act, holds]) => (holds ? [act] : []));
}

/** What is stirred into the bucket; tape, cups and solvent are not. */
export function inTheCup(
  rows: readonly { material: number; quantity: { amount: string; unit: string }; is_waste: boolean }[],
  materials: ReadonlyMap<number, Material>,
): CupPart[] {
  const stirred = new Set(["resin", "hardener", "dye", "paste", "powder", "paint"]);
  const parts = new Map<number, CupPart>();
  for (const { material, quantity, is_waste } of rows) {
    const known = materials.get(material);
    if (!known || is_waste || !stirred.has(known.kind)) continue;
    const before = parts.get(material);
    const amount = String(Number(before?.quantity.amount ?? 0) + Number(quantity.amount));
    parts.set(material, {
      key: String(material),
      name: known.name,
      colour: known.swatch,
      quantity: { amount, unit: quantity.unit },
    });
  }
  return [...parts.values()];
}
