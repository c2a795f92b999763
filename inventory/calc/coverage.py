"""How much resin covers how much: spread, film and thickness, the gallons that a piece takes, waste and kits.

All of it is for a coat of 100 % solids, which keeps the volume that was poured. Areas are square feet, thicknesses
mils (thousandths of an inch) or inches, volumes US gallons or fluid ounces unless a name says metric. Values go in as
Decimal, Fraction or int, never float, and come out as exact fractions; `calc.rounding` brings them to decimals.
"""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from math import ceil

from inventory.calc.units import ML_PER_GALLON, SQM_PER_SQFT

Exact = Decimal | Fraction | int

SQFT_PER_GALLON_AT_ONE_MIL = Fraction(231 * 1000, 144)
"""231 cubic inches spread a thousandth of an inch thick: 9625/6 = 1604.1667 square feet.

Source: MIL-HDBK-1110, par. 2.1.5 (which rounds to 1600); the gallon by NIST Handbook 44, appendix C.
"""

FL_OZ_PER_GALLON = 128
MILS_PER_INCH = 1000


class WasteKind(StrEnum):
    """The two meanings of a waste percentage; which one is meant is kept beside the figure."""

    EXTRA_TO_MIX = "extra_to_mix"
    STAYS_IN_BUCKET = "stays_in_bucket"


@dataclass(frozen=True)
class Waste:
    """A waste percentage with its meaning.

    kind: `extra_to_mix`, so much is mixed on top of what the faces take; `stays_in_bucket`, so much of what is mixed
    never reaches them.
    percent: 15 for 15 %; 0 to 100 of extra, 0 to below 100 of what stays. Raises ValueError otherwise.
    """

    kind: WasteKind
    percent: Decimal

    def __post_init__(self) -> None:
        if not self.percent.is_finite() or self.percent < 0:
            raise ValueError("a waste percentage is 0 or more")
        if self.kind is WasteKind.EXTRA_TO_MIX and self.percent > 100:
            raise ValueError("at most 100 % extra can be mixed; plan a second coat instead")
        if self.kind is WasteKind.STAYS_IN_BUCKET and self.percent >= 100:
            raise ValueError("less than 100 % of a mix can stay in the bucket")


NO_WASTE = Waste(WasteKind.EXTRA_TO_MIX, Decimal(0))


def mils(thickness_in: Exact) -> Fraction:
    """A thickness in inches as mils: 1/8 in is 125."""
    return _above_zero(thickness_in, "a thickness") * MILS_PER_INCH


def sqft_per_gallon(film_mils: Exact) -> Fraction:
    """The square feet that a gallon covers at a film thickness: (9625/6) / mils.

    >>> sqft_per_gallon(mils(Fraction(1, 8)))
    Fraction(77, 6)
    """
    return SQFT_PER_GALLON_AT_ONE_MIL / _above_zero(film_mils, "a film thickness")


def film_mils(spread_fl_oz_per_sqft: Exact) -> Fraction:
    """The film in mils that a spread rate leaves: 3 fl oz per sq ft make 37.598 mil."""
    spread = _above_zero(spread_fl_oz_per_sqft, "a spread rate")
    return spread / FL_OZ_PER_GALLON * SQFT_PER_GALLON_AT_ONE_MIL


def spread_fl_oz_per_sqft(film_mils: Exact) -> Fraction:
    """The fluid ounces per square foot that a film takes: 125 mil take 768/77 = 9.9740."""
    return FL_OZ_PER_GALLON / sqft_per_gallon(film_mils)


def gallons_for(
    *, flat_sqft: Exact, flat_mils: Exact, vertical_sqft: Exact = 0, vertical_mils: Exact | None = None
) -> Fraction:
    """The mixed gallons that the faces of a piece take, before any waste: area × thickness of each.

    flat_sqft, vertical_sqft: 0 or more. flat_mils, vertical_mils: the film each keeps, above zero; an upright face
    keeps less than a flat one, since the rest runs off. vertical_mils may be left out where there is no upright face.
    Raises ValueError where a figure is out of bounds or missing.
    """
    flat = _not_below_zero(flat_sqft, "a flat area") / sqft_per_gallon(flat_mils)
    upright = _not_below_zero(vertical_sqft, "a vertical area")
    if not upright:
        return flat
    if vertical_mils is None:
        raise ValueError("vertical faces need the film that stays on them")
    return flat + upright / sqft_per_gallon(vertical_mils)


def to_mix(amount: Exact, waste: Waste = NO_WASTE) -> Fraction:
    """What must be mixed so that `amount` reaches the faces, in the unit of `amount`.

    Extra to mix: amount × (1 + p). Stays in the bucket: amount ÷ (1 − p).

    >>> to_mix(85, Waste(WasteKind.STAYS_IN_BUCKET, Decimal(15)))
    Fraction(100, 1)
    """
    needed = _not_below_zero(amount, "an amount")
    share = Fraction(waste.percent) / 100
    return needed * (1 + share) if waste.kind is WasteKind.EXTRA_TO_MIX else needed / (1 - share)


def kits_needed(amount: Exact, *, kit_size: Exact) -> int:
    """How many whole kits hold an amount; both in one unit, the kit above zero."""
    return ceil(_not_below_zero(amount, "an amount") / _above_zero(kit_size, "a kit's size"))


def sqm_per_litre(film_microns: Exact) -> Fraction:
    """The square metres that a litre covers at a film thickness: 1000 / µm; 10 at 100 µm."""
    return 1000 / _above_zero(film_microns, "a film thickness")


def film_microns(spread_litres_per_sqm: Exact) -> Fraction:
    """The film in micrometres that a metric spread rate leaves: 1 L per m² makes 1000 µm."""
    return _above_zero(spread_litres_per_sqm, "a spread rate") * 1000


def sqft_per_gallon_from_metric(sqm_per_litre: Exact) -> Fraction:
    """A metric coverage in US units: 1 m²/L is 40.745833 sq ft per gallon."""
    return _above_zero(sqm_per_litre, "a coverage") * ML_PER_GALLON / 1000 / SQM_PER_SQFT


def _above_zero(figure: Exact, what: str) -> Fraction:
    exact = _not_below_zero(figure, what)
    if not exact:
        raise ValueError(f"{what} must be above zero")
    return exact


def _not_below_zero(figure: Exact, what: str) -> Fraction:
    if isinstance(figure, Decimal) and not figure.is_finite():
        raise ValueError(f"{what} must be a number")
    exact = Fraction(figure)
    if exact < 0:
        raise ValueError(f"{what} cannot be below zero")
    return exact
