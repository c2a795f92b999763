"""Pours to look at; they are planned, completed and mended through the app, which keeps the ledger."""

from typing import Any

from django.contrib import admin
from django.http import HttpRequest

from inventory.pours.models import PlannedUsage, Pour, PourPiece, Usage


class ReadOnly:
    """Nothing is added, changed or deleted here."""

    def has_add_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return False

    def has_change_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return False

    def has_delete_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return False


class Pieces(ReadOnly, admin.TabularInline[Any, Any]):
    model = PourPiece


class Planned(ReadOnly, admin.TabularInline[Any, Any]):
    model = PlannedUsage


class Used(ReadOnly, admin.TabularInline[Any, Any]):
    model = Usage
    fk_name = "pour"


@admin.register(Pour)
class PourAdmin(ReadOnly, admin.ModelAdmin[Any]):
    list_display = ["number", "layer", "status", "place", "planned_for", "poured_at", "by"]
    list_filter = ["status", "layer"]
    list_select_related = ["place", "by"]
    inlines = [Pieces, Planned, Used]
