"""The shape of customers, jobs and pieces in JSON."""

from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from typing import Any

from drf_spectacular.utils import extend_schema_field
from rest_framework import serializers

from inventory.calc.quantities import QuantityError, read_quantity
from inventory.calc.rounding import half_even
from inventory.calc.surfaces import CountingRule
from inventory.catalog.serializers.fields import Whole
from inventory.jobs.models import Customer, Job, Piece, Purpose
from inventory.jobs.shapes import MEASURE_KEYS, PieceDraft, finished_area
from inventory.rest.bodies import refuse_unknown_keys
from inventory.rest.fields import DayField, RecordField, checked_id
from inventory.rest.quantities import plain

MOST_PIECES_AT_ONCE = 200
MOST_PARTS = 40
RULE_FIELDS = ("counts_top", "counts_edges", "counts_splash", "deducts_cutouts")


@extend_schema_field({"type": "string", "examples": ["25.5", "25 1/2"]})
class MeasureField(serializers.Field[Decimal, Any, str, Any]):
    """A side in inches or an area in square feet: a number, or text with a decimal or a fraction ("25 1/2")."""

    default_error_messages = {"invalid": 'Give a measure such as "25.5" or "25 1/2".'}

    def to_internal_value(self, data: Any) -> Decimal:
        try:
            amount: Fraction = read_quantity(data, "in").amount
        except QuantityError as error:
            raise serializers.ValidationError(str(error), code="invalid") from error
        return half_even(amount)

    def to_representation(self, value: Decimal | str) -> str:
        return plain(Decimal(value))


class AreaField(serializers.DecimalField):
    """An area in square feet, to six places."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(max_digits=16, decimal_places=6, coerce_to_string=True, **kwargs)


class FlatPart(Whole):
    length_in = MeasureField()
    width_in = MeasureField()


class UprightPart(Whole):
    length_in = MeasureField()
    height_in = MeasureField()


class TopShape(serializers.Serializer[Any]):
    """A top's dimensions, in inches, in one of four ways."""

    area_sqft = MeasureField(required=False, help_text="The top's own area, as a template or drawing gave it.")
    length_in = MeasureField(required=False)
    width_in = MeasureField(required=False)
    legs = serializers.ListField(
        child=FlatPart(), required=False, max_length=2, help_text="An L: two legs, the corner in both."
    )
    diameter_in = MeasureField(required=False)


class Shape(TopShape):
    """A piece's dimensions: the top, and the parts beside it."""

    cutouts = serializers.ListField(child=FlatPart(), default=list, max_length=MOST_PARTS)
    edges = serializers.ListField(child=UprightPart(), default=list, max_length=MOST_PARTS)
    splash = serializers.ListField(child=UprightPart(), default=list, max_length=MOST_PARTS)


class PieceIn(Shape):
    name = serializers.CharField(max_length=100)
    count = serializers.IntegerField(min_value=1, max_value=100, default=1, help_text="Makes so many, numbered.")
    area_source = serializers.ChoiceField(choices=Piece.AreaSource.choices, default=Piece.AreaSource.QUOTED)


class PieceChange(Shape):
    name = serializers.CharField(max_length=120)
    area_source = serializers.ChoiceField(choices=Piece.AreaSource.choices, default=Piece.AreaSource.QUOTED)


class ShapeOut(TopShape):
    """The dimensions as they were given; what was not given is absent."""

    cutouts = serializers.ListField(child=FlatPart(), required=False)
    edges = serializers.ListField(child=UprightPart(), required=False)
    splash = serializers.ListField(child=UprightPart(), required=False)


class PieceOut(serializers.ModelSerializer[Piece]):
    """A top. area_sqft: by the job's counting rule; a scrapped top keeps it here and counts in no sum of areas."""

    job = serializers.IntegerField(source="job_id")
    shape = serializers.SerializerMethodField()
    top_sqft = AreaField()
    edge_sqft = AreaField()
    splash_sqft = AreaField()
    cutout_sqft = AreaField()
    area_sqft = AreaField()

    class Meta:
        model = Piece
        fields = (
            "id",
            "uuid",
            "number",
            "job",
            "name",
            "shape",
            "top_sqft",
            "edge_sqft",
            "splash_sqft",
            "cutout_sqft",
            "area_sqft",
            "area_source",
            "is_scrapped",
            "scrapped_reason",
        )

    @extend_schema_field(ShapeOut)
    def get_shape(self, piece: Piece) -> dict[str, Any]:
        return dict(piece.shape)


class PieceInJob(serializers.Serializer[Any]):
    """The job of a piece, as a list of pieces shows it."""

    id = serializers.IntegerField()
    number = serializers.IntegerField()
    title = serializers.CharField()
    customer = serializers.CharField(source="customer.name")


class PieceRow(PieceOut):
    """A top by itself, with whose it is."""

    of_job = PieceInJob(source="job")

    class Meta:
        model = Piece
        fields = (*PieceOut.Meta.fields, "of_job")


