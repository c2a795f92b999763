"""Exact decimals in the database: whole numbers of a small unit, shown as Decimal.

SQLite keeps decimals as binary floating point, so that 0.3 - 0.1 - 0.1 - 0.1 is not zero there. These fields keep
BIGINT instead, on both databases, and sums of them stay exact.
"""

from decimal import ROUND_HALF_EVEN, Decimal, InvalidOperation
from typing import Any, TypeVar

from django.core.exceptions import ValidationError
from django.db import models

BIGGEST = 2**63 - 1


_Set = TypeVar("_Set", contravariant=True)
_Get = TypeVar("_Get", covariant=True)


class FixedField(models.BigIntegerField[_Set, _Get]):
    """A Decimal with a fixed number of places, stored as a whole number of 10**-places.

    Raises ValidationError for what is not a finite number, and ValueError for a number with more places than fit:
    rounding is the caller's decision.
    """

    # What the type checker is told that an attribute takes and gives; the base class says int.
    _pyi_private_set_type: Decimal | int  # type: ignore[assignment]
    _pyi_private_get_type: Decimal  # type: ignore[assignment]
    _pyi_lookup_exact_type: Decimal | int  # type: ignore[assignment]

    def __init__(self, *args: Any, places: int = 6, **kwargs: Any) -> None:
        self.places = places
        super().__init__(*args, **kwargs)

    def deconstruct(self) -> Any:
        name, path, args, kwargs = super().deconstruct()
        return name, path, args, kwargs | {"places": self.places}

    def from_db_value(self, value: Any, expression: Any, connection: Any) -> Decimal | None:
        return None if value is None else Decimal(int(value)).scaleb(-self.places)

    def to_python(self, value: Any) -> Any:
        if value is None or isinstance(value, Decimal):
            return value
        try:
            return Decimal(str(value))
        except InvalidOperation as error:
            raise ValidationError("Give a number.", code="invalid") from error

    def get_prep_value(self, value: Any) -> Any:
        if value is None or hasattr(value, "resolve_expression"):
            return value
        return to_whole(Decimal(str(value)) if not isinstance(value, Decimal) else value, self.places)

    def get_db_prep_value(self, value: Any, connection: Any, prepared: bool = False) -> Any:
        return value if prepared else self.get_prep_value(value)

    def formfield(self, **kwargs: Any) -> Any:
        from django import forms

        return models.Field.formfield(
            self, **{"form_class": forms.DecimalField, "decimal_places": self.places, **kwargs}
        )


class QuantityField(FixedField[_Set, _Get]):
    """A quantity in the material's stock unit, to the millionth."""

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **{**kwargs, "places": 6})


class MoneyField(FixedField[_Set, _Get]):
    """Money in the shop's currency, to the ten-thousandth."""

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **{**kwargs, "places": 4})


def to_whole(value: Decimal, places: int) -> int:
    """The whole number of 10**-places that a Decimal is. Raises ValueError where it has more places.

    >>> to_whole(Decimal("1.5"), 4)
    15000
    """
    scaled = value.scaleb(places)
    whole = scaled.to_integral_value(rounding=ROUND_HALF_EVEN)
    if whole != scaled:
        raise ValueError(f"{value} has more than {places} decimal places")
    if abs(whole) > BIGGEST:
        raise ValueError(f"{value} is too large")
    return int(whole)


def to_decimal(whole: int, places: int) -> Decimal:
    """The Decimal that a whole number of 10**-places stands for.

    >>> to_decimal(15000, 4)
    Decimal('1.5000')
    """
    return Decimal(whole).scaleb(-places)
