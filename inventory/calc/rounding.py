"""Where an exact fraction becomes a decimal that can be kept."""

from decimal import Decimal
from fractions import Fraction

QUANTITY_PLACES = 6


def half_even(value: Fraction, places: int = QUANTITY_PLACES) -> Decimal:
    """The decimal of `places` places nearest to an exact value; a tie goes to the even last digit.

    Independent of the decimal context in force, and exact however large the value is.

    >>> half_even(Fraction(2, 3))
    Decimal('0.666667')
    >>> half_even(Fraction(1, 8), 2)
    Decimal('0.12')
    """
    whole = round(value * 10**places)
    digits = tuple(int(digit) for digit in str(abs(whole)))
    return Decimal((whole < 0, digits, -places))
