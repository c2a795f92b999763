"""Customers, jobs and pieces to look at; they are changed through the app, which keeps the change log."""

from typing import Any

from django.contrib import admin
from django.http import HttpRequest

from inventory.jobs.models import Customer, Job, Piece


class ReadOnly(admin.ModelAdmin[Any]):
    def has_add_permission(self, request: HttpRequest) -> bool:
        return False

    def has_change_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return False

    def has_delete_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return False


@admin.register(Customer)
class CustomerAdmin(ReadOnly):
    list_display = ["number", "name", "phone", "is_archived"]
    search_fields = ["name"]


@admin.register(Job)
class JobAdmin(ReadOnly):
    list_display = ["number", "title", "customer", "purpose", "due_on", "finished_on"]
    list_select_related = ["customer"]
    search_fields = ["title", "customer__name"]


@admin.register(Piece)
class PieceAdmin(ReadOnly):
    list_display = ["number", "name", "job", "area_sqft", "area_source", "is_scrapped"]
    list_select_related = ["job"]
    search_fields = ["name", "job__title"]
