"""The admin pages: for owners, to look. Every change is made by an action, so nothing is edited here."""

from typing import Any

from django.contrib import admin
from django.http import HttpRequest

from inventory.rest.problems import Role
from inventory.shop.models import Change, Person, Shop

admin.site.site_header = admin.site.site_title = "Lot & Pour"
admin.site.index_title = "Records, to look at"


class OwnersLook:
    """Owners look; nobody adds, changes or deletes."""

    def has_view_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return request.user.is_active and getattr(request.user, "role", None) == Role.OWNER

    def has_add_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return False

    def has_change_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return False

    def has_delete_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return False


class ToLookAt(OwnersLook, admin.ModelAdmin[Any]):
    """The records of a noun."""

    def has_module_permission(self, request: HttpRequest) -> bool:
        return self.has_view_permission(request)


class RowsToLookAt(OwnersLook, admin.TabularInline[Any, Any]):
    """The rows that belong to a record."""

    extra = 0


@admin.register(Shop)
class ShopAdmin(ToLookAt):
    list_display = ["name", "town", "currency", "time_zone"]


@admin.register(Person)
class PersonAdmin(ToLookAt):
    list_display = ["username", "name", "role", "is_active", "last_login"]
    list_filter = ["role", "is_active"]
    search_fields = ["username", "name"]
    exclude = ["password", "groups", "user_permissions"]


@admin.register(Change)
class ChangeAdmin(ToLookAt):
    list_display = ["at", "by", "noun", "record", "field", "before", "after"]
    list_filter = ["noun"]
    list_select_related = ["by"]
