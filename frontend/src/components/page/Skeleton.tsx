import classes from "./page.module.css";

/** The room that a page will take while it loads: a title, its cells, some lines. It moves nothing when the page comes. */
export function PageSkeleton() {
  return (
    <div className={classes.page} aria-busy="true">
      <p className="only-read-aloud" role="status">
        Loading
      </p>
      <div className={classes.head} aria-hidden="true">
        <div className={classes.name}>
          <span className={classes.bone} style={{ width: "min(60%, 320px)", height: "2rem" }} />
        </div>
      </div>
      <div className={classes.body} aria-hidden="true">
        <LinesSkeleton lines={6} />
      </div>
    </div>
  );
}

/** Lines of a list that is still to come. */
export function LinesSkeleton({ lines = 4 }: { lines?: number }) {
  return (
    <div className={classes.bones} aria-hidden="true">
      {Array.from({ length: lines }, (_, i) => i).map((line) => (
        <span key={line} className={classes.boneLine}>
          <span className={classes.bone} style={{ width: `${62 - ((line * 13) % 34)}%`, height: "1rem" }} />
        </span>
      ))}
    </div>
  );
}
