"""What is answered of a pour."""

from decimal import Decimal
from typing import Any

from drf_spectacular.utils import extend_schema_field
from rest_framework import serializers

from inventory.pours.models import Layer, Pour, PourStatus, Provenance
from inventory.pours.proposal import propose
from inventory.pours.queries import acts, same_pours, usages
from inventory.rest.fields import MoneyField
from inventory.rest.money import MoneyKeys
from inventory.rest.quantities import QuantityField
from inventory.shop.serializers import PersonName
from inventory.stock.models import LotStatus


class PouredPiece(serializers.Serializer[Any]):
    """A top under the pour. share_percent: its typed share of the cost; null where the cost goes by area."""

    piece = serializers.IntegerField(source="piece_id")
    number = serializers.IntegerField(source="piece.number")
    name = serializers.CharField(source="piece.name")
    area_sqft = serializers.DecimalField(source="piece.area_sqft", max_digits=16, decimal_places=6)
    is_scrapped = serializers.BooleanField(source="piece.is_scrapped")
    share_percent = serializers.DecimalField(max_digits=9, decimal_places=6, allow_null=True)
    job = serializers.IntegerField(source="piece.job_id")
    job_number = serializers.IntegerField(source="piece.job.number")
    job_title = serializers.CharField(source="piece.job.title")
    customer_name = serializers.CharField(source="piece.job.customer.name")


class AmountOut(serializers.Serializer[Any]):
    """An amount of a material. quantity: in its stock unit; typed_amount, typed_unit: as it was said."""

    position = serializers.IntegerField()
    material = serializers.IntegerField(source="material_id")
    material_name = serializers.CharField(source="material.name")
    material_code = serializers.CharField(source="material.code")
    material_kind = serializers.CharField(source="material.kind")
    quantity = QuantityField(unit="material.stock_unit")
    typed_amount = serializers.CharField()
    typed_unit = serializers.CharField()
    weighed_before = serializers.CharField()
    weighed_after = serializers.CharField()
    bucket = serializers.IntegerField(allow_null=True)
    is_waste = serializers.BooleanField()
    reason = serializers.CharField()
    provenance = serializers.ChoiceField(choices=Provenance.choices)
    lot_provenance = serializers.ChoiceField(choices=Provenance.choices)


class PlannedOut(AmountOut):
    """What was planned. lot: null where the tool is to choose."""

    lot = serializers.IntegerField(source="lot_id", allow_null=True)
    number = serializers.IntegerField(source="lot.number", allow_null=True, default=None)
    lot_number = serializers.CharField(source="lot.lot_number", allow_null=True, default=None)
    place = serializers.IntegerField(source="place_id", allow_null=True)


class UsageOut(AmountOut, MoneyKeys):
    """What went in, one row for each lot. number: the lot's short one. lot_status, was_expired: as it stood then."""

    money_fields = ("value",)

    id = serializers.IntegerField()
    lot = serializers.IntegerField(source="lot_id")
    number = serializers.IntegerField(source="lot.number")
    lot_number = serializers.CharField(source="lot.lot_number")
    place = serializers.IntegerField(source="place_id")
    place_name = serializers.CharField(source="place.name")
    movement = serializers.IntegerField(source="movement_id")
    value = MoneyField()
    density_g_per_ml = serializers.DecimalField(max_digits=16, decimal_places=6, allow_null=True)
    grams_per_tsp = serializers.DecimalField(max_digits=16, decimal_places=6, allow_null=True)
    lot_status = serializers.ChoiceField(choices=LotStatus.choices)
    was_expired = serializers.BooleanField()
    given_by = serializers.IntegerField(source="given_by_id", allow_null=True)


class PourRow(serializers.Serializer[Any]):
    """A pour in a list. by: who put it down."""

    id = serializers.IntegerField()
    uuid = serializers.UUIDField()
    number = serializers.IntegerField()
    status = serializers.ChoiceField(choices=PourStatus.choices)
    layer = serializers.ChoiceField(choices=Layer.choices)
    is_redo = serializers.BooleanField()
    place = serializers.IntegerField(source="place_id")
    place_name = serializers.CharField(source="place.name")
    planned_for = serializers.DateTimeField(allow_null=True)
    poured_at = serializers.DateTimeField(allow_null=True)
    people = PersonName(many=True)
    pieces = PouredPiece(many=True, source="shown_pieces")
    note = serializers.CharField()
    needs_owner_reason = serializers.BooleanField()


