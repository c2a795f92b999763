"""Mixed resin that is left over, as a share of everything that was in the bucket."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.calc.leftovers import share_left, split_off


def test_what_is_left_of_a_mix_is_the_same_share_of_each_part() -> None:
    """1000 ml of A at 1.13 and 500 ml of B at 0.96 g/ml: 1610 g mixed, 161 g of it left."""
    share = share_left(Fraction(161), [Fraction(1130), Fraction(480)])

    assert share == Fraction(1, 10)
    assert split_off(1_000_000_000, share) == (900_000_000, 100_000_000)
    assert split_off(500_000_000, share) == (450_000_000, 50_000_000)


def test_a_cup_read_a_hair_high_is_all_of_it_and_more_is_refused() -> None:
    assert share_left(Fraction(1001, 1000), [Fraction(1)]) == 1
    with pytest.raises(ValueError, match="cannot be left"):
        share_left(Fraction(1002, 1000), [Fraction(1)])


def test_of_nothing_nothing_can_be_left() -> None:
    with pytest.raises(ValueError, match="nothing was mixed"):
        share_left(Fraction(1), [])
    assert share_left(Fraction(0), [Fraction(5)]) == 0


@given(st.integers(1, 10**13), st.fractions(0, 1))
def test_both_sides_are_whole_and_together_the_quantity(quantity: int, share: Fraction) -> None:
    stayed, left = split_off(quantity, share)

    assert stayed + left == quantity
    assert abs(left - quantity * share) <= Fraction(1, 2)
    assert stayed >= 0
