"""The units in which a shop buys, keeps and measures, with their exact sizes.

The sizes are definitions, so they are written down as fractions of the base unit of their dimension (millilitre, gram,
foot, square foot, one); `tests/published/test_units.py` holds each against NIST and against pint. Volumes are US
customary or metric; `oz` is always a weight and `fl_oz` always a volume.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from types import MappingProxyType


class Dimension(StrEnum):
    """What a unit measures."""

    VOLUME = "volume"
    MASS = "mass"
    LENGTH = "length"
    AREA = "area"
    COUNT = "count"


@dataclass(frozen=True)
class Unit:
    """A unit of measure.

    code: how the API names it, `fl_oz`.
    name: in words, singular, `fluid ounce`.
    dimension: units of one dimension convert without knowing the material.
    factor: how many base units (mL, g, ft, sq ft, one) it equals, exactly.
    label: how it is written behind an amount, `fl oz`; reads back as this very unit.
    plural: the label behind more than one, where it differs, `cups`.
    spoken: other ways of writing it, lower case, single spaces, no full stops.
    """

    code: str
    name: str
    dimension: Dimension
    factor: Fraction
    label: str
    spoken: tuple[str, ...] = ()
    plural: str = ""


# NIST Handbook 44, appendix C: a US gallon is 231 cubic inches, an inch 25.4 mm, a pound 453.59237 g, all exactly.
ML_PER_GALLON = Fraction("3785.411784")
GRAMS_PER_POUND = Fraction("453.59237")
MM_PER_FOOT = Fraction("304.8")
SQM_PER_SQFT = (MM_PER_FOOT / 1000) ** 2
ML_PER_TEASPOON = ML_PER_GALLON / 768

_ALL = (
    Unit(
        "ml",
        "millilitre",
        Dimension.VOLUME,
        Fraction(1),
        "ml",
        ("milliliter", "millilitres", "milliliters", "mls", "cc"),
    ),
    Unit("l", "litre", Dimension.VOLUME, Fraction(1000), "l", ("litres", "liter", "liters", "ltr")),
    Unit("tsp", "teaspoon", Dimension.VOLUME, ML_PER_TEASPOON, "tsp", ("tsps", "teaspoons")),
    Unit("tbsp", "tablespoon", Dimension.VOLUME, ML_PER_GALLON / 256, "tbsp", ("tbsps", "tablespoons", "tbs")),
    Unit(
        "fl_oz",
        "fluid ounce",
        Dimension.VOLUME,
        ML_PER_GALLON / 128,
        "fl oz",
        ("floz", "fl ozs", "fl ounce", "fl ounces", "fluid oz", "fluid ounces", "oz fl"),
    ),
    Unit("cup", "cup", Dimension.VOLUME, ML_PER_GALLON / 16, "cup", plural="cups"),
    Unit("pt", "pint", Dimension.VOLUME, ML_PER_GALLON / 8, "pt", ("pts", "pints")),
    Unit("qt", "quart", Dimension.VOLUME, ML_PER_GALLON / 4, "qt", ("qts", "quarts")),
    Unit("gal", "gallon", Dimension.VOLUME, ML_PER_GALLON, "gal", ("gals", "gallons")),
    Unit("g", "gram", Dimension.MASS, Fraction(1), "g", ("grams", "gramme", "grammes", "gm", "gms")),
    Unit("kg", "kilogram", Dimension.MASS, Fraction(1000), "kg", ("kgs", "kilograms", "kilo", "kilos")),
    Unit(
        "oz",
        "ounce by weight",
        Dimension.MASS,
        GRAMS_PER_POUND / 16,
        "oz by weight",
        ("ounces by weight", "oz wt", "wt oz", "oz weight", "oz av", "oz avdp"),
    ),
    Unit("lb", "pound", Dimension.MASS, GRAMS_PER_POUND, "lb", ("lbs", "pounds")),
    Unit("mm", "millimetre", Dimension.LENGTH, 1 / MM_PER_FOOT, "mm", ("millimetres", "millimeter", "millimeters")),
    Unit("cm", "centimetre", Dimension.LENGTH, 10 / MM_PER_FOOT, "cm", ("centimetres", "centimeter", "centimeters")),
    Unit("m", "metre", Dimension.LENGTH, 1000 / MM_PER_FOOT, "m", ("metres", "meter", "meters")),
    Unit("in", "inch", Dimension.LENGTH, Fraction(1, 12), "in", ("ins", "inches", '"', "″")),
    Unit("ft", "foot", Dimension.LENGTH, Fraction(1), "ft", ("feet", "lin ft", "linear ft", "linear feet", "'", "′")),
    Unit("yd", "yard", Dimension.LENGTH, Fraction(3), "yd", ("yds", "yards")),
    Unit(
        "sqft",
        "square foot",
        Dimension.AREA,
        Fraction(1),
        "sq ft",
        ("square feet", "square ft", "ft2", "ft²", "ft^2", "sf"),
    ),
    Unit(
        "sqm",
        "square metre",
        Dimension.AREA,
        1 / SQM_PER_SQFT,
        "sq m",
        ("square metres", "square meter", "square meters", "m2", "m²", "m^2"),
    ),
    Unit("each", "each", Dimension.COUNT, Fraction(1), "each", ("ea", "pc", "pcs", "unit", "units")),
)

UNITS: Mapping[str, Unit] = MappingProxyType({unit.code: unit for unit in _ALL})
"""Every unit by its code."""

SPOKEN: Mapping[str, str] = MappingProxyType(
    {
        way: unit.code
        for unit in _ALL
        for way in (unit.code.replace("_", " "), unit.name, unit.label, unit.plural, *unit.spoken)
        if way not in ("", "oz")
    }
)
"""From each way of writing a unit to its code. A bare `oz` is not among them: said aloud it may be either ounce."""

AMBIGUOUS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    dict.fromkeys(("oz", "ozs", "ounce", "ounces"), ("fl_oz", "oz"))
)
"""Words that mean more than one unit, with the codes that they may mean."""

STOCK_UNITS: tuple[str, ...] = ("ml", "fl_oz", "g", "oz", "each", "mm", "cm", "m", "in", "ft", "yd", "sqft", "sqm")
"""The units in which a material may be kept.

Stock within 0.001 of its unit counts as the same, so a unit is fit for keeping only where a thousandth of it is less
than anybody weighs or measures: a gallon, litre, pound or kilogram is not (a gram of powder would vanish).
"""
