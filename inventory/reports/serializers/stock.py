"""Reports about the shelf in JSON: reorder and mixable, expiring, value, mass balance."""

from typing import Any

from rest_framework import serializers

from inventory.catalog.models import Material
from inventory.reports.queries.expiring import USUAL_DAYS
from inventory.reports.queries.mass_balance import FIGURES
from inventory.reports.serializers.fields import MoneySum, OrderedQuery, PlainNumber, ReportedLot, ReportedMaterial
from inventory.rest.fields import DayField, PeriodQuery, RecordField
from inventory.rest.quantities import QuantityField
from inventory.stock.models import Lot

LONGEST_LOOK_AHEAD = 3660


class WhyOut(serializers.Serializer[Any]):
    """How a reorder point came about, per shop day and in the material's stock unit."""

    mean = PlainNumber()
    sd = PlainNumber()
    days = serializers.IntegerField()
    first_received_on = serializers.DateField(allow_null=True)
    lead_time_days = serializers.IntegerField()
    service_level = PlainNumber()
    z = PlainNumber()
    use_during_lead_time = PlainNumber()
    sd_during_lead_time = PlainNumber()
    in_words = serializers.CharField()


class PacksToBuyOut(serializers.Serializer[Any]):
    pack = serializers.IntegerField()
    name = serializers.CharField()
    count = serializers.IntegerField()
    price = MoneySum(allow_null=True)


class MainSupplierName(serializers.Serializer[Any]):
    """is_named: the shop named it as the main one; else it delivered last."""

    id = serializers.IntegerField(source="supplier")
    name = serializers.CharField()
    is_named = serializers.BooleanField()


class ReorderMaterial(serializers.Serializer[Any]):
    id = serializers.IntegerField(source="material")
    code = serializers.CharField()
    name = serializers.CharField()
    kind = serializers.CharField()


class ReorderRowOut(serializers.Serializer[Any]):
    """Where a material stands. reason: why there is no reorder point, or no pack.

    movements: the lines that sum to on_hand. usage_movements: those whose quantities are the use of the window.
    """

    material = ReorderMaterial(source="*")
    supplier = MainSupplierName(allow_null=True)
    on_hand = QuantityField(unit="unit")
    usable = QuantityField(unit="unit")
    reserved = QuantityField(unit="unit")
    available = QuantityField(unit="unit")
    on_order = QuantityField(unit="unit")
    position = QuantityField(unit="unit")
    daily_usage = QuantityField(unit="unit")
    lead_time_days = serializers.IntegerField(allow_null=True)
    safety_stock = QuantityField(unit="unit", allow_null=True)
    reorder_point = QuantityField(unit="unit", allow_null=True)
    is_below = serializers.BooleanField()
    missing = QuantityField(unit="unit")
    runs_out_on = serializers.DateField(allow_null=True)
    suggested_quantity = QuantityField(unit="unit")
    packs = PacksToBuyOut(many=True)
    why = WhyOut(allow_null=True)
    reason = serializers.CharField(allow_null=True)
    movements = serializers.CharField()
    usage_movements = serializers.CharField()


class SupplierOrderOut(serializers.Serializer[Any]):
    """All that is suggested from one supplier, each pack once."""

    supplier = serializers.IntegerField()
    name = serializers.CharField()
    packs = PacksToBuyOut(many=True)


class SystemPartOut(serializers.Serializer[Any]):
    role = serializers.CharField()
    material = serializers.IntegerField()
    name = serializers.CharField()
    usable = QuantityField(unit="unit")
    stranded = QuantityField(unit="unit", allow_null=True)


class SystemName(serializers.Serializer[Any]):
    id = serializers.IntegerField(source="system")
    name = serializers.CharField()


class MixableOut(serializers.Serializer[Any]):
    """mixable: in ratio, from what is usable. stranded: what is left of each part when another runs out."""

    resin_system = SystemName(source="*")
    mixable = QuantityField(unit="unit", allow_null=True)
    stranded = SystemPartOut(source="parts", many=True)
    runs_out_first = serializers.ListField(child=serializers.CharField())
    reason = serializers.CharField(allow_null=True)


