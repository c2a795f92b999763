"""Mixed resin that is left over: one number, split over all that was in the bucket.

Quantities that are kept are whole millionths of each material's stock unit; what they are compared in is any one unit.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

# A cup is read to about this share: what is left may be said a little higher than what was mixed.
READING_ERROR = Fraction(1, 1000)


def share_left(left: Fraction, mixed: Sequence[Fraction]) -> Fraction:
    """Which share of everything that was mixed is left, from 0 to 1.

    left: how much is left, >= 0. mixed: how much of each part went into the bucket, in the same unit.
    All was mixed into one, so each part is left over in the same share.
    Raises ValueError where nothing was mixed, or more is left than was mixed (by more than a thousandth).

    >>> share_left(Fraction(3), [Fraction(8), Fraction(4)])
    Fraction(1, 4)
    """
    whole = sum(mixed, Fraction(0))
    if whole <= 0:
        raise ValueError("nothing was mixed")
    if left < 0 or left > whole * (1 + READING_ERROR):
        raise ValueError(f"{left} of {whole} cannot be left")
    return min(left / whole, Fraction(1))


def split_off(quantity: int, share: Fraction) -> tuple[int, int]:
    """A quantity in millionths as what stayed in the coat and what is left over; together they are the quantity.

    What is left is rounded half-even, so that over many parts neither side gains.

    >>> split_off(1_000_001, Fraction(1, 4))
    (750001, 250000)
    """
    left = round(quantity * share)
    return quantity - left, left
