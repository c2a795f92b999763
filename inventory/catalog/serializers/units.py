from typing import Any

from rest_framework import serializers

from inventory.calc.rounding import half_even
from inventory.calc.units import Dimension, Unit

FACTOR_PLACES = 12
BASE_UNITS = {
    Dimension.VOLUME: "ml",
    Dimension.MASS: "g",
    Dimension.LENGTH: "ft",
    Dimension.AREA: "sqft",
    Dimension.COUNT: "each",
}


class UnitOut(serializers.Serializer[Any]):
    """A unit: how the API names it, how it is written, and what one of it is in the base unit of its dimension.

    factor: to twelve places, for a preview; amounts are converted here, exactly.
    """

    code = serializers.CharField()
    name = serializers.CharField()
    label = serializers.CharField()  # type: ignore[assignment]  # the key that clients read; not the field's own label
    dimension = serializers.ChoiceField([(dimension.value, dimension.value) for dimension in Dimension])
    base_unit = serializers.SerializerMethodField()
    factor = serializers.SerializerMethodField()

    def get_base_unit(self, unit: Unit) -> str:
        return BASE_UNITS[unit.dimension]

    def get_factor(self, unit: Unit) -> str:
        return f"{half_even(unit.factor, FACTOR_PLACES):f}"
