"""Lots that were made from lots: what went in, and what can be traced through them."""

from collections.abc import Iterator
from fractions import Fraction

from inventory.calc.genealogy import uses_of
from inventory.stock.lines import IS_INFLOW
from inventory.stock.verification.findings import ask, money, quantity

REST = "all that is not in another lot"


def inputs() -> Iterator[str]:
    rows = ask(
        "SELECT lot, SUM(quantity), SUM(value), SUM(is_opening) FROM ("
        "SELECT COALESCE(into_lot_id, lot_id) AS lot, -quantity AS quantity, -value AS value, "
        "CASE WHEN kind = 'opened' THEN 1 ELSE 0 END AS is_opening FROM stock_movement "
        "WHERE kind IN ('opened', 'blended')) both_sides "
        "GROUP BY lot HAVING SUM(value) <> 0 OR (SUM(is_opening) > 0 AND SUM(quantity) <> 0) ORDER BY 1"
    )
    for lot, more, worth, _ in rows:
        yield f"into lot {lot} went {money(worth)} more money, and {quantity(more)} more, than came in there"


def trace() -> Iterator[str]:
    """Forward from every lot that something was made of, through any depth, what it became sums to all that it was."""
    totals = {
        lot: int(total)
        for lot, total in ask(f"SELECT lot_id, SUM(quantity) FROM stock_movement WHERE {IS_INFLOW} GROUP BY lot_id")
    }
    edges = [
        (source, target, int(amount))
        for source, target, amount in ask(
            "SELECT lot_id, into_lot_id, -SUM(quantity) FROM stock_movement WHERE into_lot_id IS NOT NULL "
            "GROUP BY lot_id, into_lot_id HAVING SUM(quantity) <> 0 ORDER BY 1, 2"
        )
    ]
    onward: dict[int, list[tuple[int, int, int]]] = {}
    for edge in edges:
        onward.setdefault(edge[0], []).append(edge)
    parts = {lot: [(lot, total - sum(amount for _, _, amount in onward.get(lot, ())))] for lot, total in totals.items()}
    for lot in onward:
        reached = _reached(lot, onward)
        try:
            became = uses_of(
                [lot],
                edges=[edge for source in reached for edge in onward.get(source, ())],
                parts={one: parts.get(one, []) for one in reached},
            )
        except ValueError as error:
            yield f"lot {lot} cannot be traced: {error}"
            continue
        traced = sum(became.values(), Fraction(0))
        if traced != totals.get(lot, 0):
            yield f"of lot {lot} {quantity(round(traced))} is traced, but {quantity(totals.get(lot, 0))} was there"


def _reached(lot: int, onward: dict[int, list[tuple[int, int, int]]]) -> set[int]:
    found = {lot}
    unseen = [lot]
    while unseen:
        for _, target, _ in onward.get(unseen.pop(), ()):
            if target not in found:
                found.add(target)
                unseen.append(target)
    return found
