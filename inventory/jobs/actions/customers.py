"""Customers: adding, editing, deleting."""

from collections.abc import Mapping
from typing import Any

from django.db import transaction

from inventory.jobs.actions.records import change, delete
from inventory.jobs.models import Customer
from inventory.shop.change_log import log_added
from inventory.shop.models import Person
from inventory.shop.numbers import next_number


@transaction.atomic
def add_customer(
    *, name: str, phone: str = "", email: str = "", address: str = "", note: str = "", by: Person
) -> Customer:
    """Add a customer. Two may bear the same name; their numbers tell them apart."""
    customer = Customer.objects.create(
        name=name, phone=phone, email=email, address=address, note=note, number=next_number("customer")
    )
    log_added(record=customer, by=by)
    return customer


@transaction.atomic
def edit_customer(*, customer: Customer, changes: Mapping[str, Any], by: Person) -> Customer:
    """Change a customer's fields."""
    return change(customer, changes=changes, by=by)


@transaction.atomic
def delete_customer(*, customer: Customer, by: Person) -> None:
    """Delete a customer without jobs. Raises InUse."""
    delete(customer, archive_instead="Archive the customer instead, so that it is offered no more.", by=by)
