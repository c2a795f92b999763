"""How a record that people edit is changed: read again under a lock, written over the version that was read, logged."""

from collections.abc import Collection, Mapping
from typing import Any, TypeVar

from django.db import models

from inventory.rest.etag import locked, write_fields
from inventory.shop.change_log import log_changes
from inventory.shop.models import Person

Record = TypeVar("Record", bound=models.Model)


def lock_for_edit(record: Record) -> Record:
    """The record read again, locked until the transaction ends."""
    model: type[Record] = record._meta.concrete_model  # type: ignore[assignment]  # a session's person is a lazy object
    return locked(model._default_manager.all(), pk=record.pk)


def edit(record: Record, changes: Mapping[str, Any], *, by: Person, logged: Collection[str] = ()) -> Record:
    """Give a locked record new values and its next version, and write a row of the change log for each `logged` field.

    Where nothing differs, nothing is written.
    """
    before = {field: getattr(record, field) for field in changes}
    written = write_fields(record, changes)
    log_changes(record=written, changes={f: (before[f], changes[f]) for f in changes if f in logged}, by=by)
    return written


def next_version(record: Record) -> Record:
    """Count one more version of a locked record: something that belongs to it changed."""
    record.version += 1  # type: ignore[attr-defined]
    record.save(update_fields=["version"])
    return record
