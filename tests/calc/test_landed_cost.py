"""Charges over goods, kits over contents, prices to follow: exact in sum, in proportion."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.calc.landed_cost import CannotSpread, Goods, KitContent, SpreadBy, cost_at, divide_kit, spread_charge

goods_lists = st.lists(
    st.builds(
        Goods,
        quantity=st.integers(1, 10**13),
        unit=st.just("ml"),
        value=st.integers(1, 10**11),
        grams=st.fractions(min_value=Fraction(1, 10**6), max_value=10**9, max_denominator=10**9),
    ),
    min_size=1,
    max_size=40,
)


@given(goods_lists, st.integers(-(10**11), 10**11), st.sampled_from(SpreadBy))
def test_a_spread_charge_sums_to_itself_and_no_line_is_off_by_a_whole_unit(
    goods: list[Goods], amount: int, by: SpreadBy
) -> None:
    shares = spread_charge(amount, by=by, goods=goods)

    attribute = {SpreadBy.VALUE: "value", SpreadBy.MASS: "grams", SpreadBy.QUANTITY: "quantity"}[by]
    weights = [Fraction(getattr(line, attribute)) for line in goods]
    whole = sum(weights)
    assert sum(shares) == amount
    for share, weight in zip(shares, weights, strict=True):
        assert abs(share - amount * weight / whole) < 1


@given(goods_lists, st.integers(1, 10**11), st.sampled_from(SpreadBy))
def test_a_discount_mirrors_the_charge(goods: list[Goods], amount: int, by: SpreadBy) -> None:
    charge, discount = (spread_charge(sign * amount, by=by, goods=goods) for sign in (1, -1))
    assert [-share for share in discount] == charge


@given(goods_lists)
def test_a_discount_by_value_of_all_they_cost_leaves_nothing_and_never_less(goods: list[Goods]) -> None:
    shares = spread_charge(-sum(line.value for line in goods), by=SpreadBy.VALUE, goods=goods)
    assert all(line.value + share == 0 for line, share in zip(goods, shares, strict=True))


def test_what_stands_in_the_way_of_a_spread_is_named() -> None:
    goods = [Goods(5, "ml", 0, grams=Fraction(5)), Goods(5, "each", 0), Goods(5, "ml", 0, grams=Fraction(5))]

    for by, lines in ((SpreadBy.VALUE, (0, 1, 2)), (SpreadBy.MASS, (1,)), (SpreadBy.QUANTITY, (1,))):
        with pytest.raises(CannotSpread) as refusal:
            spread_charge(100, by=by, goods=goods)
        assert refusal.value.lines == lines


@given(st.integers(0, 10**11), st.lists(st.integers(0, 10**6), min_size=1, max_size=10).filter(any))
def test_a_kits_price_by_shares_sums_to_itself(cost: int, shares: list[int]) -> None:
    parts = divide_kit(cost, [KitContent(share=Fraction(share)) for share in shares])
    assert sum(parts) == cost
    assert all(part == 0 for part, share in zip(parts, shares, strict=True) if share == 0)


def test_a_kit_is_divided_by_the_first_thing_that_is_known_of_all_its_contents() -> None:
    def contents(share: int | None, last: int | None, grams: int | None) -> list[KitContent]:
        """One content of which all three are known as 1, and one of which this is."""
        known = [None if figure is None else Fraction(figure) for figure in (share, last, grams)]
        return [KitContent(Fraction(1), Fraction(1), Fraction(1)), KitContent(*known)]

    assert divide_kit(100, contents(3, 1, 9)) == [25, 75]
    assert divide_kit(100, contents(None, 1, 9)) == [50, 50]
    assert divide_kit(100, contents(None, None, 9)) == [10, 90]
    assert divide_kit(100, contents(None, None, None)) == [50, 50]


def test_a_price_to_follow_rounds_half_to_even() -> None:
    assert cost_at(Fraction(5, 10_000), quantity=500_000) == 2  # 2.5 ten-thousandths
    assert cost_at(Fraction(7, 10_000), quantity=500_000) == 4  # 3.5
    assert cost_at(Fraction(0), quantity=500_000) == 0
