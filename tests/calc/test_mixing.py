"""Parts in ratio: what can be mixed, what is stranded, and the way between volume and mass."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.calc.mixing import mixable, mixed_density, per_hundred, ratio_by_mass, ratio_by_volume

TWO_TO_ONE = {"A": 2, "B": 1}
DENSITIES = {"A": Decimal("1.13"), "B": Decimal("0.96")}


def test_the_part_that_runs_out_first_strands_the_other() -> None:
    plenty_of_b = mixable({"A": 1000, "B": 800}, TWO_TO_ONE)
    assert (plenty_of_b.total, plenty_of_b.used, plenty_of_b.stranded) == (
        1500,
        {"A": 1000, "B": 500},
        {"A": 0, "B": 300},
    )
    plenty_of_a = mixable({"A": 1000, "B": 300}, TWO_TO_ONE)
    assert (plenty_of_a.total, plenty_of_a.stranded) == (900, {"A": 400, "B": 0})


def test_without_one_part_nothing_can_be_mixed() -> None:
    nothing = mixable({"A": 1000}, TWO_TO_ONE)
    assert (nothing.total, nothing.used, nothing.stranded) == (0, {"A": 0, "B": 0}, {"A": 1000, "B": 0})


quantities = st.decimals(0, 9_999_999, places=6)
shares = st.decimals("0.001", 1000, places=3)
roles = st.sampled_from("ABCD")
ratios = st.dictionaries(roles, shares, min_size=1)


@given(ratios, st.data())
def test_what_is_mixed_and_what_is_stranded_are_all_there_was(ratio: dict[str, Decimal], data: st.DataObject) -> None:
    there = {role: data.draw(quantities) for role in ratio}
    mix = mixable(there, ratio)
    assert mix.total == sum(mix.used.values())
    assert {role: mix.used[role] + mix.stranded[role] for role in ratio} == there
    assert min(mix.stranded.values()) == 0
    first = next(iter(ratio))
    assert all(mix.used[role] * Fraction(ratio[first]) == mix.used[first] * Fraction(ratio[role]) for role in ratio)


@given(ratios, st.data(), st.integers(1, 1000))
def test_only_the_proportion_of_a_ratio_matters(ratio: dict[str, Decimal], data: st.DataObject, scale: int) -> None:
    there = {role: data.draw(quantities) for role in ratio}
    assert mixable(there, {role: share * scale for role, share in ratio.items()}) == mixable(there, ratio)


@given(ratios, st.data())
def test_from_volume_to_mass_and_back_nothing_is_lost(ratio: dict[str, Decimal], data: st.DataObject) -> None:
    densities = {role: data.draw(st.decimals("0.5", 3, places=4)) for role in ratio}
    by_mass = ratio_by_mass(ratio, densities)
    assert ratio_by_volume(by_mass, densities) == ratio
    density = mixed_density(ratio, densities)
    assert min(densities.values()) <= density <= max(densities.values())
    assert density * sum(Fraction(share) for share in ratio.values()) == sum(by_mass.values())


def test_a_missing_density_is_named() -> None:
    with pytest.raises(ValueError, match="density of part B is missing"):
        ratio_by_mass(TWO_TO_ONE, {"A": Decimal("1.13")})


@pytest.mark.parametrize("ratio", [{}, {"A": 0, "B": 1}, {"A": -2, "B": 1}])
def test_a_ratio_of_nothing_is_refused(ratio: dict[str, int]) -> None:
    with pytest.raises(ValueError, match="above 0"):
        mixable({}, ratio)
    with pytest.raises(ValueError, match="above 0"):
        ratio_by_volume(ratio, DENSITIES)


def test_a_density_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="density above 0"):
        ratio_by_mass(TWO_TO_ONE, {"A": 1, "B": 0})


def test_stock_of_a_part_that_the_ratio_lacks_or_below_zero_is_refused() -> None:
    with pytest.raises(ValueError, match="no part C"):
        mixable({"A": 1, "B": 1, "C": 1}, TWO_TO_ONE)
    with pytest.raises(ValueError, match="no part C"):
        per_hundred(TWO_TO_ONE, of="C")
    with pytest.raises(ValueError, match="below 0"):
        mixable({"A": 1, "B": -1}, TWO_TO_ONE)
