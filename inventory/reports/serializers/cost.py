"""Cost per square foot in JSON."""

from typing import Any

from rest_framework import serializers

from inventory.jobs.models import Purpose
from inventory.pours.models import Layer
from inventory.reports.queries.cost_sums import EVERY_PURPOSE, GroupBy, State
from inventory.reports.serializers.fields import AreaSum, LinkOut, MoneySum, OrderedQuery
from inventory.rest.fields import PeriodQuery
from inventory.rest.quantities import QuantityField

ONE_OF = "There is no {what} {{input}} here. There are: {names}."


def known_ones(what: str, names: list[str]) -> dict[str, Any]:
    return {"invalid_choice": ONE_OF.format(what=what, names=", ".join(names))}


class CostScope(PeriodQuery):
    """Which tops, grouped how. from, to: the days on which jobs were finished; unfinished jobs have none, and are taken
    as they stand whatever these say."""

    group_by = serializers.ChoiceField(
        GroupBy.choices, default=GroupBy.JOB, error_messages=known_ones("grouping by", GroupBy.values)
    )
    purpose = serializers.ChoiceField(
        [*Purpose.choices, (EVERY_PURPOSE, "Every purpose")],
        default=Purpose.CUSTOMER,
        error_messages=known_ones("purpose", [*Purpose.values, EVERY_PURPOSE]),
    )

    def validate_group_by(self, value: str) -> GroupBy:
        return GroupBy(value)

    def validate_state(self, value: str) -> State:
        return State(value)


class CostQuery(CostScope, OrderedQuery):
    state = serializers.ChoiceField(
        State.choices, default=State.FINISHED, error_messages=known_ones("state", State.values)
    )


class CostLinesQuery(CostScope):
    """One row of cost per square foot, by its key and state."""

    key = serializers.CharField(max_length=20, help_text="The key of a row, as the report gave it.")
    state = serializers.ChoiceField(
        State.choices[:2], default=State.FINISHED, error_messages=known_ones("state", State.values[:2])
    )


class CostRowOut(serializers.Serializer[Any]):
    """Materials over area. cost: waste inside, redone coats not. reason: why there is no cost_per_sqft.

    movements: the address of the lines that sum to cost and redo_cost.
    """

    key = serializers.CharField()
    label = serializers.CharField()  # type: ignore[assignment]
    state = serializers.ChoiceField(State.choices)
    area_sqft = AreaSum()
    tops = serializers.IntegerField()
    scrapped = serializers.IntegerField()
    cost = MoneySum(allow_null=True)
    cost_per_sqft = MoneySum(allow_null=True)
    by_kind = serializers.DictField(child=MoneySum(), help_text="Kind of material → cost.")
    waste_cost = MoneySum(allow_null=True)
    waste_by_kind = serializers.DictField(child=MoneySum(), help_text="Kind of material → what was wasted, in money.")
    redo_cost = MoneySum()
    notes = serializers.ListField(child=serializers.CharField())
    reason = serializers.CharField(allow_null=True)
    link = LinkOut(allow_null=True)
    movements = serializers.CharField(allow_null=True)


class CostReportOut(serializers.Serializer[Any]):
    """total: of all rows; with state=all of the finished ones, and unfinished_total of the others."""

    rows = CostRowOut(many=True)
    total = CostRowOut()
    unfinished_total = CostRowOut(allow_null=True)


class MaterialCostOut(serializers.Serializer[Any]):
    material = serializers.IntegerField()
    name = serializers.CharField()
    kind = serializers.CharField()
    cost = MoneySum()
    redo_cost = MoneySum()


class CostLineOut(serializers.Serializer[Any]):
    """A line of the ledger, with what later lines corrected of it. share: what of its value falls on the row's tops."""

    movement = serializers.IntegerField()
    pour = serializers.IntegerField()
    pour_number = serializers.IntegerField()
    layer = serializers.ChoiceField(Layer.choices)
    is_redo = serializers.BooleanField()
    happened_on = serializers.DateField()
    lot = serializers.IntegerField()
    lot_number = serializers.CharField()
    material = serializers.IntegerField()
    material_name = serializers.CharField()
    kind = serializers.CharField()
    quantity = QuantityField(unit="unit")
    value = MoneySum()
    share = MoneySum()


class CostLinesOut(serializers.Serializer[Any]):
    """cost, redo_cost: the row's figures, the sums of the lines' shares. materials: the dearest first."""

    cost = MoneySum()
    redo_cost = MoneySum()
    materials = MaterialCostOut(many=True)
    lines = CostLineOut(many=True)
