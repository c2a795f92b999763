import { useParams } from "react-router";
import { DonePour } from "./done/DonePour";
import { PlannedPour } from "./planned/PlannedPour";
import { usePour } from "./queries";

/** One pour: to be confirmed while it is planned, to be read once it is done. */
export function PourPage() {
  const id = Number(useParams().id);
  const pour = usePour(id);
  return pour.status === "planned" ? <PlannedPour key={id} pour={pour} /> : <DonePour key={id} pour={pour} />;
}
