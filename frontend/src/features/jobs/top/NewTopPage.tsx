import { useNavigate, useParams } from "react-router";
import { BigButton, Sheet, useSheet } from "@/components/form";
import { Page } from "@/components/page";
import { useAddTops, useJob } from "../queries";
import { TopFields } from "./TopFields";
import { missingOf, NEW_TOP, newTopBody } from "./topTyped";

/** A further top of a job, or several alike. */
export function NewTopPage() {
  const id = Number(useParams().id);
  const navigate = useNavigate();
  const job = useJob(id);
  const sheet = useSheet({
    act: useAddTops(id, () => navigate(`/jobs/${id}`, { replace: true })),
    initial: NEW_TOP,
    toBody: newTopBody,
    draft: `top-of-${id}`,
    check: missingOf,
  });
  const { form } = sheet;
  return (
    <Page title="Add a top" back={{ to: `/jobs/${id}`, label: job.title }}>
      <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Add it</BigButton>}>
        <TopFields
          top={form.values}
          rule={job.counting_rule}
          hasCount
          errorOf={(field) => form.errors[field]}
          onChange={(next) => {
            form.setValues(next);
            form.clearErrors();
          }}
        />
      </Sheet>
    </Page>
  );
}
