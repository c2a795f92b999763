"""A ledger in memory over the pure rules: `settle` for what happens, `revalue` for what things cost."""

from __future__ import annotations

from copy import deepcopy
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta

from inventory.calc.bookkeeping import Entry, Holding, Line, Shortage, Worth, settle
from inventory.calc.valuation import CarriedOn, ChangedIssue, Issue, LotMoney, revalue
from tests.ledger_oracle import Spot
from tests.random_shop import Refused

START = datetime(2026, 1, 1, tzinfo=UTC)
ISSUES = {"used", "wasted", "written_off", "returned", "given"}


def moment(minutes: int) -> datetime:
    return START + timedelta(minutes=minutes)


@dataclass
class MemoryLedger:
    lines: list[Line] = field(default_factory=list)
    holdings: dict[Spot, Holding] = field(default_factory=dict)
    came_to: dict[int, int] = field(default_factory=dict)
    counted: list[tuple[Spot, datetime, int]] = field(default_factory=list)
    moved: list[tuple[int, int]] = field(default_factory=list)

    # What the random shop asks

    def receive(self, lot: int, place: int, quantity: int, money: int, at: int, containers: int) -> None:
        self.came_to[lot] = place
        self.post([Entry("received", lot, place, quantity, moment(at), value=money)])

    def issue(self, spot: Spot, quantity: int, at: int, kind: str) -> int:
        return self.post([Entry(kind, *spot, -quantity, moment(at))])[0]

    def take_back(self, issue: int) -> None:
        if not self.standing(issue)[0]:
            raise Refused
        self.post([self.back(issue)])

    def move(self, spot: Spot, to: int, quantity: int, at: int) -> int:
        out = Entry("moved", *spot, -quantity, moment(at), bundle=0)
        into = Entry("moved", spot[0], to, quantity, moment(at), value=Worth.CARRIED, bundle=0)
        written = self.post([out, into])
        self.moved.append((written[0], written[1]))
        return len(self.moved) - 1

    def move_back(self, move: int) -> None:
        out, into = self.moved[move]
        if not self.standing(out)[0]:
            raise Refused
        first, second = self.lines[into], self.lines[out]
        self.post(
            [
                Entry("moved", first.lot, first.place, -first.quantity, first.happened_at, bundle=0, corrects=into),
                Entry(
                    "moved",
                    second.lot,
                    second.place,
                    -second.quantity,
                    second.happened_at,
                    value=Worth.CARRIED,
                    bundle=0,
                    corrects=out,
                ),
            ]
        )

    def open(self, lot: int, child: int, place: int, quantity: int, at: int) -> None:
        if not quantity:
            raise Refused
        self.make("opened", child, place, [((lot, place), quantity)], at)

    def put_back(self, child: int) -> None:
        self.unmake(child)

    def blend(self, lot: int, place: int, inputs: list[tuple[Spot, int]], at: int) -> None:
        self.make("blended", lot, place, inputs, at)

    def unblend(self, lot: int) -> None:
        self.unmake(lot)

    def charge(self, lot: int, money: int) -> None:
        moneys = {known: self.money_of(known) for known in self.came_to}
        entries = []
        for change in revalue(moneys, {lot: money}):
            if isinstance(change, ChangedIssue):
                line = self.lines[change.issue.movement]
                entries.append(
                    Entry(
                        line.kind,
                        line.lot,
                        line.place,
                        0,
                        line.happened_at,
                        value=-change.value,
                        corrects=change.issue.movement,
                        into_lot=line.into_lot,
                    )
                )
            elif isinstance(change, CarriedOn):
                source = self.lines[change.from_issue.movement]
                entries.append(Entry(source.kind, change.lot, change.place, 0, source.happened_at, value=change.value))
            else:
                entries.append(Entry("charged", change.lot, change.place, 0, moment(0), value=change.value))
        self.post(entries)

    def count(self, spot: Spot, found: int, at: int) -> int:
        holding = self.holdings.setdefault(spot, Holding())
        difference = found - holding.at(moment(at))
        worth = Worth.UNIT_COST if difference > 0 else Worth.IN_PROPORTION
        first = len(self.lines)
        if difference:
            self.post([Entry("counted", *spot, difference, moment(at), value=worth)])
        holding = self.holdings[spot]
        holding.counts = sorted([*holding.counts, moment(at)])
        self.counted.append((spot, moment(at), first))
        return len(self.counted) - 1

    def uncount(self, count: int) -> None:
        spot, at, first = self.counted[count]
        if at not in self.holdings[spot].counts:
            raise Refused
        before = deepcopy(self.holdings[spot])
        self.holdings[spot].counts.remove(at)
        own = [
            key
            for key, line in enumerate(self.lines)
            if key >= first
            and line.kind == "counted"
            and (line.lot, line.place) == spot
            and line.happened_at == at
            and line.corrects is None
        ]
        entries = [self.back(key) for key in own if self.lines[key].quantity < 0 and self.standing(key)[0]]
        gained = sum(self.lines[key].quantity for key in own if self.lines[key].quantity > 0)
        if gained:
            entries.append(Entry("counted", *spot, -gained, at))
        try:
            self.post(entries)
        except Refused:
            self.holdings[spot] = before
            raise

    def balances(self) -> dict[Spot, tuple[int, int]]:
        return {spot: (holding.quantity, holding.value) for spot, holding in self.holdings.items()}

    def history(self) -> dict[Spot, list[tuple[int, int]]]:
        found: dict[Spot, list[tuple[int, int]]] = {}
        for line in self.lines:
            minutes = (line.happened_at - START) // timedelta(minutes=1)
            found.setdefault((line.lot, line.place), []).append((minutes, line.quantity))
        return found

    # How it is done

    def post(self, entries: list[Entry]) -> list[int]:
        """Lines written, by position of their entries; all or nothing."""
        spots = {(entry.lot, entry.place) for entry in entries}
        holdings = {spot: deepcopy(self.holdings.get(spot, Holding())) for spot in spots}
        try:
            lines = settle(entries, holdings, lot_cost=self.inflow_of)
        except Shortage as shortage:
            raise Refused from shortage
        self.holdings |= holdings
        positions = [len(self.lines) + index for index, line in enumerate(lines) if not line.keeps_count]
        self.lines += lines
        return positions

    def make(self, kind: str, lot: int, place: int, inputs: list[tuple[Spot, int]], at: int) -> None:
        entries = [Entry(kind, *spot, -quantity, moment(at), bundle=0, into_lot=lot) for spot, quantity in inputs]
        made = sum(quantity for _, quantity in inputs)
        entries.append(Entry(kind, lot, place, made, moment(at), value=Worth.CARRIED, bundle=0))
        self.post(entries)
        self.came_to[lot] = place

    def unmake(self, lot: int) -> None:
        place = self.came_to[lot]
        own = [key for key, line in enumerate(self.lines) if line.lot == lot]
        stands = [key for key in own if self.is_issue(key) and self.standing(key)[0]]
        found = [key for key in own if self.lines[key].kind == "counted" and self.lines[key].quantity > 0]
        held_of = {spot[1]: held for spot, held in self.holdings.items() if spot[0] == lot}
        moved = [key for key in own if self.lines[key].kind == "moved" and self.lines[key].corrects is None]
        moved = [key for key in moved if self.standing(key)[0]]
        counted = [spot for spot, held in held_of.items() if held.counts]
        holding = self.holdings[lot, place]
        found = [key for key in found if self.lines[key].corrects is None]
        if stands or found or moved or counted or not holding.quantity:
            raise Refused
        line = self.lines[own[0]]
        out = Entry(line.kind, lot, place, -holding.quantity, line.happened_at, value=-holding.value, corrects=own[0])
        inputs = [key for key, line in enumerate(self.lines) if line.into_lot == lot and line.corrects is None]
        self.post([out, *(self.back(key) for key in inputs)])

    def back(self, key: int) -> Entry:
        line = self.lines[key]
        quantity, value = self.standing(key)
        return Entry(
            line.kind,
            line.lot,
            line.place,
            -quantity,
            line.happened_at,
            value=-value,
            corrects=key,
            into_lot=line.into_lot,
        )

    def standing(self, key: int) -> tuple[int, int]:
        own = [line for index, line in enumerate(self.lines) if index == key or line.corrects == key]
        return sum(line.quantity for line in own), sum(line.value for line in own)

    def is_issue(self, key: int) -> bool:
        line = self.lines[key]
        if line.corrects is not None:
            return False
        transferred = line.kind in ("opened", "blended") and line.into_lot is not None
        return line.kind in ISSUES or transferred or (line.kind == "counted" and line.quantity < 0)

    def money_of(self, lot: int) -> LotMoney:
        held_of = {spot[1]: held for spot, held in self.holdings.items() if spot[0] == lot and held.quantity}
        stock = {place: (held.quantity, held.value) for place, held in held_of.items()}
        issues = []
        for key, line in enumerate(self.lines):
            if line.lot == lot and self.is_issue(key):
                quantity, value = self.standing(key)
                if quantity:
                    issues.append(Issue(key, line.place, -quantity, -value, line.into_lot))
        return LotMoney(lot, came_in_at=self.came_to[lot], stock=stock, issues=issues)

    def inflow_of(self, lot: int) -> tuple[int, int]:
        lines = [line for line in self.lines if line.lot == lot and self.is_inflow(line)]
        return sum(line.quantity for line in lines), sum(line.value for line in lines)

    @staticmethod
    def is_inflow(line: Line) -> bool:
        made = line.kind in ("opened", "blended") and line.into_lot is None
        found = line.kind == "counted" and line.quantity > 0 and line.corrects is None
        return line.kind in ("received", "charged") or made or found
