"""Counts in JSON."""

from typing import Any

from drf_spectacular.utils import extend_schema_field
from rest_framework import serializers

from inventory.rest.fields import IdField, MomentField
from inventory.rest.quantities import QuantityField
from inventory.shop.serializers import PersonName
from inventory.stock.models import StockCount
from inventory.stock.serializers.acts import PlaceField
from inventory.stock.serializers.lots import LotMaterial, LotName
from inventory.stock.serializers.places import PlaceName

MOST_LINES = 500


class CountLineIn(serializers.Serializer[Any]):
    """What was there of one lot; 0 where nothing was."""

    lot = IdField()
    quantity = QuantityField()
    reason = serializers.CharField(max_length=200, required=False, allow_blank=True, default="")


class CountIn(serializers.Serializer[Any]):
    """What was counted at a place at a moment. Lots that are not named are left as they are."""

    place = PlaceField(required=True, default=serializers.empty)
    counted_at = MomentField()
    lines = serializers.ListField(child=CountLineIn(), min_length=1, max_length=MOST_LINES)
    reason = serializers.CharField(max_length=1000, required=False, allow_blank=True, default="")


class CountLineOut(serializers.Serializer[Any]):
    """book: what the book said at that moment. difference: counted - book. is_asserted: whether it still holds."""

    lot = LotName()
    material = LotMaterial(source="lot.material")
    counted = QuantityField(unit="lot.material.stock_unit")
    book = QuantityField(unit="lot.material.stock_unit")
    difference = QuantityField(unit="lot.material.stock_unit")
    reason = serializers.CharField()
    is_asserted = serializers.BooleanField()


class CountOut(serializers.Serializer[Any]):
    id = serializers.IntegerField()
    number = serializers.IntegerField()
    place = PlaceName()
    counted_at = serializers.DateTimeField()
    by = PersonName()
    posting = serializers.IntegerField(source="posting_id")
    is_undone = serializers.SerializerMethodField()
    undone_because = serializers.SerializerMethodField()
    lines = CountLineOut(many=True)

    def get_is_undone(self, count: StockCount) -> bool:
        return count.undone_by_id is not None

    @extend_schema_field(serializers.CharField())
    def get_undone_because(self, count: StockCount) -> str:
        return count.undone_by.reason if count.undone_by else ""
