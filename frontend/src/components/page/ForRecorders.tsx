import { Outlet } from "react-router";
import { useMayRecord } from "@/api/session";
import { NotYours } from "./NotYours";

interface ForRecordersProps {
  title: string;
  back: { to: string; label: string };
  /** Who does this, in a sentence. */
  says: string;
}

/** Around the pages that record something: a viewer who comes by their address reads whose they are. */
export function ForRecorders({ title, back, says }: ForRecordersProps) {
  return useMayRecord() ? (
    <Outlet />
  ) : (
    <NotYours title={title} back={back}>
      {says}
    </NotYours>
  );
}
