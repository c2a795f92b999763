"""What is sent of a pour."""

from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from drf_spectacular.utils import extend_schema_field
from rest_framework import serializers

from inventory.catalog.serializers.fields import Whole
from inventory.pours.actions import PlanChange
from inventory.pours.entered import Account, Entered, Found, Leftover, PieceShare, Plan
from inventory.pours.models import Layer, Provenance
from inventory.rest.fields import IdField, MomentField, checked_id
from inventory.rest.quantities import QuantityField

MOST_LINES = 200
MOST_REMARKS = 40
BIN = "bin"


class Weighed(Whole):
    """The container on the scale before and after; what was used is the difference."""

    before = QuantityField(is_above_zero=True)
    after = QuantityField()


class UsageIn(Whole):
    """What went in, or is to: `quantity`, or `weighed`."""

    material = IdField()
    quantity = QuantityField(required=False, is_above_zero=True)
    weighed = Weighed(required=False)
    lot = IdField(required=False, allow_null=True, default=None, help_text="Left out, a lot is chosen.")
    place = IdField(
        required=False, allow_null=True, default=None, help_text="Where the named lot was taken from; else the pour's."
    )
    bucket = serializers.IntegerField(min_value=1, max_value=999, required=False, allow_null=True, default=None)
    is_waste = serializers.BooleanField(default=False)
    reason = serializers.CharField(max_length=200, allow_blank=True, default="")
    provenance = serializers.ChoiceField(choices=Provenance.choices, required=False)
    lot_provenance = serializers.ChoiceField(choices=Provenance.choices, required=False)

    def validate(self, attrs: dict[str, Any]) -> dict[str, Any]:
        if ("quantity" in attrs) == ("weighed" in attrs):
            raise serializers.ValidationError({"quantity": "Give either a quantity, or the weights before and after."})
        if attrs["place"] is not None and attrs["lot"] is None:
            raise serializers.ValidationError({"place": "Name the lot that was taken from there."})
        return attrs


@extend_schema_field(
    {
        "oneOf": [
            {"type": "integer", "format": "int64", "description": "The id of a top."},
            {
                "type": "object",
                "properties": {
                    "piece": {"type": "integer", "format": "int64"},
                    "share_percent": {"type": "string", "format": "decimal", "examples": ["60"]},
                },
                "required": ["piece"],
                "additionalProperties": False,
            },
        ]
    }
)
class PieceShareField(serializers.Field[PieceShare, Any, Any, Any]):
    """A top by its id, or with its typed share of the cost."""

    default_error_messages = {"invalid": 'Give the id of a top, or {{"piece": id, "share_percent": "60"}}.'}

    def to_internal_value(self, data: Any) -> PieceShare:
        if not isinstance(data, Mapping):
            return PieceShare(checked_id(data))
        if not {"piece"} <= set(data) <= {"piece", "share_percent"}:
            self.fail("invalid")
        share = data.get("share_percent")
        if share is None:
            return PieceShare(checked_id(data["piece"]))
        percent = serializers.DecimalField(max_digits=9, decimal_places=6, min_value=Decimal(0), max_value=Decimal(100))
        return PieceShare(checked_id(data["piece"]), percent.run_validation(share))


@extend_schema_field(
    {"oneOf": [{"type": "string", "enum": [BIN]}, {"type": "integer", "format": "int64", "description": "A pour."}]}
)
class WentToField(serializers.Field[Any, Any, Any, Any]):
    """Where left-over went: the bin, or another pour by its id."""

    def to_internal_value(self, data: Any) -> int | None:
        return None if data == BIN else checked_id(data)


class LeftoverIn(Whole):
    """Mixed resin that did not go onto the tops: one number, split over all that was in the bucket."""

    quantity = QuantityField()
    went_to = WentToField()
    bucket = serializers.IntegerField(min_value=1, max_value=999, required=False, allow_null=True, default=None)


class FoundIn(Whole):
    """There was more of a lot than the book said: how much more."""

    lot = IdField()
    quantity = QuantityField(is_above_zero=True)
    reason = serializers.CharField(max_length=200)


