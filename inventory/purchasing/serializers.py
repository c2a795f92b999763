"""The shape of deliveries in JSON, in and out."""

from collections.abc import Mapping
from typing import Any, ClassVar

from rest_framework import serializers

from inventory.calc.landed_cost import SpreadBy
from inventory.catalog.models import Supplier
from inventory.catalog.serializers.fields import MaterialName, SupplierName, TypedQuantity
from inventory.purchasing.actions import ChargeGiven, ContentLabel, MaterialLine, PackLine, PriceGiven, QuantityGiven
from inventory.rest.fields import DayField, IdField, MomentField, MoneyField, RecordField
from inventory.rest.money import MoneyKeys
from inventory.rest.quantities import QuantityField
from inventory.shop.serializers import PersonName
from inventory.stock.models import Basis, LotStatus, Place

MOST_LINES = 200
MOST_CHARGES = 20
MOST_COUNT = 9_999
LONGEST_NOTE = 4000
ONLY_OF_MATERIAL = ("quantity", "lot_number", "containers", "made_on", "expires_on")
ONLY_OF_PACK = ("count", "contents")


class LotLabelIn(serializers.Serializer[Any]):
    """What stands on the containers: the supplier's lot number, when it was made, when it expires."""

    lot_number = serializers.CharField(
        max_length=60,
        allow_blank=True,
        default="",
        help_text="Empty where none is on the label: the shop gives its own.",
    )
    made_on = DayField(allow_null=True, default=None)
    expires_on = DayField(allow_null=True, default=None)


class DeliveredContentIn(LotLabelIn):
    """The label of one content of a pack. containers: of all packs together; as many as packs unless said."""

    material = IdField()
    containers = serializers.IntegerField(min_value=1, max_value=MOST_COUNT, allow_null=True, default=None)

    def validate(self, attrs: dict[str, Any]) -> Any:
        return ContentLabel(**attrs)


class DeliveryLineIn(MoneyKeys):
    """Some of one material in one lot, or so many of a pack.

    cost: money for the line; 0 needs a basis, left out the price is to follow. A basis alone says that nothing was
    paid. count and contents go with a pack, the other fields with a material.
    """

    money_fields = ("cost",)

    material = IdField(required=False)
    quantity = QuantityField(required=False, is_above_zero=True)
    lot_number = serializers.CharField(max_length=60, required=False, allow_blank=True)
    containers = serializers.IntegerField(required=False, min_value=1, max_value=MOST_COUNT)
    made_on = DayField(required=False, allow_null=True)
    expires_on = DayField(required=False, allow_null=True)
    pack = IdField(required=False)
    count = serializers.IntegerField(required=False, min_value=1, max_value=MOST_COUNT)
    contents: Any = serializers.ListSerializer(child=DeliveredContentIn(), required=False, max_length=20)
    cost = MoneyField(required=False, min_value=0, allow_null=True)
    basis = serializers.ChoiceField(Basis.choices, required=False, allow_null=True)

    def validate(self, attrs: dict[str, Any]) -> Any:
        if ("material" in attrs) == ("pack" in attrs):
            raise serializers.ValidationError({"material": "Give a material or a pack, one of the two."})
        noun, foreign = ("pack", ONLY_OF_MATERIAL) if "pack" in attrs else ("material", ONLY_OF_PACK)
        wrong = {name: f"This does not go with a {noun}. Leave it out." for name in foreign if name in attrs}
        if noun == "material" and "quantity" not in attrs:
            wrong["quantity"] = "Say how much came in."
        if wrong:
            raise serializers.ValidationError(wrong)
        if attrs.get("basis"):
            attrs["basis"] = Basis(attrs["basis"])
        return PackLine(**attrs) if noun == "pack" else MaterialLine(**attrs)


class ChargeIn(serializers.Serializer[Any]):
    """Freight, duty, handling, or a discount (below zero), spread over the lines by value, mass or quantity."""

    kind = serializers.CharField(max_length=40)
    amount = MoneyField()
    spread_by = serializers.ChoiceField([(by.value, by.value) for by in SpreadBy], default=SpreadBy.VALUE.value)

    def validate(self, attrs: dict[str, Any]) -> Any:
        return charge_of(attrs)


class DeliveryIn(MoneyKeys):
    """place: the first place of the shop unless said."""

    money_fields = ("charges",)

    supplier = RecordField(queryset=Supplier.objects.all())
    received_on = DayField()
    place = RecordField(queryset=Place.objects.all(), required=False, allow_null=True)
    reference = serializers.CharField(max_length=80, allow_blank=True, default="", help_text="From the packing slip.")
    note = serializers.CharField(max_length=LONGEST_NOTE, allow_blank=True, default="")
    lines: Any = serializers.ListSerializer(child=DeliveryLineIn(), min_length=1, max_length=MOST_LINES)
    charges: Any = serializers.ListSerializer(child=ChargeIn(), max_length=MOST_CHARGES, required=False)


class DeliveryPriceIn(serializers.Serializer[Any]):
    """What one line cost, or all lines of one pack together (pack_line), before charges."""

    line = IdField(required=False)
    pack_line = serializers.IntegerField(required=False, min_value=1, max_value=MOST_LINES)
    cost = MoneyField(min_value=0)
    basis = serializers.ChoiceField(Basis.choices, required=False, allow_null=True)

    def validate(self, attrs: dict[str, Any]) -> Any:
        if ("line" in attrs) == ("pack_line" in attrs):
            raise serializers.ValidationError({"line": "Give a line or a pack_line, one of the two."})
        if attrs.get("basis"):
            attrs["basis"] = Basis(attrs["basis"])
        return PriceGiven(**attrs)


