import { Button } from "@mantine/core";
import { Link, useSearchParams } from "react-router";
import { useIsOwner, useMayRecord } from "@/api/session";
import { FilterRow } from "@/components/entry/FilterRow";
import { SearchField } from "@/components/entry/SearchField";
import { EmptyState } from "@/components/notes/EmptyState";
import { StatusMark } from "@/components/notes/StatusMark";
import { Page } from "@/components/page";
import { useLots, useReorder, useShelf } from "./queries";
import { ShelfBoard } from "./ShelfBoard";
import classes from "./shelf.module.css";
import { boardsOf, heldCount } from "./shelfView";
import { KINDS } from "./words";

const AROUND = [
  ["/shelf/suppliers", "Suppliers"],
  ["/shelf/packs", "Packs and kits"],
  ["/shelf/systems", "Resin systems"],
  ["/shelf/places", "Places"],
  ["/shelf/counts", "Counts"],
  ["/shelf/mix", "House mix"],
] as const;

function Signed({ count, mark }: { count: number; mark: "look" | "stop" }) {
  return count === 0 ? <>none</> : <StatusMark mark={mark}>{String(count)}</StatusMark>;
}

/** Everything that the shop keeps, standing on its shelves: how full, until when, and how much may still be promised. */
export function ShelfPage() {
  const [params] = useSearchParams();
  const isArchive = params.get("archived") === "yes";
  const rows = useShelf(isArchive);
  const lots = useLots();
  const below = new Set(
    [...useReorder().values()].filter((row) => row.is_below).map((row) => row.material.id),
  );
  const isOwner = useIsOwner();
  const mayRecord = useMayRecord();
  const search = params.get("search") ?? "";
  const kind = params.get("kind") ?? "";
  const boards = boardsOf(rows, lots, { search, kind });
  const present = new Set(rows.map(({ material }) => material.kind));
  const kinds = KINDS.filter(({ value }) => present.has(value)).map(
    ({ value, many }) => [value, many] as const,
  );
  return (
    <Page
      title={isArchive ? "Archived materials" : "The shelf"}
      {...(isArchive ? { back: { to: "/shelf", label: "The shelf" } } : {})}
      facts={
        isArchive
          ? []
          : [
              { label: "Below reorder point", value: <Signed mark="look" count={below.size} /> },
              { label: "Lots with something left", value: lots.length },
              {
                label: "Past their use-by",
                value: <Signed mark="stop" count={lots.filter((lot) => lot.is_expired).length} />,
              },
              { label: "On hold or rejected", value: <Signed mark="look" count={heldCount(lots)} /> },
            ]
      }
      acts={
        !isArchive &&
        mayRecord && (
          <>
            {isOwner && (
              <Button component={Link} to="/shelf/materials/new" h={58} px={28} fz="1.06rem">
                New material
              </Button>
            )}
            <Button component={Link} to="/shelf/count" variant="default" h={58} px={28} fz="1.06rem">
              Count a place
            </Button>
          </>
        )
      }
    >
      <div className={classes.narrow}>
        <SearchField label="A material, or the number on a label" />
        <FilterRow label="Kinds" name="kind" choices={[["", "All"], ...kinds]} />
      </div>
      {boards.length === 0 ? (
        <EmptyState
          title={
            search || kind
              ? "Nothing on the shelf goes by that"
              : isArchive
                ? "Nothing is archived"
                : "The shelf is bare"
          }
        >
          {search || kind
            ? "Try fewer letters, or another kind. Lots that are empty are listed with their material."
            : isArchive
              ? "Materials that are no longer bought can be archived on their own page."
              : "Add the first material; then receive a delivery of it."}
        </EmptyState>
      ) : (
        <div className={classes.boards} aria-live="polite">
          {boards.map((board) => (
            <ShelfBoard key={board.kind} board={board} below={below} />
          ))}
        </div>
      )}
      {!isArchive && (
        <nav className={classes.around} aria-label="Around the shelf">
          {AROUND.map(([to, label]) => (
            <Link key={to} to={to}>
              {label}
            </Link>
          ))}
          <Link to={{ search: "archived=yes" }}>Archived</Link>
        </nav>
      )}
    </Page>
  );
}
