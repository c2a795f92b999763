"""How spread, film, gallons, waste and kits hang together."""

from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.calc.coverage import (
    NO_WASTE,
    Exact,
    Waste,
    WasteKind,
    film_microns,
    film_mils,
    gallons_for,
    kits_needed,
    mils,
    spread_fl_oz_per_sqft,
    sqft_per_gallon,
    sqft_per_gallon_from_metric,
    sqm_per_litre,
    to_mix,
)

above_zero = st.fractions(Fraction(1, 1000), 1000, max_denominator=1000)
percents = st.decimals(0, Decimal("99.9"), places=1)


@given(above_zero)
def test_spread_and_film_are_two_ways_of_saying_one_thing(film: Fraction) -> None:
    assert film_mils(spread_fl_oz_per_sqft(film)) == film
    assert sqft_per_gallon(film) * spread_fl_oz_per_sqft(film) == 128


@given(above_zero, above_zero)
def test_gallons_grow_with_area_and_with_thickness_alike(area: Fraction, film: Fraction) -> None:
    once = gallons_for(flat_sqft=area, flat_mils=film)

    assert gallons_for(flat_sqft=2 * area, flat_mils=film) == 2 * once
    assert gallons_for(flat_sqft=area, flat_mils=2 * film) == 2 * once


@given(above_zero, above_zero, above_zero)
def test_flat_and_vertical_faces_add_up(flat: Fraction, upright: Fraction, film: Fraction) -> None:
    both = gallons_for(flat_sqft=flat, flat_mils=film, vertical_sqft=upright, vertical_mils=film)

    assert both == gallons_for(flat_sqft=flat + upright, flat_mils=film)


@given(above_zero, percents)
def test_what_stays_in_the_bucket_is_a_share_of_the_mix(needed: Fraction, percent: Decimal) -> None:
    mixed = to_mix(needed, Waste(WasteKind.STAYS_IN_BUCKET, percent))

    assert mixed * (1 - Fraction(percent) / 100) == needed


@given(above_zero, percents)
def test_extra_to_mix_is_a_share_of_what_is_needed_and_never_more_than_a_share_of_the_mix(
    needed: Fraction, percent: Decimal
) -> None:
    extra = to_mix(needed, Waste(WasteKind.EXTRA_TO_MIX, percent))

    assert extra - needed == needed * Fraction(percent) / 100
    assert extra <= to_mix(needed, Waste(WasteKind.STAYS_IN_BUCKET, percent))


def test_without_waste_nothing_is_added() -> None:
    assert to_mix(Decimal("1.5")) == to_mix(Decimal("1.5"), NO_WASTE) == Fraction(3, 2)


@pytest.mark.parametrize(
    ("amount", "kits"), [(Fraction(0), 0), (Fraction(1, 100), 1), (Fraction(2), 1), (Fraction(2001, 1000), 2)]
)
def test_kits_come_whole(amount: Fraction, kits: int) -> None:
    assert kits_needed(amount, kit_size=2) == kits


@pytest.mark.parametrize(
    ("kind", "percent"),
    [
        (WasteKind.EXTRA_TO_MIX, "-1"),
        (WasteKind.EXTRA_TO_MIX, "100.1"),
        (WasteKind.EXTRA_TO_MIX, "NaN"),
        (WasteKind.STAYS_IN_BUCKET, "-0.1"),
        (WasteKind.STAYS_IN_BUCKET, "100"),
        (WasteKind.STAYS_IN_BUCKET, "Infinity"),
    ],
)
def test_an_impossible_waste_is_refused(kind: WasteKind, percent: str) -> None:
    with pytest.raises(ValueError, match=r"%|percentage"):
        Waste(kind, Decimal(percent))


def test_the_last_possible_waste_is_taken() -> None:
    assert to_mix(1, Waste(WasteKind.EXTRA_TO_MIX, Decimal(100))) == 2
    assert to_mix(1, Waste(WasteKind.STAYS_IN_BUCKET, Decimal("99.9"))) == 1000


@pytest.mark.parametrize(
    "of",
    [mils, sqft_per_gallon, film_mils, spread_fl_oz_per_sqft, sqm_per_litre, film_microns, sqft_per_gallon_from_metric],
)
def test_a_thickness_or_rate_is_above_zero(of: Callable[[Exact], Fraction]) -> None:
    assert of(1) > 0
    for figure in (0, -1, Decimal("NaN")):
        with pytest.raises(ValueError, match=r"must be|cannot be"):
            of(figure)


def test_a_vertical_face_needs_its_film() -> None:
    assert gallons_for(flat_sqft=1, flat_mils=125, vertical_sqft=0) > 0
    with pytest.raises(ValueError, match="vertical"):
        gallons_for(flat_sqft=1, flat_mils=125, vertical_sqft=1)
    with pytest.raises(ValueError, match="below zero"):
        gallons_for(flat_sqft=-1, flat_mils=125)
