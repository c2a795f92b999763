"""Places where stock lies: put on the list, renamed, archived."""

from typing import Any

from django.db import IntegrityError, transaction
from django.db.models import ProtectedError

from inventory.rest.problems import AlreadyExists, InUse
from inventory.shop.change_log import log_added, log_deleted
from inventory.shop.editing import edit, lock_for_edit
from inventory.shop.models import Person
from inventory.shop.numbers import next_number
from inventory.stock.models import Balance, Place


@transaction.atomic
def add_place(*, name: str, by: Person) -> Place:
    """Put a place on the list. Raises AlreadyExists for a name that another place bears."""
    try:
        with transaction.atomic():
            place = Place.objects.create(name=name, number=next_number("place"))
    except IntegrityError as error:
        raise _taken(name) from error
    log_added(record=place, by=by)
    return place


@transaction.atomic
def change_place(*, place: Place, changes: dict[str, Any], by: Person) -> Place:
    """Rename a place, archive it or put it back on the list. Raises AlreadyExists, InUse while stock lies there."""
    place = lock_for_edit(place)
    if (
        changes.get("is_archived")
        and not place.is_archived
        and Balance.objects.filter(place=place, quantity__gt=0).exists()
    ):
        raise InUse(
            f"Stock lies at {place}. Move it away first.",
            remedies=[{"kind": "move", "text": "Move the lots that lie there to another place."}],
        )
    try:
        with transaction.atomic():
            return edit(place, changes, by=by, logged=("name", "is_archived"))
    except IntegrityError as error:
        raise _taken(changes.get("name", place.name)) from error


@transaction.atomic
def delete_place(*, place: Place, by: Person) -> None:
    """Take a place off the list where nothing ever lay. Raises InUse."""
    place = lock_for_edit(place)
    log_deleted(record=place, by=by)
    try:
        place.delete()
    except ProtectedError as error:
        raise InUse(
            f"Stock lay at {place} once, and its history needs it. Archive it instead.",
            remedies=[{"kind": "archive", "text": "Archive it: it is no longer offered, and its history stays."}],
        ) from error


def _taken(name: str) -> AlreadyExists:
    detail = f"There is a place called {name} already. Use that one, or choose another name."
    return AlreadyExists(detail, errors=[{"pointer": "/name", "detail": detail}])
