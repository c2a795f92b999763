import type { ReactNode } from "react";
import { Link } from "react-router";
import { EmptyState } from "../notes/EmptyState";
import { Page } from "./Page";

interface NotYoursProps {
  title: string;
  back: { to: string; label: string };
  /** Who may, in a sentence. */
  children: ReactNode;
}

/** Stands in place of a form that the person's role does not allow, before anything is typed in vain. */
export function NotYours({ title, back, children }: NotYoursProps) {
  return (
    <Page title={title} back={back}>
      <EmptyState title="Not with your role" act={<Link to={back.to}>{back.label}</Link>}>
        {children}
      </EmptyState>
    </Page>
  );
}