class RemarkIn(serializers.Serializer[Any]):
    value = serializers.JSONField()
    unit = serializers.CharField(max_length=20, required=False)
    provenance = serializers.ChoiceField(choices=Provenance.choices, default=Provenance.TYPED)


SCALAR = {"oneOf": [{"type": "string"}, {"type": "number"}, {"type": "boolean"}]}
REMARK = {
    "type": "object",
    "properties": {
        "value": SCALAR,
        "unit": {"type": "string", "maxLength": 20},
        "provenance": {"type": "string", "enum": Provenance.values},
    },
    "required": ["value"],
    "additionalProperties": False,
}


@extend_schema_field(
    {
        "type": "object",
        "additionalProperties": {"oneOf": [*SCALAR["oneOf"], REMARK]},
        "examples": [{"air": {"value": "72", "unit": "F", "provenance": "typed"}, "sanded": True}],
    }
)
class RemarksField(serializers.Field[Any, Any, Any, Any]):
    """Name -> what was seen or done: a value, or `{"value", "unit"?, "provenance"?}`. Assumed ones are not kept."""

    default_error_messages = {
        "invalid": 'Give names with values, such as {{"sanded": true, "air": {{"value": "72", "unit": "F"}}}}.',
        "too_many": f"At most {MOST_REMARKS} can be kept.",
        "name": "A name has 1 to 40 letters.",
        "value": "A value is a text of at most 200 letters, a number, or true or false.",
    }

    def to_internal_value(self, data: Any) -> dict[str, dict[str, Any]]:
        if not isinstance(data, Mapping):
            self.fail("invalid")
        if len(data) > MOST_REMARKS:
            self.fail("too_many")
        return {self.name_of(name): self.remark(remark) for name, remark in data.items()}

    def name_of(self, name: str) -> str:
        if not 1 <= len(name) <= 40:
            self.fail("name")
        return name

    def remark(self, remark: Any) -> dict[str, Any]:
        whole = RemarkIn(data=remark if isinstance(remark, Mapping) else {"value": remark})
        if isinstance(remark, Mapping) and set(remark) - set(whole.fields):
            self.fail("invalid")
        whole.is_valid(raise_exception=True)
        value = whole.validated_data["value"]
        if isinstance(value, Decimal):
            value = f"{value:f}"
        if not isinstance(value, str | int | float | bool) or len(str(value)) > 200:
            self.fail("value")
        return {**whole.validated_data, "value": value}


class SeenIn(serializers.Serializer[Any]):
    people = serializers.ListField(child=IdField(), required=False, max_length=50)
    conditions = RemarksField(required=False)
    ticks = RemarksField(required=False)
    note = serializers.CharField(max_length=5000, allow_blank=True, required=False)


class HappenedIn(SeenIn):
    poured_at = MomentField(required=False, help_text="When it was poured; else as planned, or now.")
    leftover = LeftoverIn(required=False)
    found = serializers.ListField(child=FoundIn(), required=False, max_length=MOST_LINES)


class PourIn(HappenedIn):
    """A pour to plan; with `complete`, one that has happened and that nobody had planned."""

    pieces = serializers.ListField(child=PieceShareField(), min_length=1, max_length=MOST_LINES)
    layer = serializers.ChoiceField(choices=Layer.choices)
    place = IdField(required=False, allow_null=True, default=None)
    poured_at = MomentField(required=False, help_text="When it is to be poured, or was.")
    is_redo = serializers.BooleanField(default=False, help_text="A coat laid again over one that failed.")
    usages = serializers.ListField(child=UsageIn(), default=list, max_length=MOST_LINES)
    allow_short = serializers.BooleanField(default=False, help_text="Plan it although not all of it can be had.")
    complete = serializers.BooleanField(default=False, help_text="It has happened: record it in one act.")

    def validate(self, attrs: dict[str, Any]) -> dict[str, Any]:
        if not attrs["complete"]:
            early = [name for name in ("leftover", "found") if name in attrs]
            if early:
                detail = 'That is known once it has happened: send it with "complete": true, or on completing.'
                raise serializers.ValidationError(dict.fromkeys(early, detail))
        return attrs


