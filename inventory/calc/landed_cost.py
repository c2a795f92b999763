"""What delivered goods cost, landed: the price, a kit's price divided over what is in it, and the charges on top.

Quantities are whole millionths of the stock unit, money whole ten-thousandths of the currency. Source: IAS 2.11, cost
of purchase = price + duties + transport and handling - discounts; parts of a whole by largest remainder
(`calc.apportion`).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from math import lcm

from inventory.calc.apportion import apportion
from inventory.calc.valuation import half_even


class SpreadBy(StrEnum):
    """What a charge is spread in proportion to."""

    VALUE = "value"
    MASS = "mass"
    QUANTITY = "quantity"


@dataclass(frozen=True, slots=True)
class Goods:
    """One line of a delivery as a charge sees it.

    quantity: in `unit`, > 0. value: its price, >= 0. grams: its mass, None where nobody knows it.
    """

    quantity: int
    unit: str
    value: int
    grams: Fraction | None = None


class CannotSpread(ValueError):
    """A charge that these goods cannot bear in that proportion. lines: the positions of those that stand in the way."""

    def __init__(self, by: SpreadBy, lines: Sequence[int]) -> None:
        super().__init__(f"cannot spread by {by}: see lines {list(lines)}")
        self.by, self.lines = by, tuple(lines)


def spread_charge(amount: int, *, by: SpreadBy, goods: Sequence[Goods]) -> list[int]:
    """What each line bears of a charge, exactly in sum; a discount (amount < 0) is the mirror of a charge.

    By value the lines bear it in proportion to their prices, by mass to their weight, by quantity to their amount.
    Raises CannotSpread: by value where nothing has a price, by mass where a line's mass is not known, by quantity where
    the units differ (lines: those not in the first line's unit).

    >>> goods = [Goods(2_000_000, "each", 300), Goods(1_000_000, "each", 100)]
    >>> spread_charge(100, by=SpreadBy.VALUE, goods=goods), spread_charge(100, by=SpreadBy.QUANTITY, goods=goods)
    ([75, 25], [67, 33])
    """
    weights: list[int]
    if by is SpreadBy.VALUE:
        in_the_way = [] if any(line.value for line in goods) else list(range(len(goods)))
        weights = [line.value for line in goods]
    elif by is SpreadBy.MASS:
        in_the_way = [position for position, line in enumerate(goods) if line.grams is None]
        weights = _whole([line.grams or Fraction(0) for line in goods])
    else:
        in_the_way = [position for position, line in enumerate(goods) if line.unit != goods[0].unit]
        weights = [line.quantity for line in goods]
    if in_the_way:
        raise CannotSpread(by, in_the_way)
    return apportion(amount, weights)


@dataclass(frozen=True, slots=True)
class KitContent:
    """One content of a kit.

    share: the part of the kit's price that the shop has set for it, in any one unit (percent). last_value: what this
    quantity would cost at the material's last price, None where it was never bought. grams: its mass, None if unknown.
    """

    share: Fraction | None = None
    last_value: Fraction | None = None
    grams: Fraction | None = None


def divide_kit(cost: int, contents: Sequence[KitContent]) -> list[int]:
    """The price of a kit over its contents, exactly in sum.

    By the shares that the shop set, where every content has one; else in proportion to what each would cost at its last
    price, where all have been bought before, since that is what the market says of them; else by mass, since resin
    and hardener of one kit are sold by the weight of stuff in them; else in equal parts, when nothing is known.

    >>> divide_kit(1000, [KitContent(share=Fraction(60)), KitContent(share=Fraction(40))])
    [600, 400]
    >>> divide_kit(1000, [KitContent(grams=Fraction(3)), KitContent(grams=Fraction(1))])
    [750, 250]
    >>> divide_kit(1000, [KitContent(grams=Fraction(3)), KitContent()])
    [500, 500]
    """
    for weights in (
        [content.share for content in contents],
        [content.last_value for content in contents],
        [content.grams for content in contents],
    ):
        known = [weight for weight in weights if weight is not None]
        if len(known) == len(contents) and any(known):
            return apportion(cost, _whole(known))
    return apportion(cost, [1] * len(contents))


def cost_at(price: Fraction, *, quantity: int) -> int:
    """What a quantity costs at a price, rounded half-even to the ten-thousandth.

    price: currency per stock unit. quantity: millionths of the stock unit.

    >>> cost_at(Fraction(1, 3), quantity=2_000_000)
    6667
    """
    exact = price * quantity / 100
    return half_even(exact.numerator, exact.denominator)


def _whole(weights: Sequence[Fraction]) -> list[int]:
    """The same proportions as whole numbers."""
    scale = lcm(*(weight.denominator for weight in weights))
    return [weight.numerator * (scale // weight.denominator) for weight in weights]
