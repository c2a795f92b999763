"""The sizes of the units against NIST and against a general-purpose units library."""

from decimal import Decimal
from fractions import Fraction

import pint
import pytest

from inventory.calc.quantities import Typed, convert, convert_exactly
from inventory.calc.units import STOCK_UNITS, UNITS, Dimension

# NIST Handbook 44, appendix C (US customary volumes, weights, lengths); NIST SP 811, appendix B (square foot, thou).
NIST = [
    ("gal", "ml", "3785.411784"),
    ("qt", "ml", "946.352946"),
    ("pt", "ml", "473.176473"),
    ("cup", "ml", "236.5882365"),
    ("fl_oz", "ml", "29.5735295625"),
    ("tbsp", "ml", "14.78676478125"),
    ("tsp", "ml", "4.92892159375"),
    ("l", "ml", "1000"),
    ("lb", "g", "453.59237"),
    ("oz", "g", "28.349523125"),
    ("kg", "g", "1000"),
    ("in", "mm", "25.4"),
    ("ft", "in", "12"),
    ("yd", "in", "36"),
    ("m", "cm", "100"),
    ("cm", "mm", "10"),
    ("sqft", "sqm", "0.09290304"),
]

# The same units by the names that pint gives them.
IN_PINT = {
    "ml": "milliliter",
    "l": "liter",
    "tsp": "teaspoon",
    "tbsp": "tablespoon",
    "fl_oz": "fluid_ounce",
    "cup": "cup",
    "pt": "pint",
    "qt": "quart",
    "gal": "gallon",
    "g": "gram",
    "kg": "kilogram",
    "oz": "ounce",
    "lb": "pound",
    "mm": "millimeter",
    "cm": "centimeter",
    "m": "meter",
    "in": "inch",
    "ft": "foot",
    "yd": "yard",
    "sqft": "foot ** 2",
    "sqm": "meter ** 2",
}
BASES = {
    Dimension.VOLUME: "milliliter",
    Dimension.MASS: "gram",
    Dimension.LENGTH: "foot",
    Dimension.AREA: "foot ** 2",
}


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry:
    return pint.UnitRegistry(non_int_type=Fraction)


@pytest.mark.parametrize(("code", "to", "value"), NIST)
def test_a_unit_has_the_exact_size_that_nist_gives_it(code: str, to: str, value: str) -> None:
    assert convert_exactly(Typed(Fraction(1), code), to=to) == Fraction(value)


def test_a_gallon_is_231_cubic_inches() -> None:
    # NIST Handbook 44, appendix C: 231 cubic inches; an inch is 2.54 cm and a millilitre a cubic centimetre.
    assert UNITS["gal"].factor == 231 * Fraction("2.54") ** 3


@pytest.mark.parametrize("code", UNITS)
def test_a_unit_agrees_with_the_units_library_to_the_last_digit(code: str, registry: pint.UnitRegistry) -> None:
    unit = UNITS[code]
    if unit.dimension is Dimension.COUNT:
        assert unit.factor == 1
        return
    size = registry.Quantity(Fraction(1), IN_PINT[code]).to(BASES[unit.dimension])
    assert unit.factor == size.magnitude


def test_a_bare_ounce_is_a_weight_in_the_units_library_as_in_the_structured_form(registry: pint.UnitRegistry) -> None:
    assert registry.Quantity(Fraction(1), "oz").to("gram").magnitude == UNITS["oz"].factor


def test_stock_units_cover_every_dimension_and_leave_out_what_is_too_coarse_to_keep() -> None:
    assert {UNITS[code].dimension for code in STOCK_UNITS} == set(Dimension)
    assert not {"gal", "l", "lb", "kg"} & set(STOCK_UNITS)


# NIST definitions with the densities of the mixing table: 1 gal mixed at 2:1 by volume, parts of 1.13 and 0.96 g/mL.
def test_a_gallon_mixed_two_to_one_weighs_what_its_densities_say() -> None:
    part_a = Typed(Fraction(2, 3), "gal")
    part_b = Typed(Fraction(1, 3), "gal")

    assert convert(part_a, to="ml") == Decimal("2523.607856")
    assert convert(part_b, to="ml") == Decimal("1261.803928")
    assert round(convert(part_a, to="g", density_g_per_ml=Decimal("1.13")), 2) == Decimal("2851.68")
    assert round(convert(part_b, to="g", density_g_per_ml=Decimal("0.96")), 2) == Decimal("1211.33")