class PourChange(SeenIn):
    pieces = serializers.ListField(child=PieceShareField(), min_length=1, max_length=MOST_LINES, required=False)
    layer = serializers.ChoiceField(choices=Layer.choices, required=False)
    place = IdField(required=False)
    poured_at = MomentField(required=False, allow_null=True, help_text="When it is to be poured.")
    is_redo = serializers.BooleanField(required=False)
    usages = serializers.ListField(child=UsageIn(), required=False, max_length=MOST_LINES)
    allow_short = serializers.BooleanField(required=False, default=False)


class CompleteIn(HappenedIn):
    """What really went in; without `usages` it went as planned."""

    usages = serializers.ListField(child=UsageIn(), required=False, max_length=MOST_LINES)


class AdditionsIn(serializers.Serializer[Any]):
    usages = serializers.ListField(child=UsageIn(), min_length=1, max_length=MOST_LINES)
    poured_at = MomentField(required=False, help_text="When it was added; else now.")
    found = serializers.ListField(child=FoundIn(), required=False, max_length=MOST_LINES)


class CorrectIn(HappenedIn):
    """What really went in, whole; everything booked before is taken back in the same act."""

    usages = serializers.ListField(child=UsageIn(), max_length=MOST_LINES)
    reason = serializers.CharField(max_length=500)


class PourReasonIn(serializers.Serializer[Any]):
    reason = serializers.CharField(max_length=500)


class CancelIn(serializers.Serializer[Any]):
    reason = serializers.CharField(max_length=500, allow_blank=True, default="")


def entered_of(lines: list[dict[str, Any]]) -> list[Entered]:
    """The amounts of a validated body."""
    return [
        Entered(
            material=line["material"],
            quantity=line.get("quantity"),
            weighed_before=line["weighed"]["before"] if "weighed" in line else None,
            weighed_after=line["weighed"]["after"] if "weighed" in line else None,
            lot=line["lot"],
            place=line["place"],
            bucket=line["bucket"],
            is_waste=line["is_waste"],
            reason=line["reason"],
            provenance=line.get("provenance"),
            lot_provenance=line.get("lot_provenance"),
        )
        for line in lines
    ]


def founds_of(body: dict[str, Any]) -> list[Found]:
    return [Found(**find) for find in body.get("found", ())]


def account_of(body: dict[str, Any]) -> Account:
    """What happened, of a validated body."""
    leftover = body.get("leftover")
    return Account(
        usages=entered_of(body["usages"]) if "usages" in body else None,
        poured_at=body.get("poured_at"),
        leftover=Leftover(**leftover) if leftover else None,
        found=founds_of(body),
        people=body.get("people"),
        conditions=body.get("conditions"),
        ticks=body.get("ticks"),
        note=body.get("note"),
    )


def plan_of(body: dict[str, Any]) -> Plan:
    """The plan of a validated body; of a pour that has happened, without the amounts."""
    return Plan(
        pieces=body["pieces"],
        layer=body["layer"],
        place=body["place"],
        planned_for=None if body["complete"] else body.get("poured_at"),
        is_redo=body["is_redo"],
        people=body.get("people", ()),
        conditions=body.get("conditions", {}),
        ticks=body.get("ticks", {}),
        note=body.get("note", ""),
        usages=() if body["complete"] else entered_of(body["usages"]),
    )


def change_of(body: dict[str, Any]) -> PlanChange:
    """What a validated body changes of a plan."""
    names = {"layer": "layer", "is_redo": "is_redo", "poured_at": "planned_for", "note": "note"}
    names |= {"conditions": "conditions", "ticks": "ticks"}
    return PlanChange(
        fields={field: body[name] for name, field in names.items() if name in body},
        pieces=body.get("pieces"),
        usages=entered_of(body["usages"]) if "usages" in body else None,
        people=body.get("people"),
        place=body.get("place"),
    )
