"""What needs a hand, in JSON."""

from typing import Any

from rest_framework import serializers

from inventory.reports.queries.today import Act, Need
from inventory.reports.serializers.fields import LinkOut


class NeedOut(serializers.Serializer[Any]):
    """link: the record that the act is on. act: what settles the row."""

    kind = serializers.ChoiceField(Need.choices)
    title = serializers.CharField()
    detail = serializers.CharField()
    on = serializers.DateField(allow_null=True)
    link = LinkOut(source="*")
    act = serializers.ChoiceField(Act.choices)


class TodayOut(serializers.Serializer[Any]):
    """The most pressing first."""

    on = serializers.DateField()
    rows = NeedOut(many=True)
