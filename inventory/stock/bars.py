"""What keeps lots from being used: holds and rejections, how they spread, and how they are lifted.

A *bar* is a hold or a rejection that somebody put on a lot, or on all lots of a supplier's number. It reaches all that
was opened or blended from those. A lot may be under several bars; its status is that of the worst. Bars are dated
events that are only ever added, so that the status of a past moment can be told.
"""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from django.db import connection

from inventory.shop.models import Person
from inventory.stock.book import marks
from inventory.stock.models import Lot, LotStatus, StatusEvent

Bar = tuple[int, bool]
"""The lot that somebody named, and whether its whole number was meant (then the first lot of that number)."""

WORST_FIRST = (LotStatus.REJECTED.value, LotStatus.ON_HOLD.value)


@dataclass(frozen=True, slots=True)
class InForce:
    """A bar on a lot: which, how bad, since when and why."""

    bar: Bar
    status: str
    since: datetime
    reason: str


def bars_on(lots: Collection[int], *, at: datetime | None = None) -> dict[int, dict[Bar, InForce]]:
    """The bars in force on each lot now, or at a moment. One SQL statement, none without lots."""
    by_lot: dict[int, list[StatusEvent]] = {lot: [] for lot in lots}
    if not by_lot:
        return {}
    until = " AND since <= %s" if at is not None else ""
    parameters = [*by_lot, *([connection.ops.adapt_datetimefield_value(at)] if at is not None else [])]
    events = StatusEvent.objects.raw(
        f"SELECT * FROM stock_statusevent WHERE lot_id IN ({marks(by_lot)}){until} ORDER BY since, id", parameters
    )
    for event in events:
        by_lot[event.lot_id].append(event)
    return {lot: bars_among(of_lot) for lot, of_lot in by_lot.items()}


def bars_among(events: Iterable[StatusEvent]) -> dict[Bar, InForce]:
    """The bars that one lot's events leave in force. events: in order of `since`, then of recording."""
    found: dict[Bar, InForce] = {}
    for event in events:
        bar = event.named_id, event.whole_number
        if event.status == LotStatus.USABLE:
            found.pop(bar, None)
        else:
            found[bar] = InForce(bar, event.status, event.since, event.reason)
    return found


def status_of(bars: Iterable[InForce]) -> str:
    """The status that these bars give a lot: the worst of them, usable without any."""
    there = {bar.status for bar in bars}
    return next((status for status in WORST_FIRST if status in there), LotStatus.USABLE.value)


def status_at(lots: Collection[int], moment: datetime) -> dict[int, str]:
    """Each lot's status as of a moment. One SQL statement."""
    return {lot: status_of(bars.values()) for lot, bars in bars_on(lots, at=moment).items()}


def bars_of_numbers(numbers: Collection[tuple[int, str]]) -> dict[tuple[int, str], list[InForce]]:
    """The bars on whole supplier numbers, by (material, lot number): they hold for what comes in under them too."""
    wanted = set(numbers)
    rows = Lot.objects.filter(lot_number__in={number for _, number in wanted}, is_own_number=False)
    lots = {
        pk: (material, number)
        for pk, material, number in rows.values_list("pk", "material_id", "lot_number")
        if (material, number) in wanted
    }
    found: dict[tuple[int, str], dict[Bar, InForce]] = {}
    for lot, bars in bars_on(lots).items() if lots else ():
        whole = {bar: force for bar, force in bars.items() if bar[1] and lots.get(bar[0]) == lots[lot]}
        found.setdefault(lots[lot], {}).update(whole)
    return {number: list(bars.values()) for number, bars in found.items() if bars}


def inherited(bars: Iterable[InForce], *, since: datetime) -> list[InForce]:
    """What a lot takes over from those it was made of, from its making on."""
    return [InForce(force.bar, force.status, max(force.since, since), force.reason) for force in bars]


def events_for(lot: Lot, bars: Iterable[InForce], *, by: Person) -> list[StatusEvent]:
    """The events, not yet written, that put these bars on a lot."""
    return [
        StatusEvent(
            lot=lot,
            named_id=force.bar[0],
            whole_number=force.bar[1],
            status=force.status,
            since=force.since,
            reason=force.reason,
            by=by,
        )
        for force in bars
    ]


def lifted(
    scope: Collection[int], reached: Collection[int], bars: Mapping[int, Mapping[Bar, InForce]]
) -> dict[int, set[Bar]]:
    """Which bars are lifted from which lots, when these are said to be OK again.

    All bars on the lots of the scope are lifted. What was made from them loses the same bars, unless it was also made
    from another lot that stays under such a bar.

    bars: in force on everything reached and on all that went into it. One SQL statement.
    """
    gone: dict[int, set[Bar]] = {lot: set(bars[lot]) for lot in scope}
    of_scope = {bar for lifted_here in gone.values() for bar in lifted_here}
    parents = made_of(reached)
    for lot in by_depth(parents, reached):
        if lot in scope:
            continue
        kept = {
            bar for parent in parents.get(lot, ()) for bar in bars.get(parent, {}) if bar not in gone.get(parent, set())
        }
        gone[lot] = (set(bars[lot]) & of_scope) - kept
    return gone


def made_of(lots: Collection[int]) -> dict[int, set[int]]:
    """For each of these lots those that went into it directly and were not taken back. One SQL statement."""
    parents: dict[int, set[int]] = {}
    with connection.cursor() as cursor:
        cursor.execute(
            f"SELECT into_lot_id, lot_id FROM stock_movement WHERE into_lot_id IN ({marks(lots)}) "
            "GROUP BY into_lot_id, lot_id HAVING SUM(quantity) <> 0",
            list(lots),
        )
        for lot, parent in cursor.fetchall():
            parents.setdefault(lot, set()).add(parent)
    return parents


def by_depth(parents: Mapping[int, Collection[int]], lots: Collection[int]) -> list[int]:
    """The lots, each after those it was made of."""
    order: list[int] = []
    seen: set[int] = set()
    stack: list[Any] = [(lot, False) for lot in sorted(lots, reverse=True)]
    while stack:
        lot, is_done = stack.pop()
        if is_done:
            order.append(lot)
        elif lot not in seen:
            seen.add(lot)
            stack.append((lot, True))
            stack += [(parent, False) for parent in parents.get(lot, ()) if parent in lots]
    return order
