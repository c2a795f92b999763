from typing import Any

from rest_framework import serializers


class PlaceIn(serializers.Serializer[Any]):
    """is_archived: no longer offered."""

    name = serializers.CharField(max_length=80)
    is_archived = serializers.BooleanField(required=False)


class PlaceOut(serializers.Serializer[Any]):
    id = serializers.IntegerField()
    number = serializers.IntegerField()
    name = serializers.CharField()
    is_archived = serializers.BooleanField()


class PlaceName(serializers.Serializer[Any]):
    id = serializers.IntegerField()
    name = serializers.CharField()
