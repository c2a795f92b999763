"""Money that goes with a quantity: out of a lot, into a lot, and when a lot's cost changes afterwards.

Quantities are whole millionths of the stock unit, money whole ten-thousandths of the currency, as the ledger keeps
them. Source: specific identification of cost, IAS 2.23-24; parts of a whole by largest remainder (`calc.apportion`).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from graphlib import CycleError, TopologicalSorter

from inventory.calc.apportion import apportion


def issue_value(*, on_hand: int, value: int, taken: int) -> int:
    """Money that leaves a lot at a place together with a quantity.

    The value shrinks in proportion to the quantity, rounded half-even; whoever takes the last of it takes the rest, so
    that an empty lot is worth exactly nothing.

    on_hand, taken: 0 < taken <= on_hand. value: >= 0.
    Raises ValueError where more is taken than is there.

    >>> issue_value(on_hand=3_000_000, value=100_000, taken=1_000_000)
    33333
    """
    if not 0 < taken <= on_hand:
        raise ValueError(f"cannot take {taken} of {on_hand}")
    if taken == on_hand:
        return value
    return half_even(value * taken, on_hand)


def gain_value(*, lot_quantity: int, lot_value: int, gained: int) -> int:
    """What a quantity found in a lot is worth: the lot's unit cost, all that ever came into it at what it cost.

    lot_quantity, lot_value: sums of what came into the lot, net. A lot that nothing came into gives 0.
    """
    if lot_quantity <= 0 or lot_value <= 0:
        return 0
    return half_even(lot_value * gained, lot_quantity)


def half_even(numerator: int, denominator: int) -> int:
    """numerator / denominator as a whole number, a half to the even neighbour. denominator > 0.

    >>> [half_even(n, 2) for n in (1, 3, 5)]
    [0, 2, 2]
    """
    whole, rest = divmod(numerator, denominator)
    twice = 2 * rest
    if twice > denominator or (twice == denominator and whole % 2):
        return whole + 1
    return whole


def unit_cost(*, quantity: int, value: int) -> Fraction | None:
    """Money per stock unit, in the currency, exactly; None where there is no quantity."""
    return Fraction(value * 100, quantity) if quantity else None


@dataclass(frozen=True, slots=True)
class Issue:
    """Something that left a lot: the movement that took it, its quantity and its money with every later change."""

    movement: int
    place: int
    quantity: int
    value: int
    into_lot: int | None = None


@dataclass(slots=True)
class LotMoney:
    """A lot as revaluation sees it: the stock at each place (quantity, money) and every issue that was not reversed.

    came_in_at: the place where money that reaches this lot from other lots or a bill arrives.
    """

    lot: int
    came_in_at: int
    stock: Mapping[int, tuple[int, int]]
    issues: Sequence[Issue] = field(default_factory=list)

    @property
    def total(self) -> int:
        """The lot's total cost: what is here and what went."""
        return sum(value for _, value in self.stock.values()) + sum(issue.value for issue in self.issues)


@dataclass(frozen=True, slots=True)
class ChargedStock:
    """Money that a place's part of a lot gains or loses from outside the lot's issues; summed over places, the change
    of the lot's total less what other lots carried into it."""

    lot: int
    place: int
    value: int


@dataclass(frozen=True, slots=True)
class ChangedIssue:
    """An issue that now carries more (value > 0) or less money out of its lot."""

    lot: int
    issue: Issue
    value: int


@dataclass(frozen=True, slots=True)
class CarriedOn:
    """Money that a changed issue carries on into the lot that it went into."""

    lot: int
    from_issue: Issue
    place: int
    value: int


Change = ChargedStock | ChangedIssue | CarriedOn


class CostBelowZero(ValueError):
    """A credit larger than what the lot cost."""

    def __init__(self, lot: int, total: int, change: int) -> None:
        super().__init__(f"lot {lot} cost {total}; it cannot change by {change}")
        self.lot, self.total, self.change = lot, total, change


