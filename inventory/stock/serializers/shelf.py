"""What the shelf holds of each material, in JSON."""

from typing import Any

from rest_framework import serializers

from inventory.rest.fields import MoneyField
from inventory.rest.money import MoneyKeys
from inventory.rest.quantities import QuantityField
from inventory.stock.queries import StockFigures
from inventory.stock.serializers.lots import LotMaterial


class ShelfRow(MoneyKeys):
    """usable: in lots that are OK and not past their use-by today. available: usable - reserved, below zero where plans
    exceed it. lots: how many have something left. is_provisional: a price is to follow for some of it."""

    money_fields = ("value",)

    material = LotMaterial()
    on_hand = QuantityField(unit="material.stock_unit")
    usable = QuantityField(unit="material.stock_unit")
    reserved = QuantityField(unit="material.stock_unit")
    available = QuantityField(unit="material.stock_unit")
    value = MoneyField()
    lots = serializers.IntegerField()
    next_use_by = serializers.DateField(allow_null=True)
    is_provisional = serializers.BooleanField()

    def to_representation(self, instance: Any) -> dict[str, Any]:
        figures: StockFigures = instance.figures
        row: dict[str, Any] = {"material": instance, "available": figures.available}
        keys = ("on_hand", "usable", "reserved", "value", "lots", "next_use_by", "is_provisional")
        row |= {key: getattr(figures, key) for key in keys}
        return super().to_representation(row)
