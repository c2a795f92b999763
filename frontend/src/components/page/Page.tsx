import { type ReactNode, useEffect, useRef } from "react";
import { Link, useLocation } from "react-router";
import { ActBar } from "../form/ActBar";
import classes from "./page.module.css";
import { TitleBlock } from "./TitleBlock";

export interface Fact {
  label: string;
  value: ReactNode;
}

interface PageProps {
  title: string;
  /** Stands in the head beside the title: a vessel, a swatch. */
  drawing?: ReactNode;
  /** What to know first, in ruled cells under the title. */
  facts?: readonly Fact[];
  /** Signs beside the title, such as "On hold". */
  marks?: ReactNode;
  back?: { to: string; label: string };
  /** The page's acts: under the thumb on a phone, in the head on a laptop. */
  acts?: ReactNode;
  children?: ReactNode;
}

/** One sheet: its title, what to know first, its acts, and the block in the corner that says whose drawing it is. */
export function Page({ title, drawing, facts = [], marks, back, acts, children }: PageProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  const isFirst = useLocation().key === "default";

  useEffect(() => {
    if (!isFirst) heading.current?.focus({ preventScroll: true });
  }, [isFirst]);

  return (
    <article className={classes.page}>
      <title>{`${title} · Lot & Pour`}</title>
      <header className={classes.head}>
        {drawing && <div className={classes.drawing}>{drawing}</div>}
        <div className={classes.name}>
          {back && (
            <Link to={back.to} className={`${classes.back} no-print`}>
              {back.label}
            </Link>
          )}
          <h1 ref={heading} tabIndex={-1}>
            {title}
          </h1>
          {marks}
        </div>
        {facts.length > 0 && (
          <dl className={classes.facts}>
            {facts.map(({ label, value }) => (
              <div key={label}>
                <dt>{label}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
        )}
      </header>
      <div className={classes.body}>{children}</div>
      {acts && (
        <div className={classes.acts}>
          <ActBar>{acts}</ActBar>
        </div>
      )}
      <TitleBlock title={title} />
    </article>
  );
}

/** Two or more parts side by side where there is room, a thin rule between them; one under another on a phone. */
export function Columns({ children, lead = false }: { children: ReactNode; lead?: boolean }) {
  return (
    <div className={classes.columns} data-lead={lead || undefined}>
      {children}
    </div>
  );
}

interface PartProps {
  title: string;
  /** Stands at the end of the title's line. */
  aside?: ReactNode;
  children: ReactNode;
}

/** A part of a page under its own heading. */
export function Part({ title, aside, children }: PartProps) {
  return (
    <section className={classes.part} aria-label={title}>
      <div className={classes.partHead}>
        <h2>{title}</h2>
        {aside}
      </div>
      {children}
    </section>
  );
}
