"""Suppliers and how long they take."""

from contextlib import AbstractContextManager
from typing import TypedDict, Unpack

from django.db import transaction

from inventory.catalog.actions.shelving import named_once
from inventory.catalog.models import Supplier
from inventory.shop.change_log import log_added
from inventory.shop.editing import edit, lock_for_edit
from inventory.shop.models import Person
from inventory.shop.numbers import next_number

LOGGED = ("name", "lead_time_days")


class SupplierFields(TypedDict, total=False):
    """lead_time_days: from order to delivery, in calendar days."""

    name: str
    lead_time_days: int
    phone: str
    email: str
    note: str


@transaction.atomic
def add_supplier(*, by: Person, **fields: Unpack[SupplierFields]) -> Supplier:
    """Put a supplier on the list. Raises BadBody where one has the name already."""
    with taken_name(fields.get("name", "")):
        supplier = Supplier.objects.create(number=next_number("supplier"), **fields)
    log_added(record=supplier, by=by)
    return supplier


@transaction.atomic
def change_supplier(*, supplier: Supplier, by: Person, **fields: Unpack[SupplierFields]) -> Supplier:
    """Change a supplier. Raises BadBody where one has the name already."""
    locked = lock_for_edit(supplier)
    with taken_name(fields.get("name", "")):
        return edit(locked, fields, by=by, logged=LOGGED)


def taken_name(name: str) -> AbstractContextManager[None]:
    return named_once("/name", f"There is a supplier called {name} already. Use that one, or choose another name.")
