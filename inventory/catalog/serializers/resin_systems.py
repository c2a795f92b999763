from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from drf_spectacular.utils import extend_schema_field
from rest_framework import serializers

from inventory.calc.quantities import QuantityError, Typed, convert
from inventory.calc.units import UNITS, Dimension
from inventory.catalog.actions import PartGiven
from inventory.catalog.models import Material, ResinSystem
from inventory.catalog.queries import ratio_warnings, shares
from inventory.catalog.serializers.fields import LONGEST_NAME, MOST_MINUTES, FigureField, MaterialName, Whole
from inventory.rest.fields import RecordField
from inventory.rest.quantities import QuantityField, plain, quantity_json
from inventory.shop.serializers import AsAnswered

MOST_PARTS = 6
MOST_HOURS = 10_000
COLDEST_C, HOTTEST_C = -40, 150
HIGHEST_SHARE = 100_000

WINDOW = {"type": "array", "items": {"type": ["string", "null"], "format": "decimal"}, "minItems": 2}
RATIO = {"type": "object", "additionalProperties": {"type": "string", "format": "decimal"}}


@extend_schema_field({**WINDOW, "maxItems": 2, "examples": [["4", "10"]]})
class WindowField(serializers.Field[Any, Any, Any, Any]):
    """A window in hours, `["4", "10"]`; the end may be null where it stays open, `["24", null]`."""

    default_error_messages = {"invalid": 'Give a window as its first and last hour, such as ["4", "10"], or null.'}

    def __init__(self, name: str, **kwargs: Any) -> None:
        super().__init__(source="*", **{"allow_null": True, **kwargs})
        self.columns = (f"{name}_from_h", f"{name}_to_h")

    def to_internal_value(self, data: Any) -> dict[str, Decimal | None]:
        if data is None:
            return dict.fromkeys(self.columns)
        if not isinstance(data, list) or len(data) != 2 or data[0] is None:
            self.fail("invalid")
        hours = FigureField(min_value=0, max_value=MOST_HOURS, allow_null=True)
        return dict(zip(self.columns, (hours.run_validation(end) for end in data), strict=True))

    def to_representation(self, value: Any) -> list[str | None] | None:
        first, last = (getattr(value, column) for column in self.columns)
        return None if first is None else [plain(first), None if last is None else plain(last)]


@extend_schema_field({**RATIO, "examples": [{"A": "2", "B": "1"}]})
class RatioField(serializers.Field[Any, Any, Any, Any]):
    """The share of each part, `{"A": "2", "B": "1"}`, or null."""

    default_error_messages = {"invalid": 'Give each part its share, such as {{"A": "2", "B": "1"}}.'}

    def to_internal_value(self, data: Any) -> dict[str, Decimal]:
        if not isinstance(data, Mapping) or not 1 <= len(data) <= MOST_PARTS:
            self.fail("invalid")
        share = FigureField(max_value=HIGHEST_SHARE)
        found, errors = {}, {}
        for role, amount in data.items():
            try:
                found[role] = share.run_validation(amount)
            except serializers.ValidationError as error:
                errors[role] = error.detail
        if errors:
            raise serializers.ValidationError(errors)
        return found

    def get_attribute(self, instance: ResinSystem) -> Any:
        return shares(instance.parts.all(), (self.field_name or "").removeprefix("ratio_")) or None

    def to_representation(self, value: Mapping[str, Decimal]) -> dict[str, str]:
        return {role: plain(share) for role, share in value.items()}


class VolumeField(QuantityField):
    """A volume, kept in mL."""

    default_error_messages = {"no_volume": "Give a volume, such as 1 gal or 4 l."}

    def to_internal_value(self, data: Any) -> Any:
        typed: Typed = super().to_internal_value(data)
        if typed.unit not in UNITS or UNITS[typed.unit].dimension is not Dimension.VOLUME:
            self.fail("no_volume")
        try:
            return convert(typed, to="ml")
        except QuantityError as error:
            raise serializers.ValidationError(str(error), code="invalid") from error

    def to_representation(self, value: Any) -> dict[str, str]:
        return quantity_json(value, "ml")