def revalue(lots: Mapping[int, LotMoney], changes: Mapping[int, int]) -> list[Change]:
    """Spread changes of lots' total cost over everything that each lot became, on into what was made from it.

    Every part of a lot (each place's stock, each unreversed issue) is set to its largest-remainder share, by quantity,
    of the lot's new total; the differences come back, lot after lot in order of depth, each lot's incoming money first.

    lots: every lot that changes, and every lot that anything of them went into, to any depth.
    changes: lot -> change of its total cost; 0 where its parts are only to take their shares anew.
    Raises CostBelowZero for a credit beyond a lot's cost, ValueError for lots that went into each other.

    >>> used = Issue(movement=7, place=1, quantity=1, value=10)
    >>> lot = LotMoney(1, came_in_at=1, stock={1: (2, 20)}, issues=[used])
    >>> [(change.lot, change.value) for change in revalue({1: lot}, {1: 3})]
    [(1, 3), (1, 1)]
    """
    waiting = dict(changes)
    carried: dict[int, dict[int, int]] = {}
    result: list[Change] = []
    for lot in _by_depth(lots):
        book = lots[lot]
        change = waiting.get(lot, 0)
        came_in = carried.get(lot, {})
        if lot not in changes and not came_in:
            continue
        total = book.total + change + sum(came_in.values())
        if total < 0:
            raise CostBelowZero(lot, book.total, change)
        stock_changes, issue_changes = _shares(book, total)
        result += _charged(book, stock_changes, issue_changes, came_in)
        for issue, difference in issue_changes:
            if not difference:
                continue
            result.append(ChangedIssue(lot, issue, difference))
            if issue.into_lot is not None:
                place = lots[issue.into_lot].came_in_at
                result.append(CarriedOn(issue.into_lot, issue, place, difference))
                at = carried.setdefault(issue.into_lot, {})
                at[place] = at.get(place, 0) + difference
    return result


def _shares(book: LotMoney, total: int) -> tuple[list[tuple[int, int]], list[tuple[Issue, int]]]:
    """How much each place's stock and each issue changes, so that all have their share of the new total."""
    places = sorted(place for place, (quantity, _) in book.stock.items() if quantity > 0)
    issues = [issue for issue in book.issues if issue.quantity > 0]
    weights = [book.stock[place][0] for place in places] + [issue.quantity for issue in issues]
    if not weights:
        raise CostBelowZero(book.lot, book.total, total - book.total)
    shares = apportion(total, weights)
    stock = [(place, share - book.stock[place][1]) for place, share in zip(places, shares, strict=False)]
    return stock, [(issue, share - issue.value) for issue, share in zip(issues, shares[len(places) :], strict=True)]


def _charged(
    book: LotMoney,
    stock_changes: Iterable[tuple[int, int]],
    issue_changes: Iterable[tuple[Issue, int]],
    came_in: Mapping[int, int],
) -> list[ChargedStock]:
    """What each place must gain from outside so that its stock and the issues taken there reach their shares."""
    at: dict[int, int] = {}
    for place, difference in stock_changes:
        at[place] = at.get(place, 0) + difference
    for issue, difference in issue_changes:
        at[issue.place] = at.get(issue.place, 0) + difference
    for place, value in came_in.items():
        at[place] = at.get(place, 0) - value
    return [ChargedStock(book.lot, place, value) for place, value in sorted(at.items()) if value]


def _by_depth(lots: Mapping[int, LotMoney]) -> Iterable[int]:
    """The lots, each after those that went into it."""
    sorter: TopologicalSorter[int] = TopologicalSorter()
    for lot, book in lots.items():
        sorter.add(lot)
        for issue in book.issues:
            if issue.into_lot is not None:
                sorter.add(issue.into_lot, lot)
    try:
        return list(sorter.static_order())
    except CycleError as error:
        raise ValueError("lots went into each other in a circle") from error
