"""A lot as it is shown: what it is, how it stands, how much is left of it and where."""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal
from fractions import Fraction
from typing import Any

from drf_spectacular.utils import extend_schema_field
from rest_framework import serializers

from inventory.calc.allocation import is_usable_on
from inventory.calc.rounding import half_even
from inventory.catalog.models import MaterialKind, StockUnit
from inventory.rest.fields import DayField, MoneyField
from inventory.rest.money import MoneyKeys
from inventory.rest.quantities import QuantityField, quantity_json
from inventory.shop.clock import today
from inventory.shop.serializers import PersonName
from inventory.stock.bars import bars_among, status_of
from inventory.stock.models import Basis, Lot, LotStatus, Origin

NOTHING = Decimal(0)
LONGEST_NUMBER = 60
MOST_CONTAINERS = 9_999


class LotMaterial(serializers.Serializer[Any]):
    id = serializers.IntegerField()
    code = serializers.CharField()
    name = serializers.CharField()
    kind = serializers.ChoiceField(MaterialKind.choices)
    stock_unit = serializers.ChoiceField(StockUnit.choices)
    swatch = serializers.CharField(help_text="#rrggbb, or empty.")
    tracks_lots = serializers.BooleanField()


class LotAtPlace(MoneyKeys):
    """What lies of the lot at a place. place: its id."""

    money_fields = ("value",)

    place = serializers.IntegerField(source="place_id")
    name = serializers.CharField(source="place.name")
    on_hand = QuantityField(unit="unit")
    value = MoneyField()


class LotName(serializers.Serializer[Any]):
    id = serializers.IntegerField()
    number = serializers.IntegerField()
    lot_number = serializers.CharField()


class LotRow(MoneyKeys):
    """A lot in a list.

    lot_number: the supplier's; the shop's own where none was on the label (is_own_number).
    use_by: the last good day. days_left: until then, below zero past it. age_days: since it was made, or came in.
    status: the worst of the bars on it; status_since and status_reason say since when and why, empty while usable.
    came_in: all that ever came into it. fill: on_hand / came_in, 0 to 1. reserved: set aside of this very lot.
    unit_cost: money per stock unit. is_provisional: a price is to follow. basis: what its money rests on.
    """

    money_fields = ("value", "unit_cost")

    id = serializers.IntegerField()
    uuid = serializers.UUIDField()
    number = serializers.IntegerField()
    material = LotMaterial()
    lot_number = serializers.CharField()
    is_own_number = serializers.BooleanField()
    origin = serializers.ChoiceField(Origin.choices)
    opened_from = serializers.IntegerField(source="opened_from_id", allow_null=True)
    blend = serializers.SerializerMethodField()
    received_on = DayField()
    made_on = DayField(allow_null=True)
    expires_on = DayField(allow_null=True)
    opened_on = DayField(allow_null=True)
    use_by = DayField(allow_null=True)
    days_left = serializers.SerializerMethodField()
    age_days = serializers.SerializerMethodField()
    is_expired = serializers.SerializerMethodField()
    is_usable = serializers.SerializerMethodField()
    containers = serializers.IntegerField()
    status = serializers.ChoiceField(LotStatus.choices)
    status_since = serializers.SerializerMethodField()
    status_reason = serializers.SerializerMethodField()
    basis = serializers.ChoiceField(Basis.choices)
    is_provisional = serializers.BooleanField()
    places = serializers.SerializerMethodField()
    on_hand = serializers.SerializerMethodField()
    reserved = serializers.SerializerMethodField()
    came_in = serializers.SerializerMethodField()
    fill = serializers.SerializerMethodField()
    value = serializers.SerializerMethodField()
    unit_cost = serializers.SerializerMethodField()

    def today(self) -> date:
        """The shop's day; asked once for an answer."""
        known: dict[str, Any] = self.context  # type: ignore[assignment]  # one dict for the whole answer
        if "today" not in known:
            known["today"] = today()
        day: date = known["today"]
        return day

    def get_blend(self, lot: Lot) -> int | None:
        made = getattr(lot, "blend", None)
        return made.pk if made else None

    def get_days_left(self, lot: Lot) -> int | None:
        return (lot.use_by - self.today()).days if lot.use_by else None

    def get_age_days(self, lot: Lot) -> int:
        return (self.today() - (lot.made_on or lot.received_on)).days

    def get_is_expired(self, lot: Lot) -> bool:
        return not is_usable_on(lot.use_by, self.today())

    def get_is_usable(self, lot: Lot) -> bool:
        return lot.status == LotStatus.USABLE and is_usable_on(lot.use_by, self.today())

    @extend_schema_field(serializers.DateTimeField(allow_null=True))
    def get_status_since(self, lot: Lot) -> Any:
        return self.worst(lot)[0]

    def get_status_reason(self, lot: Lot) -> str:
        return self.worst(lot)[1]

    def worst(self, lot: Lot) -> tuple[Any, str]:
        """Since when and why the lot is as bad as it is."""
        bars = bars_among(lot.status_events.all())
        status = status_of(bars.values())
        found = [force for force in bars.values() if force.status == status]
        earliest = min(found, key=lambda force: force.since, default=None)
        return (earliest.since.isoformat(), earliest.reason) if earliest else (None, "")

    @extend_schema_field(LotAtPlace(many=True))
    def get_places(self, lot: Lot) -> Any:
        rows = []
        for balance in lot.balances.all():
            balance.on_hand, balance.unit = balance.quantity, lot.material.stock_unit  # type: ignore[attr-defined]
            rows.append(balance)
        return LotAtPlace(rows, many=True, context=self.context).data

    @extend_schema_field(QuantityField())
    def get_on_hand(self, lot: Any) -> Any:
        return quantity_json(lot.stock_on_hand or NOTHING, lot.material.stock_unit)

    @extend_schema_field(QuantityField())
    def get_reserved(self, lot: Any) -> Any:
        return quantity_json(lot.set_aside or NOTHING, lot.material.stock_unit)

    @extend_schema_field(QuantityField())
    def get_came_in(self, lot: Any) -> Any:
        return quantity_json(lot.came_in or NOTHING, lot.material.stock_unit)

    @extend_schema_field({"type": "string", "format": "decimal"})
    def get_fill(self, lot: Any) -> str:
        return f"{half_even(share_of(lot.stock_on_hand, lot.came_in), 4):f}"

    @extend_schema_field(MoneyField())
    def get_value(self, lot: Any) -> str:
        return f"{lot.stock_value or NOTHING:.4f}"

    @extend_schema_field({"type": ["string", "null"], "format": "decimal"})
    def get_unit_cost(self, lot: Any) -> str | None:
        if not lot.came_in or lot.came_in < 0:
            return None
        return f"{half_even(share_of(lot.came_in_value, lot.came_in), 6):f}"


