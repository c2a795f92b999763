"""The change log: who changed which field of which record, before and after."""

from collections.abc import Iterable, Mapping
from decimal import Decimal
from typing import Any

from django.db import models

from inventory.rest.quantities import plain
from inventory.shop.models import Change, Person


def log_changes(*, record: models.Model, changes: Mapping[str, tuple[Any, Any]], by: Person) -> None:
    """Write one row for each field that differs. changes: field -> (before, after). One SQL statement at most."""
    log_changes_of([(record, changes)], by=by)


def log_changes_of(records: Iterable[tuple[models.Model, Mapping[str, tuple[Any, Any]]]], *, by: Person) -> None:
    """As `log_changes`, for many records. One SQL statement at most, however many there are."""
    rows = [
        Change(
            by=by,
            noun=record._meta.model_name or "",
            record=record.pk,
            field=field,
            before=shown(before),
            after=shown(after),
        )
        for record, changes in records
        for field, (before, after) in changes.items()
        if before != after
    ]
    if rows:
        Change.objects.bulk_create(rows)


def log_added(*, record: models.Model, by: Person) -> None:
    """Write down who put a record on its list. One SQL statement."""
    log_changes(record=record, changes={"added": (None, record)}, by=by)


def log_deleted(*, record: models.Model, by: Person) -> None:
    """Write down who deleted a record; called before it goes. One SQL statement."""
    log_changes(record=record, changes={"deleted": (record, None)}, by=by)


def shown(value: Any) -> str:
    if isinstance(value, Decimal):
        return plain(value)
    return "" if value is None else str(value)
