"""Rows by the hundred thousand: written beside the app, as fast as the database takes them.

Only the benchmark's history comes in this way. Columns that are not named get the model's own default, whatever columns
there may be by then.
"""

from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from datetime import date, datetime
from typing import Any

from django.core.management.color import no_style
from django.db import connection, models

Row = tuple[Any, ...]


class Sheet:
    """Rows to come of one model; `columns` are named as in the database, in the order in which they are given."""

    def __init__(self, model: type[models.Model], *columns: str) -> None:
        known = {field.column: field for field in model._meta.concrete_fields}
        unknown = set(columns) - set(known)
        if unknown:
            raise ValueError(f"{model.__name__} has no columns {sorted(unknown)}")
        defaults = {name: _default(field) for name, field in known.items() if name not in columns}
        self.model = model
        self.table = model._meta.db_table
        self.rest = tuple(value for value in defaults.values() if value is not None)
        self.columns = (*columns, *(name for name, value in defaults.items() if value is not None))
        self.rows: list[Row] = []

    def add(self, *values: Any) -> None:
        self.rows.append(values)

    def flush(self) -> int:
        """Write what has gathered and forget it; how many rows that was."""
        count = len(self.rows)
        if count:
            rest = self.rest
            _write(self.table, self.columns, (row + rest for row in self.rows) if rest else self.rows)
            self.rows.clear()
        return count


def _default(field: Any) -> Any:
    """What a row that says nothing of a field has there, as the database keeps it; None leaves it empty."""
    value = field.get_default()
    return None if value is None else field.get_db_prep_save(value, connection)


def _write(table: str, columns: Sequence[str], rows: Iterable[Row]) -> None:
    names = ", ".join(columns)
    raw: Any = connection.connection
    if connection.vendor == "postgresql":
        with raw.cursor() as cursor, cursor.copy(f"COPY {table} ({names}) FROM STDIN") as copy:
            for row in rows:
                copy.write_row(row)
    else:
        raw.executemany(f"INSERT INTO {table} ({names}) VALUES ({', '.join('?' * len(columns))})", rows)


@contextmanager
def bulk_load(sheets: Iterable[Sheet]) -> Iterator[None]:
    """Take in many rows in one go: without the indexes, the references and the disk being asked at every row.

    The indexes are built again afterwards, the references are checked, and the next ids follow the last ones.
    """
    sheets = list(sheets)
    connection.ensure_connection()
    with connection.cursor() as cursor:
        indexes = _take_indexes_away(cursor, [sheet.table for sheet in sheets])
        if connection.vendor == "sqlite":
            cursor.execute("PRAGMA foreign_keys=OFF")
            cursor.execute("PRAGMA synchronous=OFF")
        else:
            cursor.execute("SET session_replication_role = replica; SET maintenance_work_mem = '256MB'")
        cursor.execute("BEGIN")
        yield
        cursor.execute("COMMIT")
        for statement in indexes:
            cursor.execute(statement)
        _settle_down(cursor, [sheet.model for sheet in sheets])
    connection.close()


def _take_indexes_away(cursor: Any, tables: Sequence[str]) -> list[str]:
    """Drop every index that no constraint needs; the statements that make them again."""
    names = ", ".join(f"'{table}'" for table in tables)
    cursor.execute(
        f"SELECT indexname, indexdef FROM pg_indexes WHERE tablename IN ({names}) AND indexname NOT IN "
        "(SELECT conname FROM pg_constraint) AND schemaname = 'public'"
        if connection.vendor == "postgresql"
        else f"SELECT name, sql FROM sqlite_master WHERE type = 'index' AND sql IS NOT NULL AND tbl_name IN ({names})"
    )
    found = list(cursor.fetchall())
    for name, _ in found:
        cursor.execute(f'DROP INDEX "{name}"')
    return [statement for _, statement in found]


def _settle_down(cursor: Any, loaded: Sequence[type[models.Model]]) -> None:
    if connection.vendor == "postgresql":
        for statement in connection.ops.sequence_reset_sql(no_style(), list(loaded)):
            cursor.execute(statement)
        cursor.execute("VACUUM ANALYZE")  # what the server does by itself within a minute
        cursor.execute("CHECKPOINT")
        return
    cursor.execute("PRAGMA foreign_key_check")
    broken = cursor.fetchmany(3)
    if broken:
        raise RuntimeError(f"rows that point nowhere: {broken}")
    cursor.execute("PRAGMA wal_checkpoint(TRUNCATE)")


def as_text(value: date | datetime) -> str:
    """A day, or a moment in UTC, as both databases read it."""
    return f"{value:%Y-%m-%d %H:%M:%S}" if isinstance(value, datetime) else value.isoformat()
