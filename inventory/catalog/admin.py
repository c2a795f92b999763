from django.contrib import admin

from inventory.catalog.models import Material, Measure, Pack, PackContent, ResinPart, ResinSystem, Supplier
from inventory.shop.admin import RowsToLookAt, ToLookAt


class Measures(RowsToLookAt):
    model = Measure


class Contents(RowsToLookAt):
    model = PackContent


class Parts(RowsToLookAt):
    model = ResinPart


@admin.register(Supplier)
class SupplierAdmin(ToLookAt):
    list_display = ["number", "name", "lead_time_days", "is_archived"]
    search_fields = ["name"]


@admin.register(Material)
class MaterialAdmin(ToLookAt):
    list_display = ["number", "code", "name", "kind", "stock_unit", "is_in_use", "is_archived"]
    list_filter = ["kind", "is_archived"]
    search_fields = ["code", "name"]
    inlines = [Measures]


@admin.register(Pack)
class PackAdmin(ToLookAt):
    list_display = ["number", "name", "supplier", "price", "is_archived"]
    list_select_related = ["supplier"]
    search_fields = ["name"]
    inlines = [Contents]


@admin.register(ResinSystem)
class ResinSystemAdmin(ToLookAt):
    list_display = ["number", "name", "is_archived"]
    search_fields = ["name"]
    inlines = [Parts]
