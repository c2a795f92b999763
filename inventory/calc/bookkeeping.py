"""What a posting does to the balances: the rules of the ledger, without a database.

A `Holding` is what the book says of one lot at one place: now, and at the moments that matter to what is being posted.
`settle` turns entries (what somebody did) into lines (what is written), in order of recording: with the money that
goes along, and with the counted lines that keep an earlier count true. Quantities are whole millionths of the stock
unit, money whole ten-thousandths.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from enum import Enum

from inventory.calc.valuation import gain_value, issue_value

Key = tuple[int, int]
COUNTED = "counted"


class Worth(Enum):
    """How the money of an entry is found where it is not given."""

    IN_PROPORTION = "an issue takes its share of what the lot at the place is worth"
    UNIT_COST = "a gain comes in at the lot's unit cost"
    CARRIED = "what comes in is worth what the entries of the same bundle took out before"


@dataclass(frozen=True, slots=True)
class Entry:
    """What somebody did to one lot at one place.

    quantity: signed; 0 only with given money. value: signed money, or how it is found.
    bundle: entries of one transfer (a move, an opening, a blend) share a number.
    corrects, into_lot, cause: carried onto the line unread.
    """

    kind: str
    lot: int
    place: int
    quantity: int
    happened_at: datetime
    value: int | Worth = Worth.IN_PROPORTION
    bundle: int | None = None
    corrects: int | None = None
    into_lot: int | None = None
    cause: int | None = None


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the ledger, with its money. entry: which entry it comes from; a counted line keeps it too."""

    kind: str
    lot: int
    place: int
    quantity: int
    value: int
    happened_at: datetime
    corrects: int | None
    into_lot: int | None
    cause: int | None
    entry: int
    keeps_count: bool = False


@dataclass(slots=True)
class Holding:
    """One lot at one place: the balance now, what happened after a moment, and the counts that were asserted.

    later: (moment, net quantity) of every instant after the earliest moment that is being posted, in order.
    counts: moments at or after that earliest moment at which somebody counted this lot here, in order.
    """

    quantity: int = 0
    value: int = 0
    later: list[tuple[datetime, int]] = field(default_factory=list)
    counts: list[datetime] = field(default_factory=list)

    def next_count(self, moment: datetime) -> datetime | None:
        """The first count at or after a moment. A moment means after all that happened in that instant."""
        index = bisect_left(self.counts, moment)
        return self.counts[index] if index < len(self.counts) else None

    def at(self, moment: datetime) -> int:
        """The balance after all that happened up to and in that instant."""
        return self.quantity - sum(quantity for _, quantity in self.later[self._after(moment) :])

    def takeable(self, moment: datetime) -> int:
        """The most that can leave at a moment: the lowest balance from then to now, or to the next count.

        Beyond a count nothing changes, because the count is kept true by a counted line of the opposite sign.
        """
        if not self.later and not self.counts:
            return max(self.quantity, 0)
        end = self.next_count(moment)
        index = self._after(moment)
        balance = self.at(moment)
        if end == moment:  # before the count of that very instant, so out of what was there on entering it
            return max(balance - sum(quantity for at, quantity in self.later if at == moment), 0)
        lowest = balance
        for at, quantity in self.later[index:]:
            if end is not None and at >= end:
                break
            balance += quantity
            lowest = min(lowest, balance)
        return max(lowest, 0)

    def add(self, moment: datetime, quantity: int, value: int) -> None:
        self.quantity += quantity
        self.value += value
        if not quantity:
            return
        index = self._after(moment)
        if index and self.later[index - 1][0] == moment:  # one net quantity for each instant
            self.later[index - 1] = (moment, self.later[index - 1][1] + quantity)
        else:
            self.later.insert(index, (moment, quantity))

    def _after(self, moment: datetime) -> int:
        return bisect_right(self.later, moment, key=lambda event: event[0])


class Shortage(Exception):
    """An entry that takes more than can leave that lot at that place at that moment."""

    def __init__(self, entry: Entry, takeable: int, position: int) -> None:
        super().__init__(f"lot {entry.lot} at place {entry.place}: {-entry.quantity} wanted, {takeable} there")
        self.entry, self.takeable, self.position = entry, takeable, position

    @property
    def missing(self) -> int:
        return -self.entry.quantity - self.takeable


def settle(
    entries: Sequence[Entry],
    holdings: Mapping[Key, Holding],
    *,
    lot_cost: Callable[[int], tuple[int, int]],
) -> list[Line]:
    """The lines that entries become, in order of recording; the holdings are brought up to date on the way.

    An entry dated at or before a count of its lot and place brings a counted line of the opposite sign at that count
    (the first one after it), the gain before the loss.

    lot_cost: lot -> (quantity, money) that ever came into it, net; asked only where something is found.
    Raises Shortage where a lot would have been below zero at any moment; the holdings are then of no further use.
    """
    lines: list[Line] = []
    carried: dict[int, int] = {}

    def write(entry: Entry, position: int, *, kind: str, quantity: int, at: datetime, keeps_count: bool) -> None:
        holding = holdings[entry.lot, entry.place]
        if keeps_count:
            worth: int | Worth = Worth.UNIT_COST if quantity > 0 else Worth.IN_PROPORTION
        else:
            worth = entry.value
        value = _money(worth, quantity, entry, holding, carried, lot_cost)
        holding.add(at, quantity, value)
        if not keeps_count and entry.bundle is not None and worth is not Worth.CARRIED:
            carried[entry.bundle] = carried.get(entry.bundle, 0) - value
        lines.append(
            Line(
                kind=kind,
                lot=entry.lot,
                place=entry.place,
                quantity=quantity,
                value=value,
                happened_at=at,
                corrects=None if keeps_count else entry.corrects,
                into_lot=None if keeps_count else entry.into_lot,
                cause=None if keeps_count else entry.cause,
                entry=position,
                keeps_count=keeps_count,
            )
        )

    for position, entry in enumerate(entries):
        holding = holdings[entry.lot, entry.place]
        count = holding.next_count(entry.happened_at) if entry.quantity else None
        if entry.quantity < 0:
            takeable = holding.takeable(entry.happened_at)
            if -entry.quantity > takeable:
                raise Shortage(entry, takeable, position)
            if count is not None:
                write(entry, position, kind=COUNTED, quantity=-entry.quantity, at=count, keeps_count=True)
        write(entry, position, kind=entry.kind, quantity=entry.quantity, at=entry.happened_at, keeps_count=False)
        if entry.quantity > 0 and count is not None:
            write(entry, position, kind=COUNTED, quantity=-entry.quantity, at=count, keeps_count=True)
    return lines


def _money(
    worth: int | Worth,
    quantity: int,
    entry: Entry,
    holding: Holding,
    carried: Mapping[int, int],
    lot_cost: Callable[[int], tuple[int, int]],
) -> int:
    if worth is Worth.IN_PROPORTION:
        return -issue_value(on_hand=holding.quantity, value=holding.value, taken=-quantity)
    if worth is Worth.UNIT_COST:
        lot_quantity, lot_value = lot_cost(entry.lot)
        return gain_value(lot_quantity=lot_quantity, lot_value=lot_value, gained=quantity)
    if worth is Worth.CARRIED:
        if entry.bundle is None:
            raise ValueError("an entry that is carried names its bundle")
        return carried.get(entry.bundle, 0)
    return worth
