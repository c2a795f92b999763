"""What customers, jobs and pieces have in common when they are edited or deleted."""

from collections.abc import Mapping
from typing import Any, TypeVar

from django.db import transaction
from django.db.models import ProtectedError

from inventory.jobs.models import Customer, Job, Piece
from inventory.rest.problems import InUse
from inventory.shop.change_log import log_deleted
from inventory.shop.editing import edit, lock_for_edit
from inventory.shop.models import Person

Record = TypeVar("Record", Customer, Job, Piece)
Offered = TypeVar("Offered", Customer, Job)


def change(record: Record, *, changes: Mapping[str, Any], by: Person) -> Record:
    """Lock a record, set its fields and log every one that differs. Raises Stale."""
    return keep(lock_for_edit(record), changes, by=by)


def keep(record: Record, changes: Mapping[str, Any], *, by: Person) -> Record:
    """Set the fields of a locked record and log every one that differs."""
    return edit(record, changes, by=by, logged=list(changes))


def delete(record: Record, *, archive_instead: str, by: Person) -> None:
    """Delete a record that nothing refers to, and log who did. Raises InUse, which says what to do instead."""
    log_deleted(record=record, by=by)
    try:
        record.delete()
    except ProtectedError as error:
        name = str(record)
        raise InUse(
            f"{name[:1].upper()}{name[1:]} was used and cannot be deleted. {archive_instead}",
            remedies=[{"kind": "archive", "text": archive_instead}],
        ) from error


@transaction.atomic
def archive(*, record: Offered, by: Person) -> Offered:
    """Offer it no longer. What was done with it stays."""
    return change(record, changes={"is_archived": True}, by=by)


@transaction.atomic
def unarchive(*, record: Offered, by: Person) -> Offered:
    """Offer it again."""
    return change(record, changes={"is_archived": False}, by=by)