class PotLife(Whole):
    """For how many minutes so much mixed resin, at that temperature when mixed, can be poured."""

    minutes = serializers.IntegerField(source="pot_life_minutes", min_value=1, max_value=MOST_MINUTES)
    mass_g = FigureField(source="pot_life_mass_g", max_value=1_000_000)
    at_c = FigureField(source="pot_life_at_c", min_value=COLDEST_C, max_value=HOTTEST_C)

    def to_internal_value(self, data: Any) -> Any:
        if data is None:
            return {"pot_life_minutes": None, "pot_life_mass_g": None, "pot_life_at_c": None}
        return super().to_internal_value(data)

    def to_representation(self, instance: ResinSystem) -> Any:
        return None if instance.pot_life_minutes is None else super().to_representation(instance)


class PartIn(Whole):
    role = serializers.RegexField(r"^[A-Z]\Z", error_messages={"invalid": "Call a part A, B, C …"})
    material = RecordField(queryset=Material.objects.all())

    def validate(self, attrs: dict[str, Any]) -> Any:
        return PartGiven(**attrs)


class PartOut(serializers.Serializer[Any]):
    role = serializers.CharField()
    material = MaterialName()


class DataSheet(serializers.Serializer[Any]):
    """The maker's figures, as the shop typed them; null where the sheet says nothing. Windows in hours."""

    tolerance_percent = FigureField(min_value=0, max_value=100, allow_null=True, default=None)
    pot_life = PotLife(source="*", allow_null=True, required=False)
    working_minutes = serializers.IntegerField(min_value=1, max_value=MOST_MINUTES, allow_null=True, default=None)
    min_temp_c = FigureField(min_value=COLDEST_C, max_value=HOTTEST_C, allow_null=True, default=None)
    max_temp_c = FigureField(min_value=COLDEST_C, max_value=HOTTEST_C, allow_null=True, default=None)
    max_humidity_percent = FigureField(max_value=100, allow_null=True, default=None)
    max_layer_in = FigureField(max_value=12, allow_null=True, default=None)
    recoat_tacky_h = WindowField("recoat_tacky", required=False)
    recoat_sanded_h = WindowField("recoat_sanded", required=False)
    max_bucket = VolumeField(source="max_bucket_ml", is_above_zero=True, allow_null=True, default=None)
    max_colourant_percent = FigureField(min_value=0, max_value=100, allow_null=True, default=None)
    paint_dry_h = FigureField(min_value=0, max_value=MOST_HOURS, allow_null=True, default=None)


class ResinSystemIn(DataSheet):
    """Parts that cure together. One ratio at least: by volume, by mass, or both as the data sheet has them."""

    name = serializers.CharField(max_length=LONGEST_NAME)
    parts: Any = serializers.ListSerializer(child=PartIn(), min_length=2, max_length=MOST_PARTS)
    ratio_by_volume = RatioField(allow_null=True, default=None)
    ratio_by_mass = RatioField(allow_null=True, default=None)


class ResinSystemOut(AsAnswered, DataSheet):
    """warnings: where the two ratios disagree through the densities by more than the tolerance (1 % without one)."""

    id = serializers.IntegerField()
    number = serializers.IntegerField(help_text="The short number to say aloud.")
    name = serializers.CharField()
    parts = PartOut(many=True)
    ratio_by_volume = RatioField(allow_null=True)
    ratio_by_mass = RatioField(allow_null=True)
    warnings = serializers.SerializerMethodField()
    is_archived = serializers.BooleanField()
    version = serializers.IntegerField()

    def get_warnings(self, system: ResinSystem) -> list[str]:
        return ratio_warnings(system)
