"""A quantity as somebody gave it, how it is written, and what can be wrong with it."""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from inventory.calc.rounding import half_even
from inventory.calc.units import UNITS

MAX_QUANTITY = Decimal("9999999.999999")
"""The most that one quantity may be, in whatever unit it is given or kept."""

LONGEST_QUOTE = 40

Figure = Literal["density_g_per_ml", "grams_per_tsp", "measure"]
"""A figure of a material that a conversion may lack."""


class QuantityError(ValueError):
    """A quantity that cannot be read or kept; its text says how to mend it."""


class AmbiguousUnit(QuantityError):
    """A unit that may be several; `choices` holds the codes of those that may be meant."""

    def __init__(self, sentence: str, *, choices: tuple[str, ...]) -> None:
        super().__init__(sentence)
        self.choices = choices


class UnitMismatch(QuantityError):
    """One unit does not lead to another without a figure of the material; `missing` says which figure that is."""

    def __init__(self, sentence: str, *, missing: Figure) -> None:
        super().__init__(sentence)
        self.missing = missing


@dataclass(frozen=True)
class Typed:
    """A quantity as it was given, before anything is known about the material.

    amount: exact, 0 to MAX_QUANTITY, in `unit`; a third of a can stays a third.
    unit: a code of UNITS, or the name of one of the material's own measures.
    is_rough: said with a `~`: estimated rather than measured.
    Raises QuantityError for an amount out of bounds.
    """

    amount: Fraction
    unit: str
    is_rough: bool = False

    def __post_init__(self) -> None:
        if self.amount < 0:
            raise QuantityError(
                "An amount cannot be below zero: give how much it is, and say elsewhere what became of it."
            )
        if self.amount > MAX_QUANTITY:
            raise QuantityError(
                f"An amount can be {MAX_QUANTITY} at most: give it in a larger unit, or split it into several."
            )

    def __str__(self) -> str:
        return ("~" if self.is_rough else "") + format_quantity(self.amount, self.unit)


def format_quantity(amount: Decimal | Fraction, unit: str) -> str:
    """The quantity as a person writes it; `parse_quantity` reads it back as the same amount and unit.

    amount: written as a decimal without idle zeros; a fraction that no decimal ends on is written as one.
    unit: a code of UNITS, or a measure's name.

    >>> format_quantity(Decimal("1.500000"), "gal")
    '1.5 gal'
    >>> format_quantity(Fraction(4, 3), "can")
    '1 1/3 cans'
    """
    exact = Fraction(amount)
    return f"{_number(exact)} {_label(unit, is_plural=exact > 1 or exact == 0)}"


def quoted(text: str) -> str:
    """What somebody wrote, for a message: cut short, without what cannot be printed."""
    shown = "".join(letter if letter.isprintable() else "?" for letter in text[:LONGEST_QUOTE])
    return f"“{shown}{'…' if len(text) > LONGEST_QUOTE else ''}”"


def plural(name: str) -> str:
    """The plural of an English noun of the bench; a name that ends in no letter stays as it is.

    >>> plural("pump"), plural("dash")
    ('pumps', 'dashes')
    """
    if not name[-1].isalpha():
        return name
    return f"{name}es" if name.casefold().endswith(("s", "x", "z", "ch", "sh")) else f"{name}s"


def _label(unit: str, *, is_plural: bool) -> str:
    known = UNITS.get(unit)
    if known:
        return known.plural if is_plural and known.plural else known.label
    return plural(unit) if is_plural else unit


def _number(exact: Fraction) -> str:
    places = _decimal_places(exact.denominator)
    if places is not None:
        return _trimmed(f"{half_even(exact, places):f}")
    sign = "-" if exact < 0 else ""
    whole, rest = divmod(abs(exact.numerator), exact.denominator)
    return f"{sign}{f'{whole} ' if whole else ''}{rest}/{exact.denominator}"


def _decimal_places(denominator: int) -> int | None:
    """After how many places the decimals of 1/denominator end; None where they never do."""
    twos = fives = 0
    while denominator % 2 == 0:
        denominator, twos = denominator // 2, twos + 1
    while denominator % 5 == 0:
        denominator, fives = denominator // 5, fives + 1
    return max(twos, fives) if denominator == 1 else None


def _trimmed(number: str) -> str:
    return number.rstrip("0").rstrip(".") if "." in number else number
