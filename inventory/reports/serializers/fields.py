"""Fields that the reports share: sums that may be larger than one line's bound, links, names."""

from typing import Any

from rest_framework import serializers

LARGEST_SUM_DIGITS = 24


class MoneySum(serializers.DecimalField):
    """Money in the shop's currency, four places."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(max_digits=LARGEST_SUM_DIGITS, decimal_places=4, coerce_to_string=True, **kwargs)


class AreaSum(serializers.DecimalField):
    """Square feet, six places."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(max_digits=LARGEST_SUM_DIGITS, decimal_places=6, coerce_to_string=True, **kwargs)


class PlainNumber(serializers.DecimalField):
    """A number without unit, six places."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(max_digits=LARGEST_SUM_DIGITS, decimal_places=6, coerce_to_string=True, **kwargs)


class LinkOut(serializers.Serializer[Any]):
    """The record that a row is about."""

    noun = serializers.CharField()
    id = serializers.IntegerField()


class OrderedQuery(serializers.Serializer[Any]):
    """`?ordering=-cost,label`: by any column, most important first; a minus sign turns one around."""

    ordering = serializers.CharField(
        required=False,
        allow_blank=True,
        default="",
        max_length=200,
        help_text="Columns to order by, most important first; a minus sign turns one around.",
    )


class ReportedMaterial(serializers.Serializer[Any]):
    """A material, as rows that are about it name it."""

    id = serializers.IntegerField(source="material")
    name = serializers.CharField(source="material_name")


class ReportedLot(serializers.Serializer[Any]):
    """A lot, as a trace shows it."""

    id = serializers.IntegerField()
    number = serializers.IntegerField()
    lot_number = serializers.CharField()
    status = serializers.CharField()
    received_on = serializers.DateField()
    material = ReportedMaterial(source="*")
