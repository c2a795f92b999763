import classes from "./notes.module.css";

export type Mark = "ok" | "look" | "stop" | "quiet";

const SIGNS: Record<Mark, string> = {
  ok: "M3 8.500l3.500 3.500L13 4.500",
  look: "M8 2.500L14.500 14h-13zM8 6.500v4M8 12.300v.4",
  stop: "M4 4l8 8M12 4l-8 8",
  quiet: "M3 8h10",
};

/** A word with its sign: never by colour alone. */
export function StatusMark({ mark, children }: { mark: Mark; children: string }) {
  return (
    <span className={classes.mark} data-mark={mark}>
      <svg viewBox="0 0 16 16" aria-hidden="true">
        <path d={SIGNS[mark]} />
      </svg>
      {children}
    </span>
  );
}

interface LotStanding {
  status: string;
  isExpired?: boolean;
  isOpen?: boolean;
  isProvisional?: boolean;
}

/** How a lot stands, in the bench's words; nothing for one that is simply good. */
export function LotMarks({ status, isExpired, isOpen, isProvisional }: LotStanding) {
  return (
    <span className={classes.marks}>
      {status === "on_hold" && <StatusMark mark="look">On hold</StatusMark>}
      {status === "rejected" && <StatusMark mark="stop">Rejected</StatusMark>}
      {isExpired && <StatusMark mark="stop">Past its use-by</StatusMark>}
      {isOpen && <StatusMark mark="quiet">Open</StatusMark>}
      {isProvisional && <StatusMark mark="look">Price to follow</StatusMark>}
    </span>
  );
}
