"""Set the shop up, and change its settings."""

import re
from typing import TypedDict, Unpack
from zoneinfo import available_timezones

from django.db import transaction

from inventory.rest.problems import Role
from inventory.shop.actions.people import add_person
from inventory.shop.editing import edit, lock_for_edit
from inventory.shop.models import Person, Shop
from inventory.shop.problems import AlreadySetUp, bad_fields

CURRENCY = re.compile(r"[A-Z]{3}")


class Settings(TypedDict, total=False):
    """The shop's settings by the names of their columns."""

    name: str
    town: str
    currency: str
    time_zone: str
    volume_unit: str
    mass_unit: str
    area_unit: str
    temperature_unit: str
    counts_top: bool
    counts_edges: bool
    counts_splash: bool
    deducts_cutouts: bool
    poison_help: str


@transaction.atomic
def set_up_shop(*, owner_name: str, username: str, password: str, **settings: Unpack[Settings]) -> Person:
    """Make the shop and its first owner, while there is nobody yet. Returns the owner.

    Raises AlreadySetUp once there is any person, BadBody for settings, a username or a password that cannot be.
    """
    lock_shop()
    if Person.objects.exists():
        raise AlreadySetUp("The shop has its people already. Sign in; an owner adds further people.")
    owner = add_person(username=username, name=owner_name, role=Role.OWNER, password=password, by=None)
    change_settings(by=owner, **settings)
    return owner


@transaction.atomic
def change_settings(*, by: Person, **settings: Unpack[Settings]) -> Shop:
    """Change the shop's settings. Posted rows keep the day and the money they were recorded with.

    Raises BadBody for a value that cannot be.
    """
    refuse_unusable(settings)
    return edit(lock_shop(), settings, by=by, logged=settings.keys())


def lock_shop() -> Shop:
    """The one row of settings, made where there is none, locked until the transaction ends."""
    return lock_for_edit(Shop.objects.get_or_create(pk=1)[0])


def refuse_unusable(settings: Settings) -> None:
    errors = []
    if "name" in settings and not settings["name"].strip():
        errors.append(("/name", "Give the shop a name."))
    if "time_zone" in settings and settings["time_zone"] not in available_timezones():
        errors.append(("/time_zone", "Give a time zone by its IANA name, such as America/Chicago or UTC."))
    if "currency" in settings and not CURRENCY.fullmatch(settings["currency"]):
        errors.append(("/currency", "Give the currency by the three capital letters of ISO 4217, such as USD."))
    if errors:
        raise bad_fields(errors)
