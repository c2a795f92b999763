from typing import Any

from rest_framework import serializers

from inventory.catalog.serializers.fields import LONGEST_NAME, LONGEST_NOTE


class SupplierIn(serializers.Serializer[Any]):
    """lead_time_days: calendar days from order to delivery."""

    name = serializers.CharField(max_length=LONGEST_NAME)
    lead_time_days = serializers.IntegerField(min_value=0, max_value=730)
    phone = serializers.CharField(max_length=60, allow_blank=True, default="")
    email = serializers.EmailField(max_length=254, allow_blank=True, default="")
    note = serializers.CharField(max_length=LONGEST_NOTE, allow_blank=True, default="")


class SupplierOut(serializers.Serializer[Any]):
    id = serializers.IntegerField()
    number = serializers.IntegerField(help_text="The short number to say aloud.")
    name = serializers.CharField()
    lead_time_days = serializers.IntegerField()
    phone = serializers.CharField()
    email = serializers.CharField()
    note = serializers.CharField()
    is_archived = serializers.BooleanField()
    version = serializers.IntegerField()
