"""What the ledger must say, told again from the rules of the trade alone, in exact fractions.

Quantities are whole millionths, money is a Fraction of ten-thousandths. Nothing here is taken from the code under test.

- The balance of a lot at a place at a moment is what the last count at or before it found, and all that happened after
  that count up to the moment; without a count, all that happened up to the moment.
- What leaves at a moment may not take the balance below zero at any moment from then to the next count.
- A lot has one unit cost: the money that came into it, over the quantity that came into it. Whatever leaves takes so
  much; what is found comes in at so much. A charge changes the money that came in, and with it what every part cost,
  on into whatever was made of the lot.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

Spot = tuple[int, int]


@dataclass
class Count:
    found: int
    gained: int = 0
    lost: int = 0


@dataclass
class OracleLot:
    """came_in: quantity; money: what it cost. goes_on: standing quantity to each lot made of it."""

    came_in: int
    money: Fraction
    made_at: int
    made_where: int
    goes_on: dict[int, int] = field(default_factory=dict)
    is_bought: bool = True
    gained: bool = False
    depth: int = 0
    lines: int = 1

    @property
    def unit_cost(self) -> Fraction:
        return self.money / self.came_in if self.came_in else Fraction(0)


@dataclass
class Oracle:
    """Events and counts by (lot, place); moments are whole numbers."""

    lots: dict[int, OracleLot] = field(default_factory=dict)
    events: dict[Spot, list[tuple[int, int]]] = field(default_factory=dict)
    counts: dict[Spot, dict[int, Count]] = field(default_factory=dict)

    # What is there

    def balance(self, spot: Spot, at: int) -> int:
        counts = [moment for moment in self.counts.get(spot, {}) if moment <= at]
        start = max(counts, default=None)
        base = self.counts[spot][start].found if start is not None else 0
        return base + sum(
            quantity
            for moment, quantity in self.events.get(spot, ())
            if moment <= at and (start is None or moment > start)
        )

    def takeable(self, spot: Spot, at: int) -> int:
        end = self._next_count(spot, at)
        moments = {moment for moment, _ in self.events.get(spot, ()) if moment >= at and (end is None or moment < end)}
        return min(self.balance(spot, moment) for moment in {at, *moments})

    def value(self, spot: Spot, at: int) -> Fraction:
        return self.lots[spot[0]].unit_cost * self.balance(spot, at)

    def instants(self, spot: Spot) -> set[int]:
        return {moment for moment, _ in self.events.get(spot, ())} | set(self.counts.get(spot, {}))

    # What happens

    def receive(self, lot: int, place: int, quantity: int, money: int, at: int) -> None:
        self.lots[lot] = OracleLot(quantity, Fraction(money), at, place)
        self._event((lot, place), quantity, at)

    def change(self, spot: Spot, quantity: int, at: int) -> None:
        """Something leaves or comes back; a later count is kept true by what is gained or lost at it."""
        self._event(spot, quantity, at)
        count = self._next_count(spot, at)
        if count is None:
            return
        if quantity < 0:
            self._gain(spot[0], -quantity)
            self.counts[spot][count].gained -= quantity
        else:
            self.counts[spot][count].lost += quantity

    def make(self, lot: int, place: int, quantity: int, inputs: list[tuple[Spot, int]], at: int) -> None:
        money = sum((self.lots[spot[0]].unit_cost * taken for spot, taken in inputs), Fraction(0))
        depth = 1 + max(self.lots[spot[0]].depth for spot, _ in inputs)
        lines = 1 + sum(self.lots[spot[0]].lines for spot, _ in inputs)
        for spot, taken in inputs:
            self.change(spot, -taken, at)
            goes_on = self.lots[spot[0]].goes_on
            goes_on[lot] = goes_on.get(lot, 0) + taken
        self.lots[lot] = OracleLot(quantity, money, at, place, is_bought=False, depth=depth, lines=lines)
        self._event((lot, place), quantity, at)

    def unmake(self, lot: int, inputs: list[tuple[Spot, int]]) -> None:
        made = self.lots[lot]
        self._event((lot, made.made_where), -made.came_in, made.made_at)
        made.came_in, made.money = 0, Fraction(0)
        for spot, taken in inputs:
            self.change(spot, taken, made.made_at)
            del self.lots[spot[0]].goes_on[lot]

    def charge(self, lot: int, money: Fraction) -> None:
        changed = self.lots[lot]
        share = money / changed.came_in
        changed.money += money
        changed.lines += 1
        for onward, quantity in changed.goes_on.items():
            self.charge(onward, share * quantity)

    def count(self, spot: Spot, found: int, at: int) -> None:
        difference = found - self.balance(spot, at)
        if difference > 0:
            self._gain(spot[0], difference)
        self.counts.setdefault(spot, {})[at] = Count(found, max(difference, 0), max(-difference, 0))
        later = self._next_count(spot, at + 1)
        if later is not None and difference:
            if difference < 0:
                self._gain(spot[0], -difference)
                self.counts[spot][later].gained -= difference
            else:
                self.counts[spot][later].lost += difference

    def may_count(self, spot: Spot, found: int, at: int) -> bool:
        """A count below the book takes the difference out at its moment."""
        return found >= self.balance(spot, at) or self.balance(spot, at) - found <= self.takeable(spot, at)

    def uncount(self, spot: Spot, at: int) -> None:
        undone = self.counts[spot].pop(at)
        later = self._next_count(spot, at)
        if later is not None:
            self.counts[spot][later].lost += undone.lost
            if undone.gained:
                self._gain(spot[0], undone.gained)
                self.counts[spot][later].gained += undone.gained

    def may_uncount(self, spot: Spot, at: int) -> bool:
        undone = self.counts[spot][at]
        lowest = self.takeable_from(spot, at)
        return not undone.gained or lowest + undone.lost >= undone.gained

    def takeable_from(self, spot: Spot, at: int) -> int:
        """The lowest balance from a count on to the next one."""
        end = self._next_count(spot, at + 1)
        moments = {moment for moment, _ in self.events.get(spot, ()) if moment >= at and (end is None or moment < end)}
        return min(self.balance(spot, moment) for moment in {at, *moments})

    # The rules behind

    def _event(self, spot: Spot, quantity: int, at: int) -> None:
        self.events.setdefault(spot, []).append((at, quantity))
        if spot[0] in self.lots:
            self.lots[spot[0]].lines += 2

    def _gain(self, lot: int, quantity: int) -> None:
        gaining = self.lots[lot]
        gaining.money += gaining.unit_cost * quantity
        gaining.came_in += quantity
        gaining.gained = True
        gaining.lines += 2

    def _next_count(self, spot: Spot, at: int) -> int | None:
        return min((moment for moment in self.counts.get(spot, {}) if moment >= at), default=None)
