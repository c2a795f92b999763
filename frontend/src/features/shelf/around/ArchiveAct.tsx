import { Button } from "@mantine/core";
import type { Act } from "@/api/act";
import { ProblemNote } from "@/components/notes/ProblemNote";
import classes from "./around.module.css";

interface ArchiveActProps {
  isArchived: boolean;
  archive: Act<undefined, unknown>;
  unarchive: Act<undefined, unknown>;
}

/** Takes a record off the lists that forms offer, or puts it back. Nothing is erased either way. */
export function ArchiveAct({ isArchived, archive, unarchive }: ArchiveActProps) {
  const act = isArchived ? unarchive : archive;
  return (
    <div className={classes.archive}>
      <p className="soft">
        {isArchived
          ? "Archived: no longer offered in forms. Its history stays."
          : "No longer needed? Archived, it is not offered any more; its history stays."}
      </p>
      <ProblemNote problem={act.problem} />
      <Button variant="default" loading={act.isPending} onClick={() => act.submit(undefined)}>
        {isArchived ? "Put it back" : "Archive it"}
      </Button>
    </div>
  );
}
