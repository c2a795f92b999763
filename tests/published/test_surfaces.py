"""Areas of pieces against worked figures and the digits of π."""

from decimal import Decimal
from fractions import Fraction

from inventory.calc.surfaces import PI, Piece, Rectangle, measure

L_OF_120_AND_60 = (Rectangle(Decimal(120), Decimal("25.5")), Rectangle(Decimal(60), Decimal("25.5")))


def arctan_of_one_over(number: int, *, terms: int) -> Fraction:
    return sum(
        (Fraction((-1) ** k, (2 * k + 1) * number ** (2 * k + 1)) for k in range(terms)),
        Fraction(0),
    )


def test_an_l_counts_its_corner_once() -> None:
    # exact: 120 × 25.5 + 60 × 25.5 − 25.5² = 3939.75 square inches; 31.875 with the corner counted twice
    assert measure(Piece(legs=L_OF_120_AND_60)).top_sqft == Fraction("27.359375")
    assert sum(leg.sqin for leg in L_OF_120_AND_60) / 144 == Fraction("31.875")


def test_pi_is_right_to_fifty_places() -> None:
    # Machin 1706: π/4 = 4 arctan(1/5) − arctan(1/239); 40 terms leave less than 10⁻⁵⁰
    machin = 4 * (4 * arctan_of_one_over(5, terms=40) - arctan_of_one_over(239, terms=40))

    assert abs(PI - machin) < Fraction(1, 10**50)


def test_a_round_of_four_feet() -> None:
    # exact: π/4 × 48² / 144 = 4 π square feet; π to ten places, OEIS A000796
    assert abs(measure(Piece(diameter_in=Decimal(48))).top_sqft - 4 * Fraction("3.1415926536")) < Fraction(1, 10**9)
