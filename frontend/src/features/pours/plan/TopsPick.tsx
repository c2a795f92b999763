import { type ReactNode, useState } from "react";
import { PickOne } from "@/components/entry/PickOne";
import { Outline } from "@/components/outline/Outline";
import type { Job } from "../queries";
import classes from "./plan.module.css";

interface TopsPickProps {
  jobs: readonly Job[];
  chosen: readonly number[];
  onChange: (pieces: number[]) => void;
  /** The job that the page was opened for. */
  first?: number;
  error?: ReactNode;
}

/** The tops of a job that can be poured on. */
export function topsOf(job: Job) {
  return job.pieces.filter(({ is_scrapped }) => !is_scrapped);
}

/** Which tops the coat goes on, drawn to scale; tops of another job may join. */
export function TopsPick({ jobs, chosen, onChange, first, error }: TopsPickProps) {
  const [opened, setOpened] = useState<readonly number[]>(first === undefined ? [] : [first]);
  const picked = new Set(chosen);
  const isShown = (job: Job) => opened.includes(job.id) || job.pieces.some(({ id }) => picked.has(id));
  const shown = jobs.filter(isShown);
  const others = jobs.filter((job) => !isShown(job) && topsOf(job).length > 0);

  function toggle(piece: number, isOn: boolean) {
    onChange(isOn ? [...chosen, piece] : chosen.filter((id) => id !== piece));
  }

  function addJob(id: string) {
    const job = jobs.find((each) => String(each.id) === id);
    if (!job) return;
    setOpened([...opened, job.id]);
    const tops = topsOf(job).map((top) => top.id);
    if (shown.length === 0) onChange(tops);
    else if (tops.length === 1) onChange([...chosen, ...tops]);
  }

  return (
    <div className={classes.picking}>
      {shown.map((job) => (
        <fieldset key={job.id} className={classes.tops} aria-invalid={error ? true : undefined}>
          <legend>{job.title}</legend>
          {topsOf(job).map((top) => (
            <label key={top.id}>
              <input
                type="checkbox"
                checked={picked.has(top.id)}
                onChange={(event) => toggle(top.id, event.currentTarget.checked)}
              />
              <span>
                <Outline top={top.shape} name={top.name} hasDimensions={false} />
                {top.name}
              </span>
            </label>
          ))}
        </fieldset>
      ))}
      {error && (
        <p role="alert" className={classes.wrong}>
          {error}
        </p>
      )}
      {others.length > 0 && (
        <PickOne
          label={shown.length === 0 ? "Which job" : "Tops of another job too"}
          placeholder="Pick a job"
          value=""
          choices={others.map(({ id, title, customer }) => ({
            value: String(id),
            label: title,
            note: customer.name,
          }))}
          onChange={addJob}
        />
      )}
    </div>
  );
}
