"""What is said of a lot when something happens to it."""

from typing import Any

from rest_framework import serializers

from inventory.rest.fields import DayField, MomentField, MoneyField, RecordField
from inventory.rest.money import MoneyKeys
from inventory.rest.quantities import QuantityField
from inventory.stock.models import Place, Return
from inventory.stock.serializers.lots import MOST_CONTAINERS

LONGEST_REASON = 1000


class ReasonField(serializers.CharField):
    """Why, in words."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(max_length=LONGEST_REASON, **kwargs)


class PlaceField(RecordField):
    """A place by its id."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(queryset=Place.objects.all(), **{"required": False, "default": None, **kwargs})


class HappenedIn(serializers.Serializer[Any]):
    """happened_at: when, if not now."""

    happened_at = MomentField(required=False, allow_null=True, default=None)


def quantity_or_all(attrs: dict[str, Any]) -> dict[str, Any]:
    """The body with `quantity` None where all is meant; one of the two must be said."""
    wants_all = attrs.pop("all", False)
    if wants_all == ("quantity" in attrs):
        raise serializers.ValidationError({"quantity": 'Give a quantity, or "all": true; one of the two.'})
    return {"quantity": None, **attrs}


class TakenIn(HappenedIn):
    """A quantity, or all of it. place: from where; needed where a quantity is taken of a lot that lies in several."""

    quantity = QuantityField(required=False, is_above_zero=True)
    all = serializers.BooleanField(required=False)
    place = PlaceField(allow_null=True)

    def validate(self, attrs: dict[str, Any]) -> dict[str, Any]:
        return quantity_or_all(attrs)


class OpenIn(HappenedIn):
    """opened_on: today, where it is left out. containers: how many at once. place: where, if it lies in several."""

    opened_on = DayField(required=False, allow_null=True, default=None)
    containers = serializers.IntegerField(required=False, default=1, min_value=1, max_value=MOST_CONTAINERS)
    place = PlaceField(allow_null=True)


class MoveIn(HappenedIn):
    """A quantity, or all of it, to another place. from: needed where the lot lies in several places."""

    to = PlaceField(required=True, default=serializers.empty)
    quantity = QuantityField(required=False, is_above_zero=True)
    all = serializers.BooleanField(required=False)
    reason = ReasonField(required=False, allow_blank=True, default="")

    def validate(self, attrs: dict[str, Any]) -> dict[str, Any]:
        return quantity_or_all(attrs)

    def get_fields(self) -> dict[str, Any]:
        return {**super().get_fields(), "from": PlaceField(source="origin", allow_null=True)}


class WriteOffIn(TakenIn):
    reason = ReasonField()


class ReturnIn(MoneyKeys, TakenIn):
    """credit: the money that came back, which need not be what the goods cost."""

    money_fields = ("credit",)

    to = serializers.ChoiceField(Return.To.choices)
    credit = MoneyField(required=False, allow_null=True, default=None, min_value=0)
    reason = ReasonField()


class GiveIn(MoneyKeys, TakenIn):
    """Sold or given away. price: what was paid for it; noted with the reason."""

    money_fields = ("price",)

    price = MoneyField(required=False, allow_null=True, default=None, min_value=0)
    reason = ReasonField()


class EmptyIn(HappenedIn):
    """place: where the pail is empty; everywhere, where it is left out."""

    place = PlaceField(allow_null=True)
    reason = ReasonField(required=False, allow_blank=True, default="")


class HoldIn(serializers.Serializer[Any]):
    """all_of_this_number: all lots of the supplier's number, not this one alone. since: when, if not now."""

    reason = ReasonField()
    all_of_this_number = serializers.BooleanField(default=True)
    since = MomentField(required=False, allow_null=True, default=None)


class ReleaseIn(serializers.Serializer[Any]):
    reason = ReasonField()
    all_of_this_number = serializers.BooleanField(default=True)


class NoteIn(serializers.Serializer[Any]):
    text = serializers.CharField(max_length=4000)
    noted_at = MomentField(required=False, allow_null=True, default=None)


class WhyIn(serializers.Serializer[Any]):
    reason = ReasonField()
