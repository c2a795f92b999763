"""Where a lot went, and what a pour came from, through any depth of blends and openings.

The rule: of a lot, x went into a blend. Whoever took the fraction f of all that ever was in that blend (what was found
at a count included) holds f·x of the lot. So what is traced sums to all that ever was in the lot, and forward and
backward give the same figures. The fractions are exact; `round(quantity)` gives whole millionths, half to even.

Quantities are millionths of the stock unit of the lot they are of, net of reversals: ints while no mixed lot is on the
way, Fractions after that. A lot's *total* is all that ever was in it: received, blended in or split off into it, and
found; equally, all that became of it.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Mapping, Sequence
from fractions import Fraction
from typing import NamedTuple, TypeVar

Key = TypeVar("Key", bound=Hashable)
Quantity = int | Fraction


class Edge(NamedTuple):
    """So much of the source lot, in its own unit, went into the target lot by blending, topping up or opening."""

    source: int
    target: int
    quantity: int


def uses_of(
    lots: Iterable[int],
    *,
    edges: Iterable[tuple[int, int, int]],
    parts: Mapping[int, Sequence[tuple[Key, int]]],
) -> dict[Key, Quantity]:
    """How much of the lots, taken together, is in each thing that became of them or of what they were blended into.

    lots: the lots traced, of one material (one lot, or all of a supplier's number). A lot of the set that was split
        off or blended from another one of it is traced as a whole and counted once.
    edges: all transfers (source, target, quantity) out of the lots and out of whatever they went into.
    parts: for each of those lots whatever else became of it: stock on hand, each use, each part written off, returned,
        sold or counted off, as (key, quantity). A key met on several ways gets the sum.
    Returns a quantity above 0 for each key; for one lot they sum to its total.
    Raises ValueError for negative quantities, for lots that went into each other in a circle, and for a blend of which
    nothing is known.
    """
    lots, edges = list(lots), list(edges)
    totals = dict.fromkeys(lots, 0) | totals_of(edges=edges, parts=parts)
    uses: dict[Key, Quantity] = {}
    for lot, held in carried_into(lots, edges=edges, totals=totals).items():
        if held == totals[lot]:
            for key, quantity in parts.get(lot, ()):
                if quantity:
                    uses[key] = uses.get(key, 0) + quantity
        else:
            rate = Fraction(held) / totals[lot]
            for key, quantity in parts.get(lot, ()):
                if quantity:
                    part = rate * quantity
                    uses[key] = uses[key] + part if key in uses else part
    return uses


def exact_sum(quantities: Iterable[Quantity]) -> Quantity:
    """The sum of whole numbers and fractions, exactly; those of one denominator are added as whole numbers.

    >>> exact_sum([1, Fraction(1, 3), Fraction(2, 3), Fraction(1, 2)])
    Fraction(5, 2)
    """
    whole, numerators = 0, dict[int, int]()
    for quantity in quantities:
        if isinstance(quantity, int):
            whole += quantity
        else:
            below = quantity.denominator
            numerators[below] = numerators.get(below, 0) + quantity.numerator
    return (
        sum((Fraction(above, below) for below, above in numerators.items()), start=Fraction(whole))
        if numerators
        else whole
    )


def sources_of(
    taken: Iterable[tuple[int, Quantity]],
    *,
    edges: Iterable[tuple[int, int, int]],
    totals: Mapping[int, int],
) -> dict[int, Quantity]:
    """How much of each lot is in what was taken: the lots taken from, and every lot that went into them.

    taken: (lot, quantity) for all that, say, a pour took; a lot may stand there several times.
    edges: all transfers (source, target, quantity) into those lots and into whatever went into them.
    totals: for each lot on the way that others went into, its total.
    Returns a quantity above 0 for each lot, the lots taken from before the lots behind them.
    Raises ValueError for negative quantities, for more taken than ever was there, for a blend without a total, and for
    lots that went into each other in a circle.
    """
    held: dict[int, Quantity] = {}
    for lot, quantity in taken:
        _refuse_negative(lot, quantity)
        if quantity:
            held[lot] = held.get(lot, 0) + quantity
    into = _steps((target, source, quantity) for source, target, quantity in edges)
    order = _in_order(held, into)
    found = {lot: held.get(lot, 0) for lot in order}
    for lot in order:
        if lot in into:
            total = _known_total(lot, found[lot], totals)
            if found[lot] > total:
                raise ValueError(f"{found[lot]} was taken of lot {lot}, but only {total} ever was in it")
            for source, quantity in into[lot]:
                found[source] += _share(found[lot], quantity, total)
    return found


def carried_into(
    lots: Iterable[int],
    *,
    edges: Iterable[tuple[int, int, int]],
    totals: Mapping[int, int],
) -> dict[int, Quantity]:
    """How much of the lots, taken together, ever was in each lot that they reached, the traced lots themselves first.

    lots, edges: as for `uses_of`. totals: of the traced lots and of all they reached.
    Returns a quantity above 0 for each lot, each lot after those that went into it.
    Raises ValueError as `uses_of` does.
    """
    traced = set(lots)
    onward = _steps(edges)
    order = _in_order(sorted(traced), onward)
    carried: dict[int, Quantity] = {lot: totals.get(lot, 0) if lot in traced else 0 for lot in order}
    for lot in order:
        held = carried[lot]
        total = _known_total(lot, held, totals)
        for target, quantity in onward.get(lot, ()):
            if target not in traced:
                carried[target] += _share(held, quantity, total)
    return {lot: held for lot, held in carried.items() if held}


def totals_of(
    *,
    edges: Iterable[tuple[int, int, int]],
    parts: Mapping[int, Sequence[tuple[Key, int]]],
) -> dict[int, int]:
    """The total of each lot: the sum of all that became of it, transfers into other lots included.

    Raises ValueError for a negative quantity.
    """
    totals = {}
    for lot, pieces in parts.items():
        totals[lot] = sum(quantity for _, quantity in pieces)
        if any(quantity < 0 for _, quantity in pieces):
            raise ValueError(f"a part of lot {lot} is negative; give parts net of reversals")
    for source, _, quantity in edges:
        totals[source] = totals.get(source, 0) + quantity
    return totals


def _share(held: Quantity, quantity: int, total: int) -> Quantity:
    """What `held` of `total` makes of a quantity: an int wherever the whole is concerned."""
    if held == total:
        return quantity
    if quantity == total:
        return held
    return held * Fraction(quantity, total)


def _known_total(lot: int, held: Quantity, totals: Mapping[int, int]) -> int:
    total = totals.get(lot, 0)
    if held and not total:
        raise ValueError(f"lot {lot} took something in, but its total is not known; give all that became of it")
    return total


def _refuse_negative(lot: int, quantity: Quantity) -> None:
    if quantity < 0:
        raise ValueError(f"{quantity} of lot {lot} is negative; give quantities net of reversals")


def _steps(edges: Iterable[tuple[int, int, int]]) -> dict[int, list[tuple[int, int]]]:
    """The transfers by the lot they start from; those undone (0) left out."""
    steps: dict[int, list[tuple[int, int]]] = {}
    for start, end, quantity in edges:
        _refuse_negative(start, quantity)
        if quantity:
            steps.setdefault(start, []).append((end, quantity))
    return steps


def _in_order(starts: Iterable[int], steps: Mapping[int, Sequence[tuple[int, int]]]) -> list[int]:
    """All lots that the steps lead to from the starts, each after all those that lead to it; no recursion."""
    waits_for = dict.fromkeys(starts, 0)
    unseen = list(waits_for)
    while unseen:
        for end, _ in steps.get(unseen.pop(), ()):
            if end not in waits_for:
                waits_for[end] = 0
                unseen.append(end)
            waits_for[end] += 1
    order = [lot for lot, count in waits_for.items() if not count]
    for lot in order:  # grows while it is walked
        for end, _ in steps.get(lot, ()):
            waits_for[end] -= 1
            if not waits_for[end]:
                order.append(end)
    if len(order) < len(waits_for):
        circle = sorted(lot for lot, count in waits_for.items() if count)
        raise ValueError(f"lots {circle} went into each other in a circle")
    return order