class DeliveryPricesIn(serializers.Serializer[Any]):
    lines: Any = serializers.ListSerializer(child=DeliveryPriceIn(), min_length=1, max_length=MOST_LINES)


class LateChargeIn(ChargeIn):
    """A charge or credit that came after the goods. charged_on: the date on its own paper."""

    charged_on = DayField()

    def validate(self, attrs: dict[str, Any]) -> Any:
        return {"charged_on": attrs.pop("charged_on"), "charge": charge_of(attrs)}


class DeliveredQuantityIn(serializers.Serializer[Any]):
    """containers: only where their number was wrong too."""

    line = IdField()
    quantity = QuantityField(is_above_zero=True)
    containers = serializers.IntegerField(min_value=1, max_value=MOST_COUNT, allow_null=True, default=None)

    def validate(self, attrs: dict[str, Any]) -> Any:
        return QuantityGiven(**attrs)


class DeliveryCorrectionIn(serializers.Serializer[Any]):
    """What lines really brought. What was paid stays."""

    lines: Any = serializers.ListSerializer(child=DeliveredQuantityIn(), min_length=1, max_length=MOST_LINES)
    reason = serializers.CharField(max_length=LONGEST_NOTE)


class DeliveryReversalIn(serializers.Serializer[Any]):
    reason = serializers.CharField(max_length=LONGEST_NOTE)


def charge_of(attrs: Mapping[str, Any]) -> ChargeGiven:
    if attrs["amount"] == 0:
        raise serializers.ValidationError({"amount": "A charge of 0 changes nothing. Leave it out."})
    return ChargeGiven(attrs["kind"], attrs["amount"], SpreadBy(attrs["spread_by"]))


class Total(serializers.DecimalField):
    """Money in an answer that no bound holds for."""

    def __init__(self, *, decimal_places: int = 4, **kwargs: Any) -> None:
        super().__init__(max_digits=None, decimal_places=decimal_places, coerce_to_string=True, **kwargs)


class DeliveredPack(serializers.Serializer[Any]):
    id = serializers.IntegerField()
    name = serializers.CharField()


class DeliveredTo(serializers.Serializer[Any]):
    id = serializers.IntegerField()
    name = serializers.CharField()


class DeliveredLot(serializers.Serializer[Any]):
    """The lot that a line became, as it is now."""

    id = serializers.IntegerField()
    number = serializers.IntegerField(help_text="The short number to say aloud.")
    lot_number = serializers.CharField()
    is_own_number = serializers.BooleanField(help_text="None was on the label.")
    made_on = serializers.DateField(allow_null=True)
    expires_on = serializers.DateField(allow_null=True)
    use_by = serializers.DateField(allow_null=True)
    status = serializers.ChoiceField(LotStatus.choices)


class DeliveryLineOut(MoneyKeys):
    """cost: as paid, null while the price is to follow. booked_cost: what the ledger carries for it until then.

    charges: its share of all charges and discounts. landed_cost: booked_cost + charges. unit_cost: landed, for one
    stock unit. quantity: in the material's stock unit.
    """

    money_fields = ("cost", "booked_cost", "charges", "landed_cost", "unit_cost")

    id = serializers.IntegerField()
    position = serializers.IntegerField()
    material = MaterialName()
    lot = DeliveredLot()
    pack = DeliveredPack(allow_null=True)
    pack_line = serializers.IntegerField(allow_null=True, help_text="Lines of one pack or kit share it.")
    pack_count = serializers.IntegerField(allow_null=True)
    quantity = QuantityField(unit="material.stock_unit")
    as_typed = TypedQuantity(source="*")
    containers = serializers.IntegerField()
    cost = MoneyField(allow_null=True)
    booked_cost = MoneyField()
    charges = Total()
    landed_cost = Total()
    unit_cost = Total(decimal_places=6)
    basis = serializers.ChoiceField(Basis.choices)
    is_provisional = serializers.BooleanField(help_text="The price is to follow.")


class ChargeOut(serializers.Serializer[Any]):
    id = serializers.IntegerField()
    kind = serializers.CharField()
    amount = MoneyField()
    spread_by = serializers.ChoiceField([(by.value, by.value) for by in SpreadBy])
    charged_on = serializers.DateField()


class DeliveryRowOut(MoneyKeys):
    """A delivery in a list. landed_cost: of all its lines, charges included."""

    money_fields: ClassVar[tuple[str, ...]] = ("landed_cost",)

    id = serializers.IntegerField()
    number = serializers.IntegerField(help_text="The short number to say aloud.")
    supplier = SupplierName()
    received_on = serializers.DateField()
    place = DeliveredTo()
    reference = serializers.CharField()
    line_count = serializers.IntegerField()
    landed_cost = Total()
    is_provisional = serializers.BooleanField(source="waits_for_price", help_text="Some price is to follow.")
    is_undone = serializers.BooleanField()


class DeliveryOut(DeliveryRowOut):
    """A delivery whole."""

    money_fields = ("landed_cost", "charges")

    note = serializers.CharField()
    by = PersonName()
    recorded_at = MomentField()
    lines = DeliveryLineOut(many=True)
    charges = ChargeOut(many=True)
