import { Button } from "@mantine/core";
import { useNavigate } from "react-router";
import { useSession } from "@/api/session";
import { BigButton, Sheet, useSheet } from "@/components/form";
import { clearUnder } from "@/components/form/clearUnder";
import { Page, Part } from "@/components/page";
import { JobFields } from "./JobFields";
import { customerNames, missingOfJob, NEW_JOB, newJobBody } from "./jobTyped";
import { useCustomers, useMakeJob } from "./queries";
import { TopFields } from "./top/TopFields";
import { NEW_TOP } from "./top/topTyped";

/** A new job with its tops. */
export function NewJobPage() {
  const navigate = useNavigate();
  const names = customerNames(useCustomers());
  const { counts_faces } = useSession().shop;
  const rule = {
    counts_top: counts_faces.top,
    counts_edges: counts_faces.edges,
    counts_splash: counts_faces.splash,
    deducts_cutouts: counts_faces.deducts_cutouts,
  };
  const sheet = useSheet({
    act: useMakeJob((job) => navigate(`/jobs/${job.id}`, { replace: true })),
    initial: NEW_JOB,
    toBody: (typed) => newJobBody(typed, names),
    draft: "job-new",
    fieldFor: (name) => name.replace(/^customer\..*/, "customer"),
    check: missingOfJob,
  });
  const { form } = sheet;
  const { pieces } = form.values;
  const errorOf = (field: string) => form.errors[field];
  return (
    <Page title="New job" back={{ to: "/jobs", label: "Jobs" }}>
      <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Put the job down</BigButton>}>
        <JobFields
          job={form.values}
          names={names}
          set={(field, value) => form.setFieldValue(field, value as never)}
          errorOf={errorOf}
        />
        {pieces.map((top, i) => (
          <Part
            // biome-ignore lint/suspicious/noArrayIndexKey: a top that is being typed is known by its place
            key={i}
            title={pieces.length > 1 ? `Top ${i + 1}` : "The top"}
            aside={
              <Button
                variant="subtle"
                color="gray"
                c="var(--ink-soft)"
                onClick={() => form.removeListItem("pieces", i)}
              >
                Leave it out
              </Button>
            }
          >
            <TopFields
              top={top}
              rule={rule}
              hasCount
              errorOf={(field) => errorOf(`pieces.${i}.${field}`)}
              onChange={(next) => {
                form.replaceListItem("pieces", i, next);
                clearUnder(form, `pieces.${i}`);
              }}
            />
          </Part>
        ))}
        <div>
          <Button variant="default" onClick={() => form.insertListItem("pieces", NEW_TOP)}>
            {pieces.length === 0 ? "Add a top" : "Add another top"}
          </Button>
        </div>
      </Sheet>
    </Page>
  );
}
