"""What the nouns of the catalogue share: taken off the list, put back, deleted while unused, named once."""

from collections.abc import Iterator
from contextlib import contextmanager
from typing import TypeVar

from django.db import IntegrityError, models, transaction

from inventory.catalog.models import Material, Pack, ResinSystem, Supplier
from inventory.rest.problems import InUse
from inventory.shop.change_log import log_deleted
from inventory.shop.editing import edit, lock_for_edit
from inventory.shop.models import Person
from inventory.shop.problems import bad_field

Noun = TypeVar("Noun", Material, Pack, ResinSystem, Supplier)
ARCHIVE = {"kind": "archive", "text": "Archive it: it is no longer offered, and its history stays."}


@transaction.atomic
def archive(*, record: Noun, by: Person) -> Noun:
    """Offer it no longer. What was done with it stays."""
    return edit(lock_for_edit(record), {"is_archived": True}, by=by, logged=["is_archived"])


@transaction.atomic
def unarchive(*, record: Noun, by: Person) -> Noun:
    """Offer it again."""
    return edit(lock_for_edit(record), {"is_archived": False}, by=by, logged=["is_archived"])


@transaction.atomic
def delete_unused(*, record: Noun, by: Person) -> None:
    """Delete what nothing names. Raises InUse for what was used."""
    locked = lock_for_edit(record)
    if isinstance(locked, Material) and locked.is_in_use:
        raise InUse("It has been in stock, and its history needs it. Archive it instead.", remedies=[ARCHIVE])
    log_deleted(record=locked, by=by)
    locked.delete()


@contextmanager
def named_once(pointer: str, sentence: str) -> Iterator[None]:
    """Turn the database's refusal of a second record of one name into an error of the field that bears it."""
    try:
        with transaction.atomic():
            yield
    except IntegrityError as error:
        if "unique" not in str(error).lower():
            raise
        raise bad_field(pointer, sentence) from error


def refuse_archived(record: models.Model | None, *, pointer: str) -> None:
    """Raise BadBody for a record that is offered no longer."""
    if record is not None and getattr(record, "is_archived", False):
        raise bad_field(pointer, f"{record} is archived. Put it back on the list first, or choose another.")
