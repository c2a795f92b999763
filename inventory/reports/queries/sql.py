"""What plain SQL needs to read alike on both databases."""

import json
from collections.abc import Iterable, Sequence
from datetime import date
from typing import Any

from django.db import connection


def fetch(sql: str, parameters: Sequence[Any] = ()) -> list[tuple[Any, ...]]:
    """All rows of one statement."""
    with connection.cursor() as cursor:
        cursor.execute(sql, list(parameters))
        rows: list[tuple[Any, ...]] = cursor.fetchall()
    return rows


def among(column: str, ids: Iterable[int]) -> tuple[str, Any]:
    """A condition that the column is one of these ids, however many, and its one parameter."""
    these = list(ids)
    if connection.vendor == "postgresql":
        return f"{column} = ANY(%s)", these
    return f"{column} IN (SELECT value FROM json_each(%s))", json.dumps(these)


def is_same(column: str, outer: str) -> str:
    """That an indexed column is the outer row's value, for the step of a recursive statement.

    SQLite takes the step for a join of many rows, which it is not, and reads the whole index first to sift them; a list
    of one makes it look the row up.
    """
    return f"{column} = {outer}" if connection.vendor == "postgresql" else f"{column} IN (SELECT {outer})"


def day_parameter(day: date) -> Any:
    """A day as plain SQL compares it with a stored one."""
    return connection.ops.adapt_datefield_value(day)


def as_day(value: Any) -> date | None:
    """A day as plain SQL gives it; SQLite keeps text."""
    return date.fromisoformat(value) if isinstance(value, str) else value


def month_number(column: str) -> str:
    """SQL for the months since year 0 of a day, so that following months follow."""
    if connection.vendor == "postgresql":
        return f"(EXTRACT(YEAR FROM {column})::bigint * 12 + EXTRACT(MONTH FROM {column})::bigint - 1)"
    return f"(CAST(substr({column}, 1, 4) AS INTEGER) * 12 + CAST(substr({column}, 6, 2) AS INTEGER) - 1)"
