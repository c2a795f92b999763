import { Link, useSearchParams } from "react-router";
import { SearchField } from "@/components/entry/SearchField";
import { Moment } from "@/components/figures";
import { SourcesList } from "@/components/flow/SourcesList";
import { Columns, Page, Part } from "@/components/page";
import { coatLabel, topsInWords } from "@/components/pours/words";
import { Answer } from "../Answer";
import { Downloads } from "../Downloads";
import classes from "../figures.module.css";
import {
  type Traced,
  useJobsFound,
  usePoursFound,
  useSources,
  useTopsFound,
  useTracedName,
} from "../queries";
import { FoundList } from "./FoundList";

const OF: readonly Traced[] = ["job", "piece", "pour"];
const PAGES: Record<Traced, string> = { job: "/jobs", piece: "/tops", pour: "/pours" };

/** Look for the job, top or pour first. */
function Find() {
  const [params] = useSearchParams();
  const search = params.get("search") ?? "";
  const jobs = useJobsFound(search);
  const tops = useTopsFound(search);
  const pours = usePoursFound(search);
  return (
    <Page title="What is in a top" back={{ to: "/figures", label: "Figures" }}>
      <div className={classes.oneField}>
        <SearchField label="Customer, job, top, or its number" />
      </div>
      <Columns>
        <Part title="Tops">
          <Answer of={tops}>
            {({ results }) => (
              <FoundList
                label="Tops"
                none="No top of that name."
                rows={results.map((top) => ({
                  key: String(top.id),
                  to: `/figures/sources?piece=${top.id}`,
                  title: `${top.name}, top ${top.number}`,
                  note: `${top.of_job.title}, ${top.of_job.customer}`,
                }))}
              />
            )}
          </Answer>
        </Part>
        <Part title="Jobs">
          <Answer of={jobs}>
            {({ results }) => (
              <FoundList
                label="Jobs"
                none="No job of that name."
                rows={results.map((job) => ({
                  key: String(job.id),
                  to: `/figures/sources?job=${job.id}`,
                  title: `Job ${job.number}, ${job.title}`,
                  note: job.customer.name,
                }))}
              />
            )}
          </Answer>
        </Part>
        <Part title="Pours">
          <Answer of={pours}>
            {({ results }) => (
              <FoundList
                label="Pours"
                none="No pour of that name."
                rows={results.map((pour) => ({
                  key: String(pour.id),
                  to: `/figures/sources?pour=${pour.id}`,
                  title: `Pour ${pour.number}, ${coatLabel(pour.layer).toLowerCase()}`,
                  note: (
                    <>
                      {topsInWords(pour.pieces)} · <Moment value={pour.poured_at} />
                    </>
                  ),
                }))}
              />
            )}
          </Answer>
        </Part>
      </Columns>
    </Page>
  );
}

function Sources({ of, id }: { of: Traced; id: number }) {
  const sources = useSources(of, id);
  const name = useTracedName(of, id);
  const rows = sources.data?.rows;
  const suppliers = new Set(rows?.flatMap(({ lot }) => lot.supplier ?? [])).size;
  return (
    <Page
      title={`What is in ${name}`}
      back={{ to: "/figures/sources", label: "Another one" }}
      facts={[
        { label: "Lots", value: rows?.length },
        { label: "Suppliers", value: rows && suppliers },
        {
          label: "On hold or rejected",
          value: rows && (rows.filter(({ lot }) => lot.status !== "usable").length || "none"),
        },
      ]}
    >
      <Answer of={{ ...sources, isPlaceholderData: false }}>
        {(answer) => <SourcesList rows={answer.rows} label={`Lots in ${name}`} />}
      </Answer>
      <Downloads isReady={sources.isSuccess} report={`${of}s/${id}/sources`} name={`lots in ${name}`} />
      <p className={`${classes.ways} no-print`}>
        <Link to={`${PAGES[of]}/${id}`}>Open its page</Link>
      </p>
    </Page>
  );
}

/** Backward from a job, a top or a pour: every lot in it. */
export function SourcesPage() {
  const [params] = useSearchParams();
  for (const of of OF) {
    const id = Number(params.get(of) ?? "");
    if (Number.isInteger(id) && id > 0) return <Sources key={`${of} ${id}`} of={of} id={id} />;
  }
  return <Find />;
}
