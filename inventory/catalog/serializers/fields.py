"""Fields that several nouns of the catalogue have."""

from decimal import Decimal
from typing import Any

from rest_framework import serializers

from inventory.catalog.models import StockUnit

SMALLEST = Decimal("0.000001")
LONGEST_NAME = 120
LONGEST_NOTE = 4000
MOST_DAYS = 36_500
MOST_MINUTES = 100_000


class FigureField(serializers.DecimalField):
    """A figure of a data sheet, to six places, answered without idle zeros. Above 0 unless another bound is given."""

    def __init__(self, *, max_value: Decimal | int, min_value: Decimal | int = SMALLEST, **kwargs: Any) -> None:
        super().__init__(
            max_digits=13,
            decimal_places=6,
            min_value=Decimal(min_value),
            max_value=Decimal(max_value),
            normalize_output=True,
            coerce_to_string=True,
            **kwargs,
        )


class Whole(serializers.Serializer[Any]):
    """A member of a body that is given whole or not at all, also in a PATCH: what it needs, it needs there too."""

    def to_internal_value(self, data: Any) -> Any:
        if getattr(self.root, "partial", False) and self.root is not self:
            return type(self)(context=self.context).to_internal_value(data)
        return super().to_internal_value(data)


class TypedQuantity(serializers.Serializer[Any]):
    """A quantity as somebody typed it: an amount such as 340, 0.5 or 1/3, and a unit or one of the measures."""

    amount = serializers.CharField(source="typed_amount")
    unit = serializers.CharField(source="typed_unit")


class SupplierName(serializers.Serializer[Any]):
    id = serializers.IntegerField()
    name = serializers.CharField()


class MaterialName(serializers.Serializer[Any]):
    id = serializers.IntegerField()
    code = serializers.CharField()
    name = serializers.CharField()
    swatch = serializers.CharField(help_text="#rrggbb, or empty.")
    stock_unit = serializers.ChoiceField(StockUnit.choices)
