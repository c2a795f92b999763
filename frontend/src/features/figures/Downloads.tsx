import classes from "./figures.module.css";
import { fileOf, type ReportFile } from "./queries";

interface DownloadsProps {
  report: ReportFile;
  /** What is in the file, for whoever hears the link alone: "cost per square foot". */
  name: string;
  asked?: Parameters<typeof fileOf>[2];
  /** They come with the answer, so that nothing moves when it arrives. */
  isReady: boolean;
}

/** The same figures as files for a spreadsheet, as the page is filtered now. */
export function Downloads({ report, name, asked, isReady }: DownloadsProps) {
  if (!isReady) return null;
  return (
    <p className={`${classes.downloads} no-print`}>
      <span className="soft">As a file</span>
      <a href={fileOf(report, "xlsx", asked)} download>
        XLSX<span className="only-read-aloud">: {name}</span>
      </a>
      <a href={fileOf(report, "csv", asked)} download>
        CSV<span className="only-read-aloud">: {name}</span>
      </a>
    </p>
  );
}
