"""Coverage of a 100 % solids coat against a military handbook and exact definitions."""

from decimal import Decimal
from fractions import Fraction

import pytest

from inventory.calc.coverage import (
    SQFT_PER_GALLON_AT_ONE_MIL,
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
from inventory.calc.rounding import half_even
from inventory.calc.surfaces import Piece, Rectangle, Strip, counted_area, measure

EXTRA_15 = Waste(WasteKind.EXTRA_TO_MIX, Decimal(15))
STAYS_15 = Waste(WasteKind.STAYS_IN_BUCKET, Decimal(15))


def test_a_gallon_one_mil_thick_covers_9625_sixths_of_a_square_foot() -> None:
    # MIL-HDBK-1110, par. 2.1.5, prints 1600; exact by NIST Handbook 44, appendix C (231 cubic inches).
    assert sqft_per_gallon(1) == Fraction(9625, 6)
    assert round(sqft_per_gallon(1), -2) == 1600
    assert half_even(sqft_per_gallon(1), 4) == Decimal("1604.1667")


@pytest.mark.parametrize(
    ("inches", "covered"),
    [  # exact: 9625/6 over the mils
        (Fraction(1, 16), Fraction(77, 3)),
        (Fraction(1, 8), Fraction(77, 6)),
        (Fraction(1, 4), Fraction(77, 12)),
    ],
)
def test_coverage_follows_from_the_thickness(inches: Fraction, covered: Fraction) -> None:
    assert sqft_per_gallon(mils(inches)) == covered


def test_an_eighth_of_an_inch_takes_ten_fluid_ounces_a_square_foot() -> None:
    # exact
    assert spread_fl_oz_per_sqft(mils(Fraction(1, 8))) == Fraction(768, 77)
    assert half_even(Fraction(768, 77), 4) == Decimal("9.9740")


@pytest.mark.parametrize(
    ("spread", "film"), [(3, "37.598"), (4, "50.130"), (5, "62.663")]
)  # exact, printed to 3 places
def test_a_spread_rate_leaves_a_film(spread: int, film: str) -> None:
    assert half_even(film_mils(spread), 3) == Decimal(film)


def test_a_litre_at_100_microns_covers_ten_square_metres() -> None:
    # exact
    assert sqm_per_litre(100) == 10
    assert film_microns(Fraction(1, 10)) == 100


def test_metric_coverage_in_us_units() -> None:
    # NIST SP 811, appendix B: gallon and square foot in metric units
    assert half_even(sqft_per_gallon_from_metric(1)) == Decimal("40.745833")


def test_the_metric_and_the_us_rule_are_one() -> None:
    # 1 mil = 25.4 µm: NIST SP 811, appendix B
    assert sqft_per_gallon_from_metric(sqm_per_litre(Decimal("25.4"))) == SQFT_PER_GALLON_AT_ONE_MIL


class TestWorkedJob:
    """A top of 120 × 25.5 in with a 1.5 in front edge and a 4 in splash, flat at 1/8 in, verticals at 20 mil; exact."""

    faces = measure(
        Piece(
            length_in=Decimal(120),
            width_in=Decimal("25.5"),
            edges=(Strip(Decimal(120), Decimal("1.5")),),
            splash=(Strip(Decimal(120), Decimal(4)),),
            cutouts=(Rectangle(Decimal(30), Decimal(20)),),
        )
    )
    gallons = gallons_for(
        flat_sqft=faces.top_sqft,
        flat_mils=mils(Fraction(1, 8)),
        vertical_sqft=faces.edge_sqft + faces.splash_sqft,
        vertical_mils=20,
    )

    def test_its_faces(self) -> None:
        assert (self.faces.top_sqft, self.faces.edge_sqft, self.faces.splash_sqft) == (
            Fraction("21.25"),
            Fraction("1.25"),
            Fraction(10, 3),
        )
        assert self.faces.top_sqft + self.faces.edge_sqft + self.faces.splash_sqft == Fraction(155, 6)
        assert counted_area(self.faces) == Decimal("25.833333")

    def test_its_gallons(self) -> None:
        assert self.gallons == Fraction(1319, 770)
        assert half_even(self.gallons) == Decimal("1.712987")

    def test_extra_to_mix_takes_one_two_gallon_kit(self) -> None:
        mixed = to_mix(self.gallons, EXTRA_15)

        assert mixed == Fraction(1319, 770) * Fraction(115, 100)
        assert half_even(mixed) == Decimal("1.969935")
        assert kits_needed(mixed, kit_size=2) == 1

    def test_what_stays_in_the_bucket_takes_two(self) -> None:
        mixed = to_mix(self.gallons, STAYS_15)

        assert mixed == Fraction(1319, 770) / Fraction(85, 100)
        assert half_even(mixed) == Decimal("2.015279")
        assert kits_needed(mixed, kit_size=2) == 2

    def test_its_cost_per_square_foot(self) -> None:
        cost = to_mix(self.gallons, EXTRA_15) * 90  # 90.00 per mixed gallon

        assert half_even(cost, 2) == Decimal("177.29")
        assert half_even(cost / self.faces.top_sqft, 4) == Decimal("8.3433")
        assert half_even(cost / Fraction(155, 6), 4) == Decimal("6.8630")
