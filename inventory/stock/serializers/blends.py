"""House mixes in JSON."""

from typing import Any

from drf_spectacular.utils import extend_schema_field
from rest_framework import serializers

from inventory.catalog.models import Material
from inventory.rest.fields import IdField, MomentField, RecordField
from inventory.rest.quantities import QuantityField, quantity_json
from inventory.shop.serializers import PersonName
from inventory.stock.models import Blend
from inventory.stock.serializers.acts import PlaceField, ReasonField, quantity_or_all
from inventory.stock.serializers.lots import LONGEST_NUMBER, LotMaterial, LotName, LotOut
from inventory.stock.serializers.places import PlaceName

MOST_INPUTS = 40


class BlendInputIn(serializers.Serializer[Any]):
    """A quantity of a lot, or all that is left of it there. place: where it lies, if not where the mix is made."""

    lot = IdField()
    quantity = QuantityField(required=False, is_above_zero=True)
    all = serializers.BooleanField(required=False)
    place = PlaceField(allow_null=True)

    def validate(self, attrs: dict[str, Any]) -> dict[str, Any]:
        return quantity_or_all(attrs)


class BlendIn(serializers.Serializer[Any]):
    """What was mixed into what. quantity: what it made; the sum of the inputs, where all are kept by the same unit.

    reason: the owner's, where an input is expired, on hold or rejected.
    """

    material = RecordField(queryset=Material.objects.prefetch_related("measures"))
    lot_number = serializers.CharField(max_length=LONGEST_NUMBER, required=False, allow_null=True, default=None)
    made_at = MomentField(required=False, allow_null=True, default=None)
    quantity = QuantityField(required=False, is_above_zero=True)
    inputs = serializers.ListField(child=BlendInputIn(), min_length=1, max_length=MOST_INPUTS)
    place = PlaceField(allow_null=True)
    reason = ReasonField(required=False, allow_blank=True, default="")


class WentInOut(serializers.Serializer[Any]):
    """quantity: above zero, in the lot's own unit."""

    lot = LotName()
    material = LotMaterial()
    place = PlaceName()
    quantity = serializers.SerializerMethodField()

    @extend_schema_field(QuantityField())
    def get_quantity(self, line: Any) -> Any:
        return quantity_json(-line.quantity, line.material.stock_unit)


class BlendOut(serializers.Serializer[Any]):
    id = serializers.IntegerField()
    number = serializers.IntegerField()
    lot = LotOut()
    made_at = serializers.DateTimeField()
    by = PersonName()
    posting = serializers.IntegerField(source="posting_id")
    inputs = WentInOut(many=True, source="posting.went_in")
    is_undone = serializers.SerializerMethodField()

    def get_is_undone(self, blend: Blend) -> bool:
        return blend.undone_by_id is not None
