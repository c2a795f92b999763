"""The change log: who changed which field of which record, before and after."""

from collections.abc import Mapping
from typing import Any

from django.db import models

from inventory.shop.models import Change, Person


def log_changes(*, record: models.Model, changes: Mapping[str, tuple[Any, Any]], by: Person) -> None:
    """Write one row for each field that differs. changes: field -> (before, after). One SQL statement at most."""
    noun = record._meta.model_name or ""
    rows = [
        Change(by=by, noun=noun, record=record.pk, field=field, before=shown(before), after=shown(after))
        for field, (before, after) in changes.items()
        if before != after
    ]
    if rows:
        Change.objects.bulk_create(rows)


def shown(value: Any) -> str:
    return "" if value is None else str(value)
