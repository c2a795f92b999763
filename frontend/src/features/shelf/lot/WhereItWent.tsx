import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { client } from "@/api/client";
import { asProblem } from "@/api/problem";
import { Quantity } from "@/components/figures";
import { UsesList } from "@/components/flow/UsesList";
import { OneOf } from "@/components/form";
import { ProblemNote } from "@/components/notes/ProblemNote";
import { LinesSkeleton } from "@/components/page";
import type { Lot } from "../queries";
import classes from "./lot.module.css";

function useUses(lot: number, wholeNumber: boolean) {
  return useQuery({
    queryKey: ["get", "/api/lots/{id}/uses/", lot, wholeNumber],
    queryFn: async () => {
      const { data } = await client.GET("/api/lots/{id}/uses/", {
        params: { path: { id: lot }, query: { all_of_this_number: wholeNumber } },
      });
      return data ?? null;
    },
    placeholderData: keepPreviousData,
  });
}

/** Every pour and top that got any of a lot, through whatever it was mixed into; or of the whole supplier's number. */
export function WhereItWent({ lot }: { lot: Lot }) {
  const [scope, setScope] = useState("lot");
  const { data, error, isPending, refetch } = useUses(lot.id, scope === "number");
  if (isPending) return <LinesSkeleton lines={4} />;
  if (error) return <ProblemNote problem={asProblem(error)} onRetry={() => void refetch()} />;
  const tops = new Set(data?.pours.flatMap((pour) => pour.tops.map(({ piece }) => piece)));
  return (
    <div className={classes.went}>
      {!lot.is_own_number && (
        <OneOf
          label="Of what"
          choices={[
            ["lot", "This lot"],
            ["number", `All of ${lot.lot_number}`],
          ]}
          value={scope}
          onChange={setScope}
        />
      )}
      {data && (
        <>
          <p>
            {tops.size === 0 ? (
              <strong>In no top yet</strong>
            ) : (
              <>
                <strong>{tops.size === 1 ? "1 top" : `${tops.size} tops`}</strong> in{" "}
                {data.pours.length === 1 ? "1 pour" : `${data.pours.length} pours`}
              </>
            )}
            , of <Quantity value={data.total} /> that came in.
          </p>
          <UsesList uses={data} label={`Where lot ${lot.number} went`} />
        </>
      )}
    </div>
  );
}
