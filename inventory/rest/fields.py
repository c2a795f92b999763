"""Serializer fields with the shop's bounds: money, days, moments, and references to records."""

from datetime import UTC, date, datetime
from decimal import Decimal
from typing import Any

from drf_spectacular.types import OpenApiTypes
from drf_spectacular.utils import extend_schema_field
from rest_framework import serializers

MAX_MONEY = Decimal("9999999.9999")
MONEY_PLACES = 4
EARLIEST_YEAR, LATEST_YEAR = 1970, 2199
MAX_ID = 2**63 - 1


class MoneyField(serializers.DecimalField):
    """Money in the shop's currency: a string of at most four places, up to 9,999,999.9999 either way.

    Give `min_value=0` where it cannot be negative.
    """

    def __init__(self, **kwargs: Any) -> None:
        whole_digits = len(str(int(MAX_MONEY)))
        super().__init__(
            max_digits=whole_digits + MONEY_PLACES, decimal_places=MONEY_PLACES, coerce_to_string=True, **kwargs
        )


class DayField(serializers.DateField):
    """A day of the shop, YYYY-MM-DD, between 1970 and 2199."""

    default_error_messages = {
        "invalid": "Write the day as YYYY-MM-DD.",
        "out_of_range": f"The year lies between {EARLIEST_YEAR} and {LATEST_YEAR}.",
    }

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(input_formats=["iso-8601"], **kwargs)

    def to_internal_value(self, value: Any) -> date:
        day = super().to_internal_value(value)
        if not EARLIEST_YEAR <= day.year <= LATEST_YEAR:
            self.fail("out_of_range")
        return day


class MomentField(serializers.DateTimeField):
    """A moment, ISO 8601 with its offset from UTC, between 1970 and 2199; kept and answered in UTC."""

    default_error_messages = {
        "invalid": "Write the moment as in 2026-05-31T14:30:00-07:00.",
        "no_offset": "Say the offset from UTC too, as in 2026-05-31T14:30:00-07:00 or …Z.",
        "out_of_range": f"The year lies between {EARLIEST_YEAR} and {LATEST_YEAR}.",
    }

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(default_timezone=UTC, **kwargs)

    def to_internal_value(self, value: Any) -> datetime:
        if not isinstance(value, str):
            self.fail("invalid")
        try:
            moment = datetime.fromisoformat(value)
        except ValueError:
            self.fail("invalid")
        if "T" not in value.upper() and " " not in value:
            self.fail("invalid")
        if moment.tzinfo is None:
            self.fail("no_offset")
        if not EARLIEST_YEAR <= moment.year <= LATEST_YEAR:
            self.fail("out_of_range")
        return moment.astimezone(UTC)


@extend_schema_field(OpenApiTypes.INT64)
class RecordField(serializers.PrimaryKeyRelatedField[Any]):
    """A record by its id, a whole number; `RecordField(queryset=Material.objects.all())`.

    Give `many=True` only for few: each costs a statement.
    """

    default_error_messages = {
        "does_not_exist": "There is no such record: {pk_value}.",
        "incorrect_type": "Give the id, a whole number.",
    }

    def to_internal_value(self, data: Any) -> Any:
        return super().to_internal_value(checked_id(data))


class IdField(serializers.IntegerField):
    """The id of a record that the action looks up itself, many in one statement."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**{"min_value": 1, "max_value": MAX_ID, **kwargs})

    def to_internal_value(self, data: Any) -> int:
        return int(super().to_internal_value(checked_id(data)))


def checked_id(data: Any) -> int:
    if isinstance(data, str) and data.isascii() and data.isdigit() and len(data) <= len(str(MAX_ID)):
        data = int(data)
    if isinstance(data, bool) or not isinstance(data, int) or not 1 <= data <= MAX_ID:
        raise serializers.ValidationError("Give the id, a whole number.", code="invalid")
    return data


class PeriodQuery(serializers.Serializer[Any]):
    """`?from=&to=`: days of the shop, both included; validated as `first_day` and `last_day`, None where absent."""

    def get_fields(self) -> dict[str, Any]:
        first = DayField(required=False, default=None, source="first_day", help_text="First day, included.")
        last = DayField(required=False, default=None, source="last_day", help_text="Last day, included.")
        return {**super().get_fields(), "from": first, "to": last}

    def validate(self, attrs: dict[str, Any]) -> dict[str, Any]:
        first, last = attrs["first_day"], attrs["last_day"]
        if first and last and last < first:
            raise serializers.ValidationError({"to": "The last day lies before the first."})
        return attrs