class ReorderOut(serializers.Serializer[Any]):
    on = serializers.DateField()
    service_level = PlainNumber()
    window_days = serializers.IntegerField()
    rows = ReorderRowOut(many=True)
    orders = SupplierOrderOut(many=True)
    systems = MixableOut(many=True)


class ExpiringQuery(OrderedQuery):
    days = serializers.IntegerField(
        min_value=0, max_value=LONGEST_LOOK_AHEAD, default=USUAL_DAYS, help_text="How many days ahead to look."
    )


class AtPlaceOut(serializers.Serializer[Any]):
    place = serializers.CharField()
    on_hand = QuantityField(unit="unit")


class ExpiringLotOut(serializers.Serializer[Any]):
    """days_left: 0 on the last good day, below 0 past it."""

    lot = serializers.IntegerField()
    number = serializers.IntegerField()
    lot_number = serializers.CharField()
    status = serializers.CharField()
    material = ReportedMaterial(source="*")
    use_by = serializers.DateField()
    days_left = serializers.IntegerField()
    is_expired = serializers.BooleanField()
    opened_on = serializers.DateField(allow_null=True)
    on_hand = QuantityField(unit="unit")
    value = MoneySum()
    places = AtPlaceOut(many=True)
    movements = serializers.CharField()


class ExpiringOut(serializers.Serializer[Any]):
    on = serializers.DateField()
    days = serializers.IntegerField()
    rows = ExpiringLotOut(many=True)
    value = MoneySum()
    expired_value = MoneySum()


class ValueQuery(OrderedQuery):
    on = DayField(required=False, default=None, allow_null=True, help_text="The day, included; today without it.")


class ValueRowOut(serializers.Serializer[Any]):
    material = ReorderMaterial(source="*")
    quantity = QuantityField(unit="unit")
    value = MoneySum()
    movements = serializers.CharField()


class KindValueOut(serializers.Serializer[Any]):
    kind = serializers.CharField()
    materials = serializers.IntegerField()
    value = MoneySum()


class ValueOut(serializers.Serializer[Any]):
    on = serializers.DateField()
    rows = ValueRowOut(many=True)
    kinds = KindValueOut(many=True)
    total = MoneySum()


class MassBalanceQuery(PeriodQuery):
    """One lot, all lots of a number, all of a material; or every material, where nothing is named."""

    lot = RecordField(queryset=Lot.objects.all(), required=False, default=None)
    lot_number = serializers.CharField(required=False, default=None, max_length=60)
    material = RecordField(queryset=Material.objects.all(), required=False, default=None)


class FigureOut(serializers.Serializer[Any]):
    """movements: the address of the lines that sum to it."""

    quantity = QuantityField(unit="unit", allow_null=True)
    value = MoneySum()
    movements = serializers.CharField(allow_null=True)


class BalanceRowOut(serializers.Serializer[Any]):
    """A lot's or material's balance. figures: opening + what came in = what went + on_hand; difference: what is wrong
    with that, 0 unless the ledger is damaged."""

    lot = ReportedLot(allow_null=True)
    material = ReportedMaterial(source="*")
    figures = serializers.DictField(child=FigureOut(), help_text=f"By name: {', '.join(FIGURES)}.")
    difference = FigureOut()


class TotalMaterial(serializers.Serializer[Any]):
    """The material of a total: none where it sums several."""

    id = serializers.IntegerField(source="material", allow_null=True)
    name = serializers.CharField(source="material_name", allow_null=True)


class BalanceTotalOut(BalanceRowOut):
    """The sum of the rows."""

    material = TotalMaterial(source="*")  # type: ignore[assignment]  # a total need not be of one material


class MassBalanceOut(serializers.Serializer[Any]):
    first_day = serializers.DateField(source="scope.first_day", allow_null=True)
    last_day = serializers.DateField(source="scope.last_day", allow_null=True)
    rows = BalanceRowOut(many=True)
    total = BalanceTotalOut()
