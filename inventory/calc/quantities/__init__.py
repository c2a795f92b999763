"""Quantities as people say them, and as the stock keeps them.

`parse_quantity` reads what a person typed, `read_quantity` what a program sent, `convert` brings either to a material's
stock unit, `format_quantity` writes it back. Everything in between is an exact fraction; a decimal of six places
comes out at the end only.
"""

from inventory.calc.quantities.conversion import convert, convert_exactly, weighed
from inventory.calc.quantities.measures import Measures, check_measure, check_measures
from inventory.calc.quantities.spoken import ShareLeft, parse_quantity, parse_share_left, read_quantity
from inventory.calc.quantities.typed import (
    MAX_QUANTITY,
    AmbiguousUnit,
    QuantityError,
    Typed,
    UnitMismatch,
    format_quantity,
)

__all__ = [
    "MAX_QUANTITY",
    "AmbiguousUnit",
    "Measures",
    "QuantityError",
    "ShareLeft",
    "Typed",
    "UnitMismatch",
    "check_measure",
    "check_measures",
    "convert",
    "convert_exactly",
    "format_quantity",
    "parse_quantity",
    "parse_share_left",
    "read_quantity",
    "weighed",
]