class CustomerIn(serializers.Serializer[Any]):
    name = serializers.CharField(max_length=120)
    phone = serializers.CharField(max_length=60, allow_blank=True, default="")
    email = serializers.EmailField(max_length=254, allow_blank=True, default="")
    address = serializers.CharField(max_length=1000, allow_blank=True, default="")
    note = serializers.CharField(max_length=5000, allow_blank=True, default="")


class CustomerOut(serializers.ModelSerializer[Customer]):
    class Meta:
        model = Customer
        fields = ("id", "number", "name", "phone", "email", "address", "note", "is_archived")


@extend_schema_field(
    {
        "oneOf": [
            {"type": "integer", "format": "int64", "description": "The id of a customer on record."},
            {
                "type": "object",
                "description": "A new customer.",
                "properties": {
                    "name": {"type": "string", "maxLength": 120},
                    "phone": {"type": "string", "maxLength": 60},
                    "email": {"type": "string", "format": "email", "maxLength": 254},
                    "address": {"type": "string", "maxLength": 1000},
                    "note": {"type": "string", "maxLength": 5000},
                },
                "required": ["name"],
                "additionalProperties": False,
            },
        ]
    }
)
class CustomerField(serializers.Field[Any, Any, Any, Any]):
    """A customer on record by its id, or the fields of a new one."""

    default_error_messages = {"does_not_exist": "There is no customer with this id."}

    def to_internal_value(self, data: Any) -> Customer | dict[str, Any]:
        if isinstance(data, Mapping):
            new = CustomerIn(data=data, context=self.context)
            refuse_unknown_keys(new, data)
            new.is_valid(raise_exception=True)
            return dict(new.validated_data)
        found = Customer.objects.filter(pk=checked_id(data)).first()
        if found is None:
            self.fail("does_not_exist")
        return found


class RuleIn(Whole):
    """Which faces count as area. What is left out is as the shop's settings say."""

    counts_top = serializers.BooleanField(required=False)
    counts_edges = serializers.BooleanField(required=False)
    counts_splash = serializers.BooleanField(required=False)
    deducts_cutouts = serializers.BooleanField(required=False)


class JobIn(serializers.Serializer[Any]):
    customer = CustomerField()
    title = serializers.CharField(max_length=160)
    purpose = serializers.ChoiceField(choices=Purpose.choices, default=Purpose.CUSTOMER)
    site = serializers.CharField(max_length=200, allow_blank=True, default="")
    note = serializers.CharField(max_length=5000, allow_blank=True, default="")
    due_on = DayField(allow_null=True, default=None)
    counting_rule = RuleIn(required=False)
    pieces = serializers.ListField(child=PieceIn(), default=list, max_length=MOST_PIECES_AT_ONCE)


class JobChange(serializers.Serializer[Any]):
    customer = RecordField(queryset=Customer.objects.all())
    title = serializers.CharField(max_length=160)
    purpose = serializers.ChoiceField(choices=Purpose.choices, default=Purpose.CUSTOMER)
    site = serializers.CharField(max_length=200, allow_blank=True, default="")
    note = serializers.CharField(max_length=5000, allow_blank=True, default="")
    due_on = DayField(allow_null=True, default=None)


class RuleOut(serializers.Serializer[Any]):
    """Which faces count as area on this job."""

    counts_top = serializers.BooleanField()
    counts_edges = serializers.BooleanField()
    counts_splash = serializers.BooleanField()
    deducts_cutouts = serializers.BooleanField()


class JobOut(serializers.ModelSerializer[Job]):
    """A job with its tops. area_sqft: of the tops that are not scrapped."""

    customer = CustomerOut()
    counting_rule = RuleOut(source="*")
    area_sqft = serializers.SerializerMethodField()
    pieces = PieceOut(many=True)

    class Meta:
        model = Job
        fields = (
            "id",
            "number",
            "title",
            "customer",
            "purpose",
            "site",
            "note",
            "due_on",
            "finished_on",
            "handed_over_on",
            "is_archived",
            "counting_rule",
            "area_sqft",
            "pieces",
        )

    @extend_schema_field(AreaField())
    def get_area_sqft(self, job: Job) -> str:
        return f"{finished_area(job.pieces.all()):.6f}"


class FinishIn(serializers.Serializer[Any]):
    finished_on = DayField()


class HandOverIn(serializers.Serializer[Any]):
    handed_over_on = DayField()


class ReasonIn(serializers.Serializer[Any]):
    reason = serializers.CharField(max_length=200)


def drafts_of(pieces: list[dict[str, Any]]) -> list[PieceDraft]:
    """The pieces of a validated body."""
    return [
        PieceDraft(
            name=piece["name"],
            count=piece["count"],
            area_source=piece["area_source"],
            measures={key: piece[key] for key in MEASURE_KEYS if key in piece},
        )
        for piece in pieces
    ]


def rule_of(given: dict[str, bool] | None, shops_own: CountingRule) -> CountingRule:
    """The counting rule of a validated body. Raises ValidationError where no face would count."""
    if not given:
        return shops_own
    chosen = {field: given.get(field, getattr(shops_own, field)) for field in RULE_FIELDS}
    try:
        return CountingRule(**chosen)
    except ValueError as error:
        detail = "Let at least one of top, edges and splash count as area."
        raise serializers.ValidationError({"counting_rule": [detail]}) from error
