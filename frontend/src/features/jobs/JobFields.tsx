import { Autocomplete, Textarea, TextInput } from "@mantine/core";
import type { ReactNode } from "react";
import { DayField } from "@/components/entry/DayField";
import { OneOf } from "@/components/form";
import classes from "./jobs.module.css";
import { type JobTyped, onRecord } from "./jobTyped";
import { PURPOSES, type Purpose } from "./words";

interface JobFieldsProps {
  job: JobTyped;
  names: ReadonlyMap<string, number>;
  set: <Field extends keyof JobTyped>(field: Field, value: JobTyped[Field]) => void;
  errorOf: (field: string) => ReactNode;
  /** Whether the customer has to be on record already. */
  isOnRecord?: boolean;
}

/** Whom it is for, what it is called, where and until when. */
export function JobFields({ job, names, set, errorOf, isOnRecord = false }: JobFieldsProps) {
  const isNew = !isOnRecord && job.customer.trim() !== "" && onRecord(job.customer, names) === undefined;
  const text = (field: "title" | "site" | "phone", label: string) => (
    <TextInput
      label={label}
      autoComplete="off"
      value={job[field]}
      error={errorOf(field)}
      onChange={(event) => set(field, event.currentTarget.value)}
    />
  );
  return (
    <>
      <div className="cells">
        <Autocomplete
          label="Customer"
          data={[...names.keys()]}
          limit={8}
          openOnFocus={false}
          value={job.customer}
          error={errorOf("customer")}
          description={
            isOnRecord
              ? undefined
              : job.customer.trim() === ""
                ? "Somebody on record, or a new name."
                : isNew
                  ? "A new customer: put on record with the job."
                  : "On record."
          }
          onChange={(name) => set("customer", name)}
        />
        {isNew && text("phone", "Telephone, if known")}
        {text("title", "What it is called")}
        {text("site", "Where it goes")}
        <DayField
          label="Due on"
          value={job.due_on}
          error={errorOf("due_on")}
          onChange={(day) => set("due_on", day)}
        />
      </div>
      <div className={classes.purpose}>
        <OneOf
          label="What it is for"
          choices={PURPOSES}
          value={job.purpose}
          onChange={(purpose) => set("purpose", purpose as Purpose)}
        />
      </div>
      <Textarea
        label="Note"
        autosize
        minRows={1}
        maxRows={8}
        value={job.note}
        error={errorOf("note")}
        onChange={(event) => set("note", event.currentTarget.value)}
      />
    </>
  );
}
