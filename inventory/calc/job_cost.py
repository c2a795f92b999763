"""What falls on each top of a pour that covers several.

Money and quantities are whole smallest units, so that the parts sum exactly to what they are parts of.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from inventory.calc.apportion import apportion


def piece_weights(areas: Sequence[int], shares: Sequence[int | None]) -> list[int]:
    """By what a pour is divided over its pieces: the typed shares where any was typed, else the areas.

    Where both are nothing, the pieces bear alike. A piece without a share beside one that has one bears nothing.
    areas, shares: one for each piece, in any whole unit, >= 0.

    >>> piece_weights([20, 10], [None, None]), piece_weights([20, 10], [50, 50]), piece_weights([0, 0], [None, None])
    ([20, 10], [50, 50], [1, 1])
    """
    weights = list(areas) if shares.count(None) == len(shares) else [share or 0 for share in shares]
    return weights if any(weights) else [1] * len(weights)


def share_out(amounts: Sequence[int], weights: Sequence[int]) -> list[list[int]]:
    """Divide several amounts over the same weights: for each weight, its part of each amount.

    Each amount is divided without losing a unit, and so is their sum: what falls on a weight in all is its
    largest-remainder share of the sum. A part lies within as many units of its exact share as there are amounts.

    amounts: what went into a pour, apart by kind, in smallest units.
    weights: as for `apportion`.
    Source: a table of whole numbers with given row and column sums, filled from one corner (north-west corner rule).

    >>> share_out([100, 50], [1, 1, 1])
    [[34, 16], [33, 17], [33, 17]]
    """
    rows = apportion(sum(amounts), weights)
    whole = sum(weights)
    cells = [[amount * weight // whole for amount in amounts] for weight in weights]
    lacking = [amount - sum(cell[column] for cell in cells) for column, amount in enumerate(amounts)]
    column = 0
    for row, cell in zip(rows, cells, strict=True):
        short = row - sum(cell)
        while short:
            if not lacking[column]:
                column += 1
                continue
            given = min(short, lacking[column])
            cell[column] += given
            lacking[column] -= given
            short -= given
    return cells


def cost_per_area(cost: int, area: int) -> Fraction | None:
    """Currency per square foot, exactly; None where there is no area.

    cost: ten-thousandths of the currency. area: millionths of a square foot.

    >>> cost_per_area(900_000, 30_000_000)
    Fraction(3, 1)
    """
    return Fraction(cost * 100, area) if area else None