class Remark(serializers.Serializer[Any]):
    """One thing that was seen or done, and how it is known."""

    value = serializers.JSONField()
    unit = serializers.CharField(required=False)
    provenance = serializers.ChoiceField(choices=Provenance.choices)


class PourOut(PourRow, MoneyKeys):
    """A pour: planned beside used. cost: the money of all that went in, waste included."""

    money_fields = ("cost",)

    conditions = serializers.DictField(child=Remark())
    ticks = serializers.DictField(child=Remark())
    reason = serializers.CharField()
    owner_reason = serializers.CharField()
    planned = PlannedOut(many=True, source="shown_planned")
    usages = UsageOut(many=True, source="shown_usages")
    cost = serializers.SerializerMethodField()

    @extend_schema_field(MoneyField())
    def get_cost(self, pour: Pour) -> str:
        return f"{sum((usage.value for usage in pour.shown_usages), Decimal(0)):.4f}"


class SamePour(serializers.Serializer[Any]):
    """A pour that may be the very same, put down by somebody else."""

    id = serializers.IntegerField()
    number = serializers.IntegerField()
    status = serializers.ChoiceField(choices=PourStatus.choices)
    by = PersonName()
    planned_for = serializers.DateTimeField(allow_null=True)
    poured_at = serializers.DateTimeField(allow_null=True)


class QuantityOut(serializers.Serializer[Any]):
    amount = serializers.CharField()
    unit = serializers.CharField()


class ShortageOut(serializers.Serializer[Any]):
    """What an amount lacks. lot: where one was named."""

    material = serializers.IntegerField()
    name = serializers.CharField()
    lot = serializers.IntegerField(allow_null=True)
    wanted = QuantityOut()
    there = QuantityOut()
    missing = QuantityOut()


class ProposedOut(serializers.Serializer[Any]):
    """A lot that would be taken from."""

    position = serializers.IntegerField()
    material = serializers.IntegerField()
    material_name = serializers.CharField()
    lot = serializers.IntegerField()
    number = serializers.IntegerField()
    lot_number = serializers.CharField()
    use_by = serializers.DateField(allow_null=True)
    place = serializers.IntegerField()
    quantity = QuantityField(unit="unit")
    lot_status = serializers.ChoiceField(choices=LotStatus.choices)
    was_expired = serializers.BooleanField()


class ProposalOut(serializers.Serializer[Any]):
    """What completing it as planned would take, and what it lacks. problem: why a named lot cannot go in, or empty."""

    takings = ProposedOut(many=True)
    shortages = ShortageOut(many=True)
    problem = serializers.CharField()


class ActOut(serializers.Serializer[Any]):
    """Something that was booked for the pour. what: completed, added, corrected, undone or cost_changed."""

    posting = serializers.IntegerField(source="posting.pk")
    uuid = serializers.UUIDField(source="posting.uuid")
    what = serializers.ChoiceField(choices=["completed", "added", "corrected", "undone", "cost_changed"])
    reason = serializers.CharField(source="posting.reason")
    by = PersonName(source="posting.by")
    recorded_at = serializers.DateTimeField(source="posting.recorded_at")


class PourDetail(PourOut):
    """A pour with all that belongs to it. proposal: of a planned one, else null. taken_back: what was undone."""

    proposal = serializers.SerializerMethodField()
    acts = serializers.SerializerMethodField()
    taken_back = serializers.SerializerMethodField()
    same_pour_as = serializers.SerializerMethodField()

    @extend_schema_field(ProposalOut(allow_null=True))
    def get_proposal(self, pour: Pour) -> Any:
        if pour.status != PourStatus.PLANNED:
            return None
        return ProposalOut(propose(pour), context=self.context).data

    @extend_schema_field(ActOut(many=True))
    def get_acts(self, pour: Pour) -> Any:
        return ActOut(acts(pour), many=True, context=self.context).data

    @extend_schema_field(UsageOut(many=True))
    def get_taken_back(self, pour: Pour) -> Any:
        rows = usages().filter(pour=pour, is_taken_back=True)
        return UsageOut(rows, many=True, context=self.context).data

    @extend_schema_field(SamePour(many=True))
    def get_same_pour_as(self, pour: Pour) -> Any:
        return SamePour(same_pours(pour), many=True, context=self.context).data
