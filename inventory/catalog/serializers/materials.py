from typing import Any

from drf_spectacular.utils import extend_schema_field
from rest_framework import serializers

from inventory.catalog.actions import MeasureGiven
from inventory.catalog.hazards import MOST_CODES, is_hazard_code, statement_of
from inventory.catalog.models import Material, MaterialKind, StockUnit, Supplier
from inventory.catalog.serializers.fields import (
    LONGEST_NAME,
    LONGEST_NOTE,
    MOST_DAYS,
    FigureField,
    SupplierName,
    TypedQuantity,
    Whole,
)
from inventory.rest.fields import RecordField
from inventory.rest.quantities import QuantityField

MOST_MEASURES = 40
HEAVIEST_LIQUID = 30  # g/mL; the densest there is weighs less than 23


class MeasureIn(Whole):
    """One of the material's own measures, such as a pump. empty_g: weight of the empty container, in grams."""

    name = serializers.CharField(max_length=30)
    equals = QuantityField(is_above_zero=True)
    empty_g = FigureField(min_value=0, max_value=1_000_000, allow_null=True, default=None)

    def validate(self, attrs: dict[str, Any]) -> Any:
        return MeasureGiven(**attrs)


class MeasureOut(serializers.Serializer[Any]):
    """equals: in the stock unit."""

    name = serializers.CharField()
    equals = QuantityField(source="quantity", unit="material.stock_unit")
    as_typed = TypedQuantity(source="*")
    empty_g = FigureField(max_value=1_000_000, allow_null=True)


class HazardCodeField(serializers.CharField):
    """H and three digits, or EUH and three digits."""

    default_error_messages = {"odd": "Write one hazard code of the label, such as H317 or EUH208."}

    def to_internal_value(self, data: Any) -> str:
        code = super().to_internal_value(data)
        if not is_hazard_code(code):
            self.fail("odd")
        return code


class MaterialIn(serializers.Serializer[Any]):
    """Something bought, kept and used up.

    density_g_per_ml: of a liquid. grams_per_tsp: of a powder, a level teaspoon of it loose, weighed.
    """

    code = serializers.CharField(max_length=40)
    name = serializers.CharField(max_length=LONGEST_NAME)
    kind = serializers.ChoiceField(MaterialKind.choices)
    stock_unit = serializers.ChoiceField(StockUnit.choices)
    density_g_per_ml = FigureField(max_value=HEAVIEST_LIQUID, allow_null=True, default=None)
    grams_per_tsp = FigureField(max_value=100, allow_null=True, default=None)
    measures: Any = serializers.ListSerializer(child=MeasureIn(), default=list, max_length=MOST_MEASURES)
    shelf_life_days = serializers.IntegerField(min_value=1, max_value=MOST_DAYS, allow_null=True, default=None)
    open_life_days = serializers.IntegerField(min_value=1, max_value=MOST_DAYS, allow_null=True, default=None)
    tracks_lots = serializers.BooleanField(default=True)
    single_lot_per_job = serializers.BooleanField(default=False)
    hazard_codes = serializers.ListField(child=HazardCodeField(max_length=8), default=list, max_length=MOST_CODES)
    cautions = serializers.CharField(max_length=LONGEST_NOTE, allow_blank=True, default="")
    swatch = serializers.RegexField(
        r"^#[0-9a-fA-F]{6}\Z",
        allow_blank=True,
        default="",
        error_messages={"invalid": "Write the colour as # and six hexadecimal digits, such as #1f6f5c."},
    )
    main_supplier = RecordField(queryset=Supplier.objects.all(), allow_null=True, default=None)

    def validate_hazard_codes(self, codes: list[str]) -> list[str]:
        return list(dict.fromkeys(codes))


class HazardOut(serializers.Serializer[Any]):
    code = serializers.CharField()
    statement = serializers.CharField()


class MaterialOut(serializers.Serializer[Any]):
    """hazards: the codes again, with the words of the label. is_in_use: it has been in stock; its unit is fixed."""

    id = serializers.IntegerField()
    number = serializers.IntegerField(help_text="The short number to say aloud.")
    code = serializers.CharField()
    name = serializers.CharField()
    kind = serializers.ChoiceField(MaterialKind.choices)
    stock_unit = serializers.ChoiceField(StockUnit.choices)
    density_g_per_ml = FigureField(max_value=HEAVIEST_LIQUID, allow_null=True)
    grams_per_tsp = FigureField(max_value=100, allow_null=True)
    measures = MeasureOut(many=True)
    shelf_life_days = serializers.IntegerField(allow_null=True)
    open_life_days = serializers.IntegerField(allow_null=True)
    tracks_lots = serializers.BooleanField()
    single_lot_per_job = serializers.BooleanField()
    hazard_codes = serializers.ListField(child=serializers.CharField())
    hazards = serializers.SerializerMethodField()
    cautions = serializers.CharField()
    swatch = serializers.CharField()
    main_supplier = SupplierName(allow_null=True)
    is_in_use = serializers.BooleanField()
    is_archived = serializers.BooleanField()
    version = serializers.IntegerField()

    @extend_schema_field(HazardOut(many=True))
    def get_hazards(self, material: Material) -> list[dict[str, str]]:
        return [{"code": code, "statement": statement_of(code)} for code in material.hazard_codes]
