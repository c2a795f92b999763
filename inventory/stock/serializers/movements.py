"""The ledger in JSON: in and out."""

from typing import Any

from rest_framework import serializers

from inventory.rest.fields import MoneyField
from inventory.rest.money import MoneyKeys
from inventory.rest.quantities import QuantityField
from inventory.shop.serializers import PersonName
from inventory.stock.models import Kind
from inventory.stock.serializers.lots import LotMaterial, LotName
from inventory.stock.serializers.places import PlaceName


class LineOut(MoneyKeys):
    """One line: signed quantity, signed money. corrects: the line that it takes back or changes. into_lot: the lot that
    this went into. cause: the id of the pour, where one made it happen."""

    money_fields = ("value",)

    id = serializers.IntegerField()
    kind = serializers.ChoiceField(Kind.choices)
    lot = LotName()
    material = LotMaterial()
    place = PlaceName()
    quantity = QuantityField(unit="material.stock_unit")
    value = MoneyField()
    happened_at = serializers.DateTimeField()
    happened_on = serializers.DateField()
    corrects = serializers.IntegerField(source="corrects_id", allow_null=True)
    into_lot = serializers.IntegerField(source="into_lot_id", allow_null=True)
    cause = serializers.IntegerField(allow_null=True)


class MovementOut(LineOut):
    """A line with the act that it belongs to. posting: its id. posting_kind: `reversed` where it undoes another."""

    posting = serializers.IntegerField(source="posting_id")
    posting_kind = serializers.ChoiceField(Kind.choices, source="posting.kind")
    reason = serializers.CharField(source="posting.reason")
    recorded_at = serializers.DateTimeField(source="posting.recorded_at")
    by = PersonName(source="posting.by")


class PostingOut(serializers.Serializer[Any]):
    """One act of the shop with its lines."""

    id = serializers.IntegerField()
    uuid = serializers.UUIDField()
    kind = serializers.ChoiceField(Kind.choices)
    reason = serializers.CharField()
    by = PersonName()
    recorded_at = serializers.DateTimeField()
    charged_on = serializers.DateField(allow_null=True)
    movements = LineOut(many=True)
