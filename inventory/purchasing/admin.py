from django.contrib import admin

from inventory.purchasing.models import Charge, Delivery, DeliveryLine
from inventory.shop.admin import RowsToLookAt, ToLookAt


class Lines(RowsToLookAt):
    model = DeliveryLine


class Charges(RowsToLookAt):
    model = Charge


@admin.register(Delivery)
class DeliveryAdmin(ToLookAt):
    list_display = ["number", "supplier", "received_on", "place", "reference", "by"]
    list_select_related = ["supplier", "place", "by"]
    search_fields = ["reference", "supplier__name"]
    inlines = [Lines, Charges]
