"""What falls on each top of a pour."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.calc.apportion import apportion
from inventory.calc.job_cost import cost_per_area, piece_weights, share_out

amounts = st.lists(st.integers(0, 10**9), min_size=1, max_size=8)
weights = st.lists(st.integers(0, 10**7), min_size=1, max_size=6).filter(any)


@given(amounts, weights)
def test_each_amount_and_their_sum_are_divided_without_losing_a_unit(amounts: list[int], weights: list[int]) -> None:
    cells = share_out(amounts, weights)

    assert [sum(column) for column in zip(*cells, strict=True)] == amounts
    assert [sum(row) for row in cells] == apportion(sum(amounts), weights)


@given(amounts, weights)
def test_a_part_is_never_negative_and_close_to_its_exact_share(amounts: list[int], weights: list[int]) -> None:
    whole = sum(weights)
    for weight, row in zip(weights, share_out(amounts, weights), strict=True):
        for amount, part in zip(amounts, row, strict=True):
            assert part >= 0
            assert abs(part - Fraction(amount * weight, whole)) <= len(amounts)
            assert weight or not part


@given(st.lists(st.integers(-(10**6), 10**6), min_size=1, max_size=5), weights)
def test_credits_are_divided_too(amounts: list[int], weights: list[int]) -> None:
    cells = share_out(amounts, weights)

    assert [sum(column) for column in zip(*cells, strict=True)] == amounts
    assert [sum(row) for row in cells] == apportion(sum(amounts), weights)


def test_typed_shares_come_before_areas_and_nothing_at_all_is_shared_alike() -> None:
    assert piece_weights([20, 10], [None, None]) == [20, 10]
    assert piece_weights([20, 10], [40, 60]) == [40, 60]
    assert piece_weights([20, 10], [100, None]) == [100, 0]
    assert piece_weights([0, 0], [None, None]) == [1, 1]


@pytest.mark.parametrize(("cost", "area", "per_sqft"), [(910_000, 30_000_000, Fraction(91, 30)), (910_000, 0, None)])
def test_cost_over_area_is_exact_and_nothing_without_area(cost: int, area: int, per_sqft: Fraction | None) -> None:
    assert cost_per_area(cost, area) == per_sqft
