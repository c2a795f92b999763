import { Button } from "@mantine/core";
import { Link, useSearchParams } from "react-router";
import { asProblem } from "@/api/problem";
import { useMayRecord } from "@/api/session";
import { FilterRow } from "@/components/entry/FilterRow";
import { Pager, usePage } from "@/components/entry/Pager";
import { SearchField } from "@/components/entry/SearchField";
import { Day, Money } from "@/components/figures";
import { EmptyState } from "@/components/notes/EmptyState";
import { ProblemNote } from "@/components/notes/ProblemNote";
import { StatusMark } from "@/components/notes/StatusMark";
import { LinesSkeleton, Page } from "@/components/page";
import { DELIVERIES_SHOWN, useDeliveries } from "./queries";
import classes from "./receiving.module.css";

function Deliveries() {
  const [params] = useSearchParams();
  const search = params.get("search") ?? "";
  const show = params.get("show") ?? "";
  const { data, error, isPending, refetch } = useDeliveries({ page: usePage(), search, show });
  if (isPending) return <LinesSkeleton lines={6} />;
  if (error) return <ProblemNote problem={asProblem(error)} onRetry={() => void refetch()} />;
  if (data.count === 0) {
    return (
      <EmptyState title={search || show ? "No delivery goes by that" : "Nothing was received yet"}>
        {search || show
          ? "Try fewer letters, or all of them."
          : "With the first delivery the shelf fills. A price may follow later."}
      </EmptyState>
    );
  }
  return (
    <>
      <ul className={classes.deliveries}>
        {data.results.map((delivery) => (
          <li key={delivery.id} className={classes.delivery} data-undone={delivery.is_undone || undefined}>
            <Day value={delivery.received_on} />
            <span className={classes.what}>
              <Link to={`/receiving/${delivery.id}`}>{delivery.supplier.name}</Link>
              <small>
                Delivery {delivery.number}
                {delivery.reference && ` · ${delivery.reference}`} · {delivery.line_count}{" "}
                {delivery.line_count === 1 ? "lot" : "lots"} · {delivery.place.name}
              </small>
            </span>
            <span className={classes.marks}>
              {delivery.is_undone ? (
                <StatusMark mark="quiet">Undone</StatusMark>
              ) : (
                delivery.is_provisional && <StatusMark mark="look">Price to follow</StatusMark>
              )}
            </span>
            <span className={classes.money}>
              {!delivery.is_undone && <Money value={delivery.landed_cost} />}
            </span>
          </li>
        ))}
      </ul>
      <Pager label="deliveries" count={data.count} pageSize={DELIVERIES_SHOWN} />
    </>
  );
}

/** What came in, the latest first; and the door for what comes in now. */
export function DeliveriesPage() {
  const mayRecord = useMayRecord();
  return (
    <Page
      title="Receiving"
      acts={
        mayRecord && (
          <Button component={Link} to="/receiving/new" h={58} px={28} fz="1.06rem">
            Receive a delivery
          </Button>
        )
      }
    >
      <div className={classes.narrow}>
        <SearchField label="A supplier, or the number on the slip" />
        <FilterRow
          label="Which deliveries"
          name="show"
          choices={[
            ["", "All"],
            ["price", "Price to follow"],
            ["undone", "Undone"],
          ]}
        />
      </div>
      <Deliveries />
    </Page>
  );
}
