import { Button, Menu } from "@mantine/core";
import { useState } from "react";
import { Link } from "react-router";
import { useAct } from "@/api/act";
import { useIsOwner } from "@/api/session";
import { DayField } from "@/components/entry/DayField";
import { WhyField } from "@/components/entry/WhyField";
import { useToday } from "@/components/figures";
import { BigButton, Drawn, Sheet, useSheet } from "@/components/form";
import type { Job } from "./queries";

interface FormProps {
  job: Job;
  onDone: () => void;
}

function Finish({ job, onDone }: FormProps) {
  const today = useToday();
  const act = useAct("post", "/api/jobs/{id}/finish/", { params: { id: job.id }, onDone });
  const sheet = useSheet({ act, initial: { finished_on: today }, toBody: (typed) => typed });
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>The job is finished</BigButton>}>
      <DayField label="Finished on" max={today} {...sheet.form.getInputProps("finished_on")} />
      <p className="soft">Its square feet and its cost then count in that month.</p>
    </Sheet>
  );
}

function HandOver({ job, onDone }: FormProps) {
  const today = useToday();
  const act = useAct("post", "/api/jobs/{id}/hand-over/", { params: { id: job.id }, onDone });
  const sheet = useSheet({ act, initial: { handed_over_on: today }, toBody: (typed) => typed });
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Handed over</BigButton>}>
      <DayField label="Handed over on" max={today} {...sheet.form.getInputProps("handed_over_on")} />
    </Sheet>
  );
}

function Reopen({ job, onDone }: FormProps) {
  const act = useAct("post", "/api/jobs/{id}/reopen/", { params: { id: job.id }, onDone });
  const sheet = useSheet({
    act,
    initial: { reason: "" },
    toBody: (typed) => typed,
    check: ({ reason }) => ({ ...(reason.trim() === "" && { reason: "Say why it is opened again." }) }),
  });
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Open it again</BigButton>}>
      <WhyField
        usual={["A coat has to be laid again", "Finished by mistake"]}
        {...sheet.form.getInputProps("reason")}
      />
    </Sheet>
  );
}

const FORMS = {
  finish: { title: "Finish the job", Form: Finish },
  handOver: { title: "Hand the job over", Form: HandOver },
  reopen: { title: "Open the job again", Form: Reopen },
} as const;

/** What can be done with a job as a whole. */
export function JobActs({ job, hasPours }: { job: Job; hasPours: boolean }) {
  const isOwner = useIsOwner();
  const [opened, setOpened] = useState<keyof typeof FORMS | null>(null);
  const close = () => setOpened(null);
  const isUnderWay = job.finished_on === null;
  const shown = opened && FORMS[opened];
  return (
    <>
      {!isUnderWay && !job.handed_over_on && (
        <BigButton type="button" onClick={() => setOpened("handOver")}>
          Hand over
        </BigButton>
      )}
      <Menu position="top-end" withinPortal>
        <Menu.Target>
          <Button variant="default" h={58} px={20} fz="1.06rem">
            More
          </Button>
        </Menu.Target>
        <Menu.Dropdown>
          {isUnderWay && hasPours && (
            <Menu.Item mih={48} onClick={() => setOpened("finish")}>
              Finish the job
            </Menu.Item>
          )}
          <Menu.Item component={Link} to={`/jobs/${job.id}/edit`} mih={48}>
            Change title, customer, day
          </Menu.Item>
          {!isUnderWay && isOwner && (
            <Menu.Item mih={48} onClick={() => setOpened("reopen")}>
              Open it again
            </Menu.Item>
          )}
        </Menu.Dropdown>
      </Menu>
      <Drawn title={shown?.title ?? ""} isOpen={opened !== null} onClose={close}>
        {shown && <shown.Form job={job} onDone={close} />}
      </Drawn>
    </>
  );
}
