"""A shop in which things happen at random, told to a ledger and to the oracle alike.

`RandomShop.step` picks an act, asks the oracle whether it can be, has the ledger do it, and compares: an act that
cannot be must be refused, and after every act each balance must be what the oracle says. The ledger stands behind
`Ledger`: the pure rules in memory, or the real actions on a database.

Moments are minutes. Receipts happen at the start of a day, other acts at even minutes, counts at odd ones.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from fractions import Fraction
from random import Random
from typing import Protocol, TypeVar

from tests.ledger_oracle import Oracle, Spot

Thing = TypeVar("Thing")
DAY = 1440
TOLERANCE = 1_000
PLACES = (0, 1, 2)
DEEPEST = 8


class Refused(Exception):
    """The ledger will not do it."""


class Ledger(Protocol):
    """What the shop asks of a ledger. Quantities in millionths, money in ten-thousandths; keys are the ledger's own."""

    def receive(self, lot: int, place: int, quantity: int, money: int, at: int, containers: int) -> None: ...
    def issue(self, spot: Spot, quantity: int, at: int, kind: str) -> int: ...
    def take_back(self, issue: int) -> None: ...
    def move(self, spot: Spot, to: int, quantity: int, at: int) -> int: ...
    def move_back(self, move: int) -> None: ...
    def open(self, lot: int, child: int, place: int, quantity: int, at: int) -> None: ...
    def put_back(self, child: int) -> None: ...
    def blend(self, lot: int, place: int, inputs: list[tuple[Spot, int]], at: int) -> None: ...
    def unblend(self, lot: int) -> None: ...
    def charge(self, lot: int, money: int) -> None: ...
    def count(self, spot: Spot, found: int, at: int) -> int: ...
    def uncount(self, count: int) -> None: ...
    def balances(self) -> dict[Spot, tuple[int, int]]: ...
    def history(self) -> dict[Spot, list[tuple[int, int]]]:
        """(moment, net quantity) of every line."""


@dataclass
class Issue:
    key: int
    spot: Spot
    quantity: int
    at: int
    stands: bool = True


@dataclass
class Moved:
    key: int
    origin: Spot
    to: Spot
    quantity: int
    at: int
    stands: bool = True


@dataclass
class Made:
    lot: int
    inputs: list[tuple[Spot, int]]
    is_opening: bool
    stands: bool = True


@dataclass
class Counted:
    key: int
    spot: Spot
    at: int
    stands: bool = True


