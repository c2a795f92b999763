"""Amounts in sentences: in the unit that the shop likes to read, rounded as a person says them."""

from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction

from inventory.calc.rounding import half_even
from inventory.calc.units import UNITS, Dimension
from inventory.shop.models import AreaUnit, MassUnit, Shop, VolumeUnit

PreferredUnits = Mapping[Dimension, str]

LABELS = {
    **{unit.value: unit.label for unit in VolumeUnit},
    **{unit.value: unit.label for unit in AreaUnit},
    MassUnit.OUNCES.value: "oz by weight",
    MassUnit.GRAMS.value: "g",
}


def preferred_units() -> PreferredUnits:
    """The units in which the shop reads volumes, masses and areas. One SQL statement."""
    shop = Shop.objects.only("volume_unit", "mass_unit", "area_unit").first() or Shop()
    return {Dimension.VOLUME: shop.volume_unit, Dimension.MASS: shop.mass_unit, Dimension.AREA: shop.area_unit}


def as_read(amount: Decimal, unit: str, preferred: PreferredUnits) -> str:
    """An amount for a sentence; what is kept and reckoned with stays exact.

    Whole from 10 on, one place from 1 on, two below; an amount too small for that says so.

    unit: a code of UNITS. preferred: unit code by dimension; others stay as they are.

    >>> as_read(Decimal("828.058828"), "ml", {Dimension.VOLUME: "fl_oz"})
    '28 fl oz'
    >>> as_read(Decimal("0.001"), "g", {})
    'less than 0.01 g'
    """
    kept = UNITS[unit]
    to = preferred.get(kept.dimension, unit)
    label = LABELS.get(to, UNITS[to].label)
    exact = Fraction(amount) * kept.factor / UNITS[to].factor
    places = 0 if abs(exact) >= 10 else 1 if abs(exact) >= 1 else 2
    rounded = half_even(exact, places)
    if exact and not rounded:
        return f"less than 0.01 {label}"
    number = f"{rounded:,f}"
    return f"{number.rstrip('0').rstrip('.') if places else number} {label}"
