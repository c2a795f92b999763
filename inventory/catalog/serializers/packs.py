from typing import Any

from rest_framework import serializers

from inventory.catalog.actions import ContentGiven
from inventory.catalog.models import Material, Supplier
from inventory.catalog.serializers.fields import (
    LONGEST_NAME,
    FigureField,
    MaterialName,
    SupplierName,
    TypedQuantity,
    Whole,
)
from inventory.rest.fields import MoneyField, RecordField
from inventory.rest.money import MoneyKeys
from inventory.rest.quantities import QuantityField

MOST_CONTENTS = 20


class PackContentIn(Whole):
    """What one pack holds of a material. cost_share_percent: of the pack's price; for all contents or for none."""

    material = RecordField(queryset=Material.objects.prefetch_related("measures"))
    quantity = QuantityField(is_above_zero=True)
    cost_share_percent = FigureField(min_value=0, max_value=100, allow_null=True, default=None)

    def validate(self, attrs: dict[str, Any]) -> Any:
        return ContentGiven(**attrs)


class PackContentOut(serializers.Serializer[Any]):
    """quantity: in the material's stock unit."""

    material = MaterialName()
    quantity = QuantityField(unit="material.stock_unit")
    as_typed = TypedQuantity(source="*")
    cost_share_percent = FigureField(min_value=0, max_value=100, allow_null=True)


class PackIn(MoneyKeys):
    """What a supplier sells under one price. Several contents make a kit."""

    money_fields = ("price",)

    supplier = RecordField(queryset=Supplier.objects.all())
    name = serializers.CharField(max_length=LONGEST_NAME)
    contents: Any = serializers.ListSerializer(child=PackContentIn(), min_length=1, max_length=MOST_CONTENTS)
    price = MoneyField(min_value=0, allow_null=True, default=None)


class PackOut(MoneyKeys):
    money_fields = ("price",)

    id = serializers.IntegerField()
    number = serializers.IntegerField(help_text="The short number to say aloud.")
    supplier = SupplierName()
    name = serializers.CharField()
    contents = PackContentOut(many=True)
    price = MoneyField(allow_null=True)
    is_archived = serializers.BooleanField()
    version = serializers.IntegerField()