@dataclass
class RandomShop:
    ledger: Ledger
    random: Random
    oracle: Oracle = field(default_factory=Oracle)
    now: int = 10 * DAY
    containers: dict[int, int] = field(default_factory=dict)
    issues: list[Issue] = field(default_factory=list)
    moves: list[Moved] = field(default_factory=list)
    made: list[Made] = field(default_factory=list)
    counts: list[Counted] = field(default_factory=list)
    acts: dict[str, int] = field(default_factory=dict)
    refusals: int = 0

    def run(self, steps: int, *, after: Callable[[int], None] = lambda _: None) -> None:
        for _ in range(3):
            self.receive()
        for step in range(steps):
            self.step()
            after(step)

    def step(self) -> None:
        acts = {
            self.receive: 3,
            self.issue: 24,
            self.take_back: 12,
            self.move: 8,
            self.move_back: 5,
            self.open: 6,
            self.put_back: 4,
            self.blend: 12,
            self.unblend: 4,
            self.charge: 10,
            self.count: 8,
            self.uncount: 5,
        }
        act = self.random.choices(list(acts), list(acts.values()))[0]
        self.now += 2 * self.random.randrange(1, 400)
        done = act()
        if done:
            self.acts[act.__name__] = self.acts.get(act.__name__, 0) + 1
        self.compare()

    # What happens

    def receive(self) -> bool:
        lot, place = self.new_lot(), self.random.choice(PLACES)
        quantity = self.random.choice([1, 3, 7, 40, 1000, 3785]) * 1_000_000 + self.random.choice([0, 411_784])
        money = self.random.choice([0, 1, 99_999, 1_000_000, self.random.randrange(5_000_000)])
        at = (self.now // DAY - self.random.choice([0, 0, 1, 3])) * DAY
        containers = self.random.choice([1, 2, 4, 12])
        self.ledger.receive(lot, place, quantity, money, at, containers)
        self.oracle.receive(lot, place, quantity, money, at)
        self.containers[lot] = containers
        return True

    def issue(self) -> bool:
        spot = self.some_spot()
        at = self.some_moment(spot[0])
        quantity = self.some_quantity(spot, at)
        kind = self.random.choice(["used", "wasted", "written_off", "returned", "given"])
        may_be = quantity <= self.oracle.takeable(spot, at)
        key = self.attempt(may_be, lambda: self.ledger.issue(spot, quantity, at, kind))
        if key is None:
            return False
        self.oracle.change(spot, -quantity, at)
        self.issues.append(Issue(key, spot, quantity, at))
        return True

    def take_back(self) -> bool:
        issue = self.one_of(self.issues)
        if issue is None:
            return False
        done = self.attempt(issue.stands, lambda: self.ledger.take_back(issue.key) or True)
        if not done:
            return False
        self.oracle.change(issue.spot, issue.quantity, issue.at)
        issue.stands = False
        return True

    def move(self) -> bool:
        spot = self.some_spot()
        to = self.random.choice([place for place in PLACES if place != spot[1]])
        at = self.some_moment(spot[0])
        quantity = self.some_quantity(spot, at)
        may_be = quantity <= self.oracle.takeable(spot, at)
        key = self.attempt(may_be, lambda: self.ledger.move(spot, to, quantity, at))
        if key is None:
            return False
        self.oracle.change(spot, -quantity, at)
        self.oracle.change((spot[0], to), quantity, at)
        self.moves.append(Moved(key, spot, (spot[0], to), quantity, at))
        return True

    def move_back(self) -> bool:
        moved = self.one_of(self.moves)
        if moved is None:
            return False
        may_be = moved.stands and moved.quantity <= self.oracle.takeable(moved.to, moved.at)
        if not self.attempt(may_be, lambda: self.ledger.move_back(moved.key) or True):
            return False
        self.oracle.change(moved.to, -moved.quantity, moved.at)
        self.oracle.change(moved.origin, moved.quantity, moved.at)
        moved.stands = False
        return True

    def open(self) -> bool:
        lots = [lot for lot, containers in self.containers.items() if containers > 1]
        spots = [spot for spot in self.spots() if spot[0] in lots]
        if not spots:
            return False
        spot = self.random.choice(spots)
        lot, at = spot[0], self.some_moment(spot[0])
        opened = sum(quantity for made in self.made_from(lot) for _, quantity in made.inputs)
        quantity = round(Fraction(self.oracle.lots[lot].came_in - opened, self.containers[lot]))
        there = self.oracle.takeable(spot, at)
        if quantity >= there - TOLERANCE:
            quantity = there
        may_be = quantity > 0
        child = self.new_lot()
        if not self.attempt(may_be, lambda: self.ledger.open(lot, child, spot[1], quantity, at) or True):
            return False
        self.oracle.make(child, spot[1], quantity, [(spot, quantity)], at)
        self.made.append(Made(child, [(spot, quantity)], is_opening=True))
        self.containers[lot] -= 1
        self.containers[child] = 1
        return True

    def put_back(self) -> bool:
        made = self.one_of([made for made in self.made if made.is_opening])
        if made is None or not self.attempt(self.is_whole(made), lambda: self.ledger.put_back(made.lot) or True):
            return False
        self.oracle.unmake(made.lot, made.inputs)
        self.containers[made.inputs[0][0][0]] += 1
        made.stands = False
        return True

    def blend(self) -> bool:
        place = self.random.choice(PLACES)
        spots = [spot for spot in self.spots() if spot[1] == place and self.oracle.lots[spot[0]].depth < DEEPEST]
        if not spots:
            return False
        chosen = self.random.sample(spots, min(len(spots), self.random.choice([1, 2, 2, 3])))
        if self.random.random() < 0.6:  # top up what was mixed most often before
            deepest = max(spots, key=lambda spot: self.oracle.lots[spot[0]].depth)
            chosen = list(dict.fromkeys([deepest, *chosen]))
        at = max(self.some_moment(spot[0]) for spot in chosen)
        if self.random.random() < 0.8:
            chosen = [spot for spot in chosen if self.oracle.takeable(spot, at) > 3] or chosen
            shares = [self.oracle.takeable(spot, at) // self.random.choice([1, 2, 3]) for spot in chosen]
            inputs = [(spot, max(share, 1)) for spot, share in zip(chosen, shares, strict=True)]
        else:
            inputs = [(spot, self.some_quantity(spot, at)) for spot in chosen]
        may_be = all(quantity <= self.oracle.takeable(spot, at) for spot, quantity in inputs)
        lot = self.new_lot()
        if not self.attempt(may_be, lambda: self.ledger.blend(lot, place, inputs, at) or True):
            return False
        self.oracle.make(lot, place, sum(quantity for _, quantity in inputs), inputs, at)
        self.made.append(Made(lot, inputs, is_opening=False))
        self.containers[lot] = 1
        return True

    def unblend(self) -> bool:
        made = self.one_of([made for made in self.made if not made.is_opening])
        if made is None or not self.attempt(self.is_whole(made), lambda: self.ledger.unblend(made.lot) or True):
            return False
        self.oracle.unmake(made.lot, made.inputs)
        made.stands = False
        return True

    def charge(self) -> bool:
        lot = self.random.choice([lot for lot, known in self.oracle.lots.items() if known.is_bought])
        most = int(self.oracle.lots[lot].money)
        credit = -self.random.randrange(most // 2 + 1)
        money = self.random.choice([1, 7, 12_345, self.random.randrange(1_000_000), credit])
        self.ledger.charge(lot, money)
        self.oracle.charge(lot, Fraction(money))
        return True

    def count(self) -> bool:
        spot = self.some_spot()
        at = self.some_moment(spot[0]) + 1
        if at in self.oracle.counts.get(spot, {}):
            return False
        book = self.oracle.balance(spot, at)
        found = self.random.choice([book, book // 2, book + 1_000_000, book + book // 8, max(book - 2_500_000, 0)])
        may_be = self.oracle.may_count(spot, found, at)
        key = self.attempt(may_be, lambda: self.ledger.count(spot, found, at))
        if key is None:
            return False
        self.oracle.count(spot, found, at)
        self.counts.append(Counted(key, spot, at))
        return True

    def uncount(self) -> bool:
        counted = self.one_of(self.counts)
        if counted is None:
            return False
        may_be = counted.stands and self.oracle.may_uncount(counted.spot, counted.at)
        if not self.attempt(may_be, lambda: self.ledger.uncount(counted.key) or True):
            return False
        self.oracle.uncount(counted.spot, counted.at)
        counted.stands = False
        return True

    # How it is chosen

    def new_lot(self) -> int:
        return len(self.oracle.lots)

    def spots(self) -> list[Spot]:
        return sorted(self.oracle.events)

    def some_spot(self) -> Spot:
        filled = [spot for spot in self.spots() if self.oracle.balance(spot, self.now + 1)]
        return self.random.choice(filled if filled and self.random.random() < 0.9 else self.spots())

    def some_moment(self, lot: int) -> int:
        """Now, or some time since the lot came in."""
        first = self.oracle.lots[lot].made_at
        if self.random.random() < 0.6 or self.now - first < 4:
            return self.now
        return first + 2 * self.random.randrange((self.now - first) // 2)

    def some_quantity(self, spot: Spot, at: int) -> int:
        there = self.oracle.takeable(spot, at)
        wanted = self.random.choice(
            [there, there // 2, there // 3, 1_000_000, self.random.randrange(1, 9_000_000), there + 5_000_000]
        )
        return there if abs(wanted - there) <= TOLERANCE and there else max(wanted, 1)

    def one_of(self, things: list[Thing]) -> Thing | None:
        return self.random.choice(things) if things else None

    def made_from(self, lot: int) -> list[Made]:
        return [made for made in self.made if made.is_opening and made.stands and made.inputs[0][0][0] == lot]

    def is_whole(self, made: Made) -> bool:
        if not made.stands:
            return False
        lot = self.oracle.lots[made.lot]
        return (
            not any(issue.stands for issue in self.issues if issue.spot[0] == made.lot)
            and not any(moved.stands for moved in self.moves if moved.origin[0] == made.lot)
            and not lot.goes_on
            and not lot.gained
            and not any(self.oracle.counts.get(spot) for spot in self.spots() if spot[0] == made.lot)
        )

    def attempt(self, may_be: bool, act: Callable[[], Thing]) -> Thing | None:
        """Have the ledger do it; it must do what can be, and refuse what cannot."""
        try:
            done = act()
        except Refused:
            assert not may_be, f"refused what can be: {act}"
            self.refusals += 1
            return None
        assert may_be, f"did what cannot be: {act}"
        return done

    # What must hold

    def compare(self) -> None:
        balances = self.ledger.balances()
        for spot in self.spots():
            quantity, value = balances.get(spot, (0, 0))
            assert quantity == self.oracle.balance(spot, self.now + 1), f"lot and place {spot}"
            assert quantity or value == 0, f"{spot} is empty and worth {value}"
            assert value >= 0
            exact = self.oracle.value(spot, self.now + 1)
            allowed = 4 * self.oracle.lots[spot[0]].lines + 10
            assert abs(value - exact) <= allowed, f"{spot}: {value} for {float(exact)}, {allowed} allowed"
        assert set(balances) <= set(self.spots())

    def compare_history(self) -> None:
        """At every past moment the lines sum to what the oracle says, and to no less than nothing."""
        for spot, lines in self.ledger.history().items():
            for moment in self.oracle.instants(spot):
                stood = sum(quantity for at, quantity in lines if at <= moment)
                assert stood == self.oracle.balance(spot, moment) >= 0, f"{spot} at {moment}"
