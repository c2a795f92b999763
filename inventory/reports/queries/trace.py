"""The ledger's side of a trace: SQL finds which lots went into which, Python carries the exact proportions."""

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby
from operator import itemgetter
from typing import NamedTuple

from inventory.calc.apportion import apportion
from inventory.calc.genealogy import Quantity, carried_into, exact_sum, sources_of, totals_of, uses_of
from inventory.calc.job_cost import piece_weights
from inventory.reports.queries.sql import among, fetch, is_same
from inventory.stock.lines import IS_INFLOW, IS_ISSUE, MAY_BE_INFLOW
from inventory.stock.models import Kind

CONSUMED = (Kind.USED.value, Kind.WASTED.value)
ON_HAND = "on_hand"


class Part(NamedTuple):
    """What became of some of a lot: `kind` of the ledger, or on hand.

    cause: the pour that took it. lot, place: where it lies, or which lot it left (0 where a pour is meant).
    """

    kind: str
    cause: int
    lot: int
    place: int


@dataclass(frozen=True, slots=True)
class Traced:
    """Where lots went: how much of them, taken together, is in each part, and how much ever was in each lot.

    Quantities are millionths of the lots' own stock unit, exact.
    """

    parts: Mapping[Part, Quantity]
    carried: Mapping[int, Quantity]

    @property
    def total(self) -> Quantity:
        return exact_sum(self.parts.values())


def lots_of_this_number(lot: int) -> list[int]:
    """The lot and, where its number was on a label, every other lot of its material with the same number."""
    rows = fetch(
        "SELECT other.id FROM stock_lot lot JOIN stock_lot other ON other.id = lot.id "
        "OR (other.lot_number = lot.lot_number AND other.material_id = lot.material_id "
        "AND NOT lot.is_own_number AND NOT other.is_own_number) "
        "WHERE lot.id = %s ORDER BY other.id",
        [lot],
    )
    return [found for (found,) in rows]


def trace_forward(lots: Collection[int]) -> Traced:
    """Where lots of one material went, through any depth of blends and openings. Three SQL statements.

    Raises ValueError where the ledger does not add up (`verify_ledger` says where).
    """
    these, ids = among("id", lots)
    reached = (
        f"WITH RECURSIVE reached (lot) AS (SELECT id FROM stock_lot WHERE {these} UNION SELECT m.into_lot_id "
        f"FROM reached, stock_movement m WHERE {is_same('m.lot_id', 'reached.lot')} AND m.into_lot_id IS NOT NULL) "
    )
    of_reached = "lot_id IN (SELECT lot FROM reached)"
    edges = fetch(
        f"{reached} SELECT lot_id, into_lot_id, -SUM(quantity) FROM stock_movement "
        f"WHERE {of_reached} AND into_lot_id IS NOT NULL GROUP BY 1, 2",
        [ids],
    )
    parts: dict[int, list[tuple[Part, int]]] = {lot: [] for lot in lots}
    issues = fetch(
        f"{reached} SELECT lot_id, kind, cause, -SUM(quantity) FROM stock_movement "
        f"WHERE {of_reached} AND into_lot_id IS NULL AND {IS_ISSUE} GROUP BY 1, 2, 3 HAVING SUM(quantity) <> 0",
        [ids],
    )
    for lot, kind, cause, quantity in issues:
        part = Part(kind, cause, 0, 0) if cause is not None and kind in CONSUMED else Part(kind, 0, lot, 0)
        parts.setdefault(lot, []).append((part, int(quantity)))
    here = fetch(
        f"{reached} SELECT lot_id, place_id, quantity FROM stock_balance WHERE {of_reached} AND quantity > 0",
        [ids],
    )
    for lot, place, quantity in here:
        parts.setdefault(lot, []).append((Part(ON_HAND, 0, lot, place), quantity))
    whole_edges = [(source, target, int(quantity)) for source, target, quantity in edges]
    return Traced(
        parts=uses_of(lots, edges=whole_edges, parts=parts),
        carried=carried_into(
            lots, edges=whole_edges, totals=dict.fromkeys(lots, 0) | totals_of(edges=whole_edges, parts=parts)
        ),
    )


@dataclass(frozen=True, slots=True)
class Arrived:
    """All that ever came into lots, in millionths, less what went from one of them into another."""

    received: int
    found: int
    opened: int
    blended: int

    @property
    def total(self) -> int:
        return self.received + self.found + self.opened + self.blended


