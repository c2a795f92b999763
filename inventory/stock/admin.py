"""Lots and the ledger, to look at."""

from django.contrib import admin

from inventory.shop.admin import RowsToLookAt, ToLookAt
from inventory.stock.models import (
    Balance,
    Blend,
    Lot,
    Movement,
    Place,
    Posting,
    StatusEvent,
    StockCount,
    StockCountLine,
)


class BalanceRows(RowsToLookAt):
    model = Balance


class StatusRows(RowsToLookAt):
    model = StatusEvent
    fk_name = "lot"


class MovementRows(RowsToLookAt):
    model = Movement
    fk_name = "posting"


class CountLineRows(RowsToLookAt):
    model = StockCountLine


@admin.register(Place)
class PlaceAdmin(ToLookAt):
    list_display = ["number", "name", "is_archived"]


@admin.register(Lot)
class LotAdmin(ToLookAt):
    list_display = ["number", "material", "lot_number", "status", "received_on", "use_by"]
    list_select_related = ["material"]
    list_filter = ["status", "origin"]
    search_fields = ["lot_number", "material__name"]
    inlines = [BalanceRows, StatusRows]


@admin.register(Posting)
class PostingAdmin(ToLookAt):
    list_display = ["id", "kind", "by", "recorded_at", "reason"]
    list_select_related = ["by"]
    list_filter = ["kind"]
    inlines = [MovementRows]


@admin.register(StockCount)
class StockCountAdmin(ToLookAt):
    list_display = ["number", "place", "counted_at", "by"]
    list_select_related = ["place", "by"]
    inlines = [CountLineRows]


@admin.register(Blend)
class BlendAdmin(ToLookAt):
    list_display = ["number", "lot", "made_at", "by"]
    list_select_related = ["lot", "by"]
