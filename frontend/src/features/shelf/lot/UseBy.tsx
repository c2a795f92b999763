import { Day } from "@/components/figures";
import { Reckoning, Why } from "@/components/notes/Why";
import type { Lot } from "../queries";
import { useBySteps } from "./useBy";

interface UseByProps {
  lot: Lot;
  material: { shelf_life_days: number | null; open_life_days: number | null };
}

/** Until when a lot is good, and how that came about. */
export function UseBy({ lot, material }: UseByProps) {
  const steps = useBySteps(lot, material);
  if (!lot.use_by) {
    return (
      <Why figure="No use-by" label="why there is none">
        <p>
          Neither an expiry nor a made-on day is known, or the material has no shelf life. Correct the label,
          or give the material its shelf life.
        </p>
      </Why>
    );
  }
  return (
    <Why figure={<Day value={lot.use_by} away />} label="how this use-by came about">
      <Reckoning
        lines={steps.map(({ label, day, note }) => ({ label, figure: <Day value={day} />, note }))}
        total={{ label: "Use by, the earliest", figure: <Day value={lot.use_by} /> }}
      />
    </Why>
  );
}