def arrived(lots: Collection[int]) -> Arrived:
    """What ever came into the lots, taken together. Two SQL statements."""
    these, ids = among("lot_id", lots)
    came = fetch(
        f"SELECT kind, SUM(quantity) FROM stock_movement WHERE {these} AND {MAY_BE_INFLOW} AND {IS_INFLOW} GROUP BY 1",
        [ids],
    )
    among_them, targets = among("into_lot_id", lots)
    within = fetch(
        f"SELECT kind, SUM(quantity) FROM stock_movement WHERE {these} AND {among_them} GROUP BY 1", [ids, targets]
    )
    sums: dict[str, int] = defaultdict(int)
    for kind, quantity in [*came, *within]:
        sums[kind] += int(quantity)
    return Arrived(
        received=sums[Kind.RECEIVED], found=sums[Kind.COUNTED], opened=sums[Kind.OPENED], blended=sums[Kind.BLENDED]
    )


def trace_back(pours: Collection[int]) -> dict[int, dict[int, Quantity]]:
    """How much of which lot is in each of these pours, waste included: pour -> lot -> millionths.

    The lots taken from stand before the lots behind them. One SQL statement, three where lots were mixed or opened.
    """
    these, ids = among("cause", pours)
    rows = fetch(
        f"SELECT cause, lot_id, -SUM(quantity) FROM stock_movement WHERE {these} AND kind IN (%s, %s) "
        "GROUP BY 1, 2 HAVING SUM(quantity) <> 0 ORDER BY 1, 2",
        [ids, *CONSUMED],
    )
    taken: dict[int, list[tuple[int, Quantity]]] = defaultdict(list)
    for pour, lot, quantity in rows:
        taken[pour].append((lot, int(quantity)))
    edges = _edges_into({lot for _, lot, _ in rows})
    if not edges:
        return {pour: dict(lots) for pour, lots in taken.items()}
    totals = _totals({target for _, target, _ in edges})
    return {pour: sources_of(lots, edges=_behind(lots, edges), totals=totals) for pour, lots in taken.items()}


def _edges_into(lots: Iterable[int]) -> list[tuple[int, int, int]]:
    these, ids = among("id", lots)
    rows = fetch(
        f"WITH RECURSIVE reached (lot) AS (SELECT id FROM stock_lot WHERE {these} UNION SELECT m.lot_id "
        f"FROM reached, stock_movement m WHERE {is_same('m.into_lot_id', 'reached.lot')}) "
        "SELECT lot_id, into_lot_id, -SUM(quantity) FROM stock_movement "
        "WHERE into_lot_id IN (SELECT lot FROM reached) GROUP BY 1, 2 HAVING SUM(quantity) <> 0",
        [ids],
    )
    return [(source, target, int(quantity)) for source, target, quantity in rows]


def _totals(lots: Iterable[int]) -> dict[int, int]:
    these, ids = among("lot_id", lots)
    rows = fetch(
        f"SELECT lot_id, SUM(quantity) FROM stock_movement WHERE {these} AND {MAY_BE_INFLOW} AND {IS_INFLOW} "
        "GROUP BY 1",
        [ids],
    )
    return {lot: int(quantity) for lot, quantity in rows}


def _behind(taken: Sequence[tuple[int, Quantity]], edges: Sequence[tuple[int, int, int]]) -> list[tuple[int, int, int]]:
    """The edges that lead to what was taken."""
    into: dict[int, list[tuple[int, int, int]]] = defaultdict(list)
    for edge in edges:
        into[edge[1]].append(edge)
    found: list[tuple[int, int, int]] = []
    seen, waiting = set[int](), [lot for lot, _ in taken]
    while waiting:
        lot = waiting.pop()
        if lot not in seen:
            seen.add(lot)
            found += into.get(lot, ())
            waiting += [source for source, _, _ in into.get(lot, ())]
    return found


class Under(NamedTuple):
    """The tops under a pour, and for each what part of the pour is on it."""

    pieces: list[int]
    weights: list[int]


def tops_under(pours: Collection[int]) -> dict[int, Under]:
    """The tops of each of these pours, in the order in which they were named. One SQL statement."""
    these, ids = among("pp.pour_id", pours)
    rows = fetch(
        "SELECT pp.pour_id, pp.piece_id, p.area_sqft, pp.share_percent FROM pours_pourpiece pp "
        f"JOIN jobs_piece p ON p.id = pp.piece_id WHERE {these} ORDER BY pp.pour_id, pp.id",
        [ids],
    )
    found = {}
    for pour, of_pour in groupby(rows, key=itemgetter(0)):
        _, pieces, areas, shares = zip(*of_pour, strict=True)
        found[pour] = Under(list(pieces), piece_weights(areas, shares))
    return found


def over_tops(quantity: int, weights: Sequence[int]) -> list[int]:
    """What of a quantity in a pour is on each of its tops, in whole millionths that sum to it."""
    return [quantity] if len(weights) == 1 else apportion(quantity, weights)
