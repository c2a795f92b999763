import { useNavigate, useParams } from "react-router";
import { BigButton, Sheet, useSheet } from "@/components/form";
import { Page } from "@/components/page";
import { JobFields } from "./JobFields";
import { customerNames, jobBody, missingOfJob, onRecord, typedJob } from "./jobTyped";
import { useCustomers, useEditJob, useJob } from "./queries";

/** What a job is called, whom it is for and until when, changed over the version that was read. */
export function EditJobPage() {
  const id = Number(useParams().id);
  const navigate = useNavigate();
  const job = useJob(id);
  const names = customerNames(useCustomers());
  const whom = (typed: string) => (typed === job.customer.name ? job.customer.id : onRecord(typed, names));
  const sheet = useSheet({
    act: useEditJob(id, () => navigate(`/jobs/${id}`, { replace: true })),
    initial: typedJob(job),
    toBody: (typed) => ({ ...jobBody(typed, names), customer: whom(typed.customer) ?? job.customer.id }),
    draft: `job-${id}`,
    check: (typed) => ({
      ...(whom(typed.customer) === undefined && { customer: "Pick somebody on record." }),
      ...missingOfJob(typed),
    }),
  });
  const { form } = sheet;
  return (
    <Page title={`Change job ${job.number}`} back={{ to: `/jobs/${id}`, label: job.title }}>
      <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Save</BigButton>}>
        <JobFields
          job={form.values}
          names={names}
          set={(field, value) => form.setFieldValue(field, value as never)}
          errorOf={(field) => form.errors[field]}
          isOnRecord
        />
      </Sheet>
    </Page>
  );
}
