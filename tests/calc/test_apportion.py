"""Parts always sum to the whole, and no part is a unit away from its exact share."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.calc.apportion import apportion, apportion_money, money_of, smallest_units_of

weights = st.lists(st.integers(0, 10**13), min_size=1, max_size=12).filter(any)
totals = st.integers(-(10**14), 10**14)


@given(totals, weights)
def test_the_parts_sum_to_the_whole(total: int, weights: list[int]) -> None:
    assert sum(apportion(total, weights)) == total


@given(totals, weights)
def test_every_part_is_its_exact_share_rounded_down_or_up(total: int, weights: list[int]) -> None:
    whole = sum(weights)
    for part, weight in zip(apportion(total, weights), weights, strict=True):
        assert abs(part - Fraction(total * weight, whole)) < 1
        if total * weight % whole == 0:
            assert part == total * weight // whole


@given(totals, weights)
def test_the_units_left_over_go_to_the_largest_remainders_of_equals_to_the_earlier(
    total: int, weights: list[int]
) -> None:
    whole = sum(weights)
    exact = [Fraction(abs(total) * weight, whole) for weight in weights]
    floors = [share.numerator // share.denominator for share in exact]
    order = sorted(range(len(weights)), key=lambda i: (floors[i] - exact[i], i))
    lucky = set(order[: abs(total) - sum(floors)])
    expected = [floor + (i in lucky) for i, floor in enumerate(floors)]
    assert [abs(part) for part in apportion(total, weights)] == expected


@given(totals, weights)
def test_a_credit_mirrors_the_charge(total: int, weights: list[int]) -> None:
    assert apportion(-total, weights) == [-part for part in apportion(total, weights)]


@given(totals, weights, st.integers(1, 1000))
def test_only_the_proportions_of_the_weights_matter(total: int, weights: list[int], factor: int) -> None:
    assert apportion(total, [weight * factor for weight in weights]) == apportion(total, weights)


def test_a_part_without_weight_gets_nothing() -> None:
    assert apportion(10, [0, 3, 0]) == [0, 10, 0]


@pytest.mark.parametrize("weights", [[], [0], [0, 0], [2, -1], [-1, -1]])
def test_weights_that_divide_nothing_are_refused(weights: list[int]) -> None:
    with pytest.raises(ValueError, match="weights"):
        apportion(10, weights)


money = st.decimals(-(10**9), 10**9, places=4)


@given(money, st.lists(st.decimals(0, 10**6, places=6), min_size=1, max_size=8).filter(any))
def test_money_is_divided_to_the_last_ten_thousandth(total: Decimal, weights: list[Decimal]) -> None:
    parts = apportion_money(total, weights)
    assert sum(parts) == total
    assert all(part.as_tuple().exponent == -4 for part in parts)


@given(st.integers(-(10**40), 10**40))
def test_money_and_its_smallest_units_are_the_same_amount(units: int) -> None:
    assert smallest_units_of(money_of(units)) == units


@pytest.mark.parametrize("total", ["0.00001", "NaN", "Infinity"])
def test_money_finer_than_the_ledger_keeps_is_refused(total: str) -> None:
    with pytest.raises(ValueError, match=r"money|places"):
        apportion_money(Decimal(total), [Decimal(1)])


def test_a_weight_that_is_no_number_is_refused() -> None:
    with pytest.raises(ValueError, match="finite"):
        apportion_money(Decimal(1), [Decimal(1), Decimal("NaN")])
