"""Dividing a whole into parts that sum exactly to the whole."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from math import lcm

MONEY_PLACES = 4
SMALLEST_UNITS = 10_000


def apportion(total: int, weights: Sequence[int]) -> list[int]:
    """Divide `total` in proportion to `weights`, in whole smallest units, without losing one.

    Every part first gets the whole units of its exact share; the units left over go one each to the parts with the
    largest remainders, of equal remainders to the earlier. A negative total is divided as its opposite, so that a
    credit mirrors the charge it takes back.

    total: in the smallest unit (a ten-thousandth of the currency, a millionth of the stock unit).
    weights: at least one, none negative, not all zero; a part of weight 0 gets 0.
    Raises ValueError for weights that cannot divide anything.
    Source: the method of largest remainders (Hamilton), US apportionment bill of 1792.

    >>> apportion(1_000_000, [1, 1, 1])
    [333334, 333333, 333333]
    """
    whole = sum(weights)
    if whole <= 0 or min(weights) < 0:
        raise ValueError("to divide a whole, give weights of 0 or more, at least one of them above 0")
    if len(weights) == 1:
        return [total]
    size = -total if total < 0 else total
    products = [size * weight for weight in weights]
    parts = [product // whole for product in products]
    left = size - sum(parts)
    if left == 1:
        parts[max(range(len(parts)), key=lambda i: products[i] % whole)] += 1  # of equal remainders the first
    elif left:
        # sorted() is stable: of equal remainders the earlier stays first.
        by_remainder = sorted(range(len(parts)), key=lambda i: products[i] % whole, reverse=True)
        for i in by_remainder[:left]:
            parts[i] += 1
    return [-part for part in parts] if total < 0 else parts


def apportion_money(total: Decimal, weights: Sequence[Decimal]) -> list[Decimal]:
    """Divide an amount of money in proportion to `weights`, to the last 0.0001, without losing any.

    total: the currency, at most four places; may be negative.
    weights: as for `apportion`, in any one unit (quantities, prices, areas); compared exactly, never rounded.
    Raises ValueError for a total finer than 0.0001 and for weights that cannot divide anything.

    >>> apportion_money(Decimal("100.00"), [Decimal(1)] * 3)
    [Decimal('33.3334'), Decimal('33.3333'), Decimal('33.3333')]
    """
    return [money_of(part) for part in apportion(smallest_units_of(total), _whole_numbers(weights))]


def smallest_units_of(money: Decimal) -> int:
    """The money as a whole number of ten-thousandths; ValueError where it is finer than that."""
    if not money.is_finite():
        raise ValueError(f"{money} is no amount of money")
    numerator, denominator = money.as_integer_ratio()
    units, rest = divmod(numerator * SMALLEST_UNITS, denominator)
    if rest:
        raise ValueError(f"{money} has more than {MONEY_PLACES} places; round it before it is divided")
    return units


def money_of(smallest_units: int) -> Decimal:
    """A whole number of ten-thousandths as money with four places, however large."""
    digits = tuple(int(digit) for digit in str(abs(smallest_units)))
    return Decimal((smallest_units < 0, digits, -MONEY_PLACES))


def _whole_numbers(weights: Sequence[Decimal]) -> list[int]:
    """The same proportions as integers."""
    if not all(weight.is_finite() for weight in weights):
        raise ValueError("a weight must be a finite number")
    ratios = [weight.as_integer_ratio() for weight in weights]
    scale = lcm(*(denominator for _, denominator in ratios))
    return [numerator * (scale // denominator) for numerator, denominator in ratios]
