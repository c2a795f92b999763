"""A quantity in a body and in an answer."""

import re
from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from typing import Any

from drf_spectacular.extensions import OpenApiSerializerFieldExtension
from rest_framework import serializers
from rest_framework.fields import get_attribute

from inventory.calc.quantities import (
    AmbiguousUnit,
    QuantityError,
    Typed,
    UnitMismatch,
    parse_quantity,
    read_quantity,
)
from inventory.rest.pointers import one_of

PLACES = Decimal("0.000001")
LONGEST_MEASURE = 40
WORDS_BEHIND_AMOUNT = re.compile(r"[^\d¼-¾⅐-⅞]+$")


class QuantityField(serializers.Field[Typed, Any, dict[str, str], Any]):
    """Takes `{"amount": "32", "unit": "fl_oz"}` or `"32 fl oz"` and gives a `Typed`; answers the first form.

    The unit may be the name of a measure that only the material knows ("2 pumps"): then `Typed.unit` holds the words,
    and the conversion, which has the material, takes or refuses them.

    unit: for answers, the dotted path from the object to the unit's code, "material.stock_unit"; without it the value
    itself has `amount` and `unit`.
    is_above_zero: whether nothing at all is refused.
    """

    default_error_messages = {
        "invalid": 'Give a quantity such as {{"amount": "32", "unit": "fl_oz"}} or "32 fl oz".',
        "zero": "Give more than nothing.",
    }

    def __init__(self, *, unit: str | None = None, is_above_zero: bool = False, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self.unit = unit
        self.is_above_zero = is_above_zero

    def to_internal_value(self, data: Any) -> Typed:
        try:
            typed = self.understand(data)
        except AmbiguousUnit as error:
            raise serializers.ValidationError(str(error), code=one_of(error.choices)) from error
        except QuantityError as error:
            raise serializers.ValidationError(str(error), code="invalid") from error
        if self.is_above_zero and typed.amount == 0:
            self.fail("zero")
        return typed

    def understand(self, data: Any) -> Typed:
        if isinstance(data, str):
            words = WORDS_BEHIND_AMOUNT.search(data)
            return with_any_measure(words.group() if words else "", lambda known: parse_quantity(data, measures=known))
        if not isinstance(data, Mapping) or not {"amount", "unit"} <= set(data):
            self.fail("invalid")
        unknown = sorted(set(data) - {"amount", "unit"})
        if unknown:
            raise QuantityError(f"A quantity has an amount and a unit, not {', '.join(map(str, unknown))}.")
        amount, unit = data["amount"], data["unit"]
        return with_any_measure(unit, lambda known: read_quantity(amount, unit, measures=known))

    def get_attribute(self, instance: Any) -> Any:
        value = super().get_attribute(instance)
        if self.unit is None or value is None or hasattr(value, "amount"):
            return value
        return value, get_attribute(instance, self.unit.split("."))

    def to_representation(self, value: Any) -> dict[str, str]:
        amount, unit = value if isinstance(value, tuple) else (value.amount, value.unit)
        return quantity_json(amount, unit)


def with_any_measure(words: Any, read: Any) -> Typed:
    """Read with the known units; if only a measure is missing, take the words for one."""
    try:
        typed: Typed = read({})
    except UnitMismatch:
        name = words.strip() if isinstance(words, str) else ""
        if not name or len(name) > LONGEST_MEASURE:
            raise
        typed = read({name: Typed(Fraction(1), "each")})
    return typed


def quantity_json(amount: Decimal | Fraction, unit: str) -> dict[str, str]:
    """A quantity as answers give it, without idle zeros, to the millionth.

    >>> quantity_json(Decimal("1.500000"), "ml")
    {'amount': '1.5', 'unit': 'ml'}
    """
    number = amount if isinstance(amount, Decimal) else Decimal(amount.numerator) / Decimal(amount.denominator)
    return {"amount": plain(number.quantize(PLACES)), "unit": unit}


def plain(number: Decimal) -> str:
    """A Decimal without exponent or idle zeros.

    >>> plain(Decimal("1200.50")), plain(Decimal("0E-6"))
    ('1200.5', '0')
    """
    text = format(number, "f")
    return text.rstrip("0").rstrip(".") if "." in text else text


class QuantityFieldSchema(OpenApiSerializerFieldExtension):  # type: ignore[no-untyped-call]
    """Structured in answers, either form in bodies."""

    target_class = "inventory.rest.quantities.QuantityField"
    match_subclasses = True

    def map_serializer_field(self, auto_schema: Any, direction: str) -> dict[str, Any]:
        structured = {
            "type": "object",
            "properties": {
                "amount": {"type": "string", "format": "decimal", "examples": ["32"]},
                "unit": {"type": "string", "examples": ["fl_oz"]},
            },
            "required": ["amount", "unit"],
            "additionalProperties": False,
        }
        if direction == "response":
            return structured
        spoken = {"type": "string", "examples": ["32 fl oz", "1 1/2 cups", "0.5 gal"]}
        return {"oneOf": [structured, spoken]}