class StatusEventOut(serializers.Serializer[Any]):
    """named: the lot that somebody spoke of. whole_number: whether all of its supplier number was meant."""

    status = serializers.ChoiceField(LotStatus.choices)
    since = serializers.DateTimeField()
    reason = serializers.CharField()
    named = serializers.IntegerField(source="named_id")
    whole_number = serializers.BooleanField()
    by = PersonName()
    recorded_at = serializers.DateTimeField()


class NoteOut(serializers.Serializer[Any]):
    id = serializers.IntegerField()
    noted_at = serializers.DateTimeField()
    text = serializers.CharField()
    by = PersonName()


class LotOut(LotRow):
    """A lot with its notes, the history of its status, and the lots that were opened from it."""

    opened_lots = serializers.SerializerMethodField()
    notes = NoteOut(many=True)
    status_events = StatusEventOut(many=True)

    @extend_schema_field(
        {
            "type": "array",
            "items": {
                "type": "object",
                "properties": {
                    "id": {"type": "integer"},
                    "number": {"type": "integer"},
                    "opened_on": {"type": ["string", "null"], "format": "date"},
                    "on_hand": {
                        "type": "object",
                        "properties": {"amount": {"type": "string"}, "unit": {"type": "string"}},
                        "required": ["amount", "unit"],
                    },
                },
                "required": ["id", "number", "opened_on", "on_hand"],
            },
        }
    )
    def get_opened_lots(self, lot: Any) -> Sequence[Any]:
        return [
            {
                "id": child.pk,
                "number": child.number,
                "opened_on": child.opened_on and child.opened_on.isoformat(),
                "on_hand": quantity_json(child.stock_on_hand or NOTHING, lot.material.stock_unit),
            }
            for child in lot.opened_lots.all()
        ]


class LotChange(serializers.Serializer[Any]):
    """What is written on a lot. opened_on: mends the day on which it was opened."""

    lot_number = serializers.CharField(max_length=LONGEST_NUMBER, required=False)
    made_on = DayField(required=False, allow_null=True)
    expires_on = DayField(required=False, allow_null=True)
    opened_on = DayField(required=False, allow_null=True)
    containers = serializers.IntegerField(required=False, min_value=1, max_value=MOST_CONTAINERS)


def share_of(part: Decimal | None, whole: Decimal | None) -> Fraction:
    """part / whole, exactly; 0 where there is no whole."""
    return Fraction(part or NOTHING) / Fraction(whole) if whole else Fraction(0)
