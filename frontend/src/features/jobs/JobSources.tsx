import { useParams } from "react-router";
import { SourcesList } from "@/components/flow/SourcesList";
import { Page } from "@/components/page";
import { useJob, useJobSources } from "./queries";

/** Every lot that went into any top of a job. */
export function JobSources() {
  const id = Number(useParams().id);
  const job = useJob(id);
  const rows = useJobSources(id);
  return (
    <Page
      title={`What is in job ${job.number}`}
      back={{ to: `/jobs/${id}`, label: job.title }}
      facts={[
        { label: "Customer", value: job.customer.name },
        { label: "Lots", value: rows.length },
      ]}
    >
      <SourcesList rows={rows} label="Lots in this job" />
    </Page>
  );
}
