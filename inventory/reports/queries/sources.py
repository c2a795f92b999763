"""What a pour, a top or a job came from: every lot in it, through any depth of blends and openings."""

from collections import defaultdict
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal
from itertools import compress
from typing import NamedTuple

from inventory.reports.queries.sql import among, as_day, fetch
from inventory.reports.queries.trace import over_tops, tops_under, trace_back
from inventory.shop.fields import to_decimal
from inventory.stock.book import as_moment


class SourceLot(NamedTuple):
    """A lot with what one asks about first when something went wrong. supplier: None of a mix."""

    id: int
    number: int
    lot_number: str
    origin: str
    status: str
    received_on: date
    use_by: date | None
    material: int
    material_name: str
    material_kind: str
    unit: str
    supplier: str | None


@dataclass(frozen=True, slots=True)
class PourPart:
    """How much of a lot one pour brought."""

    pour: int
    number: int
    layer: str
    poured_at: datetime
    quantity: Decimal
    unit: str


@dataclass(frozen=True, slots=True)
class Source:
    """A lot and how much of it is in what was asked about, in its own stock unit, waste included.

    is_direct: poured from it; else it only went into a lot that was poured.
    """

    lot: SourceLot
    quantity: Decimal
    unit: str
    is_direct: bool
    pours: list[PourPart]


@dataclass(frozen=True, slots=True)
class Sources:
    """Lots poured from before the lots behind them; by kind of material, material, and number."""

    rows: list[Source]


def sources_of_pour(pour: int) -> Sources:
    """Every lot in a pour. Six SQL statements at most."""
    return _sources([pour], pieces=None)


def sources_of_piece(piece: int) -> Sources:
    """Every lot in a top: of each of its pours what falls on it. Eight SQL statements at most."""
    return _sources(_pours_on([piece]), pieces=frozenset([piece]))


def sources_of_job(job: int) -> Sources:
    """Every lot in the tops of a job. Nine SQL statements at most."""
    pieces = frozenset(piece for (piece,) in fetch("SELECT id FROM jobs_piece WHERE job_id = %s", [job]))
    return _sources(_pours_on(pieces), pieces=pieces)


def _pours_on(pieces: Collection[int]) -> list[int]:
    these, ids = among("piece_id", pieces)
    return [pour for (pour,) in fetch(f"SELECT DISTINCT pour_id FROM pours_pourpiece WHERE {these}", [ids])]


def _sources(pours: Collection[int], *, pieces: frozenset[int] | None) -> Sources:
    """The lots in these pours; in the part of them that is on these tops, where tops are named."""
    traced = trace_back(pours)
    amounts = {pour: {lot: round(quantity) for lot, quantity in lots.items()} for pour, lots in traced.items()}
    if pieces is not None:
        amounts = _on_tops(amounts, pieces)
    direct = _taken_from(amounts)
    by_lot: dict[int, list[tuple[int, int]]] = defaultdict(list)
    for pour, lots in amounts.items():
        for lot, quantity in lots.items():
            by_lot[lot].append((pour, quantity))
    names, poured = _lots(by_lot), _named_pours(amounts)
    rows = [
        Source(
            lot=names[lot],
            quantity=to_decimal(sum(quantity for _, quantity in parts), 6),
            unit=names[lot].unit,
            is_direct=lot in direct,
            pours=sorted(
                (PourPart(pour, *poured[pour], to_decimal(quantity, 6), names[lot].unit) for pour, quantity in parts),
                key=lambda part: (part.poured_at, part.pour),
            ),
        )
        for lot, parts in by_lot.items()
    ]
    rows.sort(key=lambda row: (not row.is_direct, row.lot.material_kind, row.lot.material_name, row.lot.number))
    return Sources(rows)


def _on_tops(amounts: Mapping[int, Mapping[int, int]], pieces: frozenset[int]) -> dict[int, dict[int, int]]:
    """Of each amount of a pour what falls on these tops, as `uses` of the lot divides it."""
    found: dict[int, dict[int, int]] = {}
    tops_of = tops_under(amounts)
    for pour, lots in amounts.items():
        under = tops_of[pour]
        ours = [piece in pieces for piece in under.pieces]
        found[pour] = {lot: sum(compress(over_tops(quantity, under.weights), ours)) for lot, quantity in lots.items()}
    return found


def _taken_from(pours: Collection[int]) -> set[int]:
    these, ids = among("cause", pours)
    rows = fetch(
        f"SELECT lot_id FROM stock_movement WHERE {these} AND kind IN ('used', 'wasted') "
        "GROUP BY lot_id HAVING SUM(quantity) <> 0",
        [ids],
    )
    return {lot for (lot,) in rows}


def _lots(lots: Collection[int]) -> dict[int, SourceLot]:
    """The lots with their suppliers; a lot opened from another has that one's."""
    these, ids = among("l.id", lots)
    rows = fetch(
        "SELECT l.id, l.number, l.lot_number, l.origin, l.status, l.received_on, l.use_by, "
        "t.id, t.name, t.kind, t.stock_unit, s.name "
        "FROM stock_lot l JOIN catalog_material t ON t.id = l.material_id "
        "LEFT JOIN purchasing_deliveryline d ON d.lot_id = COALESCE(l.opened_from_id, l.id) "
        "LEFT JOIN purchasing_delivery e ON e.id = d.delivery_id LEFT JOIN catalog_supplier s ON s.id = e.supplier_id "
        f"WHERE {these}",
        [ids],
    )
    return {row[0]: SourceLot._make((*row[:5], as_day(row[5]), as_day(row[6]), *row[7:])) for row in rows}


def _named_pours(pours: Collection[int]) -> dict[int, tuple[int, str, datetime]]:
    these, ids = among("id", pours)
    rows = fetch(f"SELECT id, number, layer, poured_at FROM pours_pour WHERE {these}", [ids])
    return {pour: (number, layer, as_moment(at)) for pour, number, layer, at in rows}
