import { useMemo } from "react";
import type { Act } from "@/api/act";
import { useWays } from "@/components/figures";
import { inWordsOf } from "../lines/lotChoices";
import { reworded } from "./reworded";

/** The act, its refusals told in the shop's own units. */
export function useTold<Body, Answer>(act: Act<Body, Answer>): Act<Body, Answer> {
  const { units } = useWays();
  const problem = useMemo(() => reworded(act.problem, inWordsOf(units)), [act.problem, units]);
  return { ...act, problem };
}
