"""Records out of plain SQL and into it, for statements that take longer to build than to carry out."""

from collections.abc import Callable, Sequence
from typing import Any, Generic, TypeVar

from django.db import connection
from django.db.models import Model

M = TypeVar("M", bound=Model)
Converter = Callable[[Any], Any]
RECORDS_IN_ONE_STATEMENT = 500


class Columns(Generic[M]):
    """Columns of a model, as SQL to select and as records of what came.

    names: fields as the database names them (`material_id`), every one where none is given. A record reads a column
    that was not among them when somebody asks for it, as after `only()`.
    """

    def __init__(self, model: type[M], alias: str, *names: str) -> None:
        fields = model._meta.concrete_fields
        self.fields = [field for field in fields if not names or field.attname in names]
        unknown = set(names) - {field.attname for field in self.fields}
        if unknown:
            raise ValueError(f"{model.__name__} has no {', '.join(sorted(unknown))}")
        self.model = model
        self.names = [field.attname for field in self.fields]
        self.sql = ", ".join(f"{alias}.{field.column}" for field in self.fields)
        self._converters: dict[str, list[tuple[int, Converter]]] = {}

    def __len__(self) -> int:
        return len(self.fields)

    def record(self, values: Sequence[Any]) -> M:
        """The record that one row is, its values in the order of `sql`."""
        row = list(values)
        for index, convert in self.converters():
            row[index] = convert(row[index])
        return self.model.from_db(connection.alias, self.names, row)

    def converters(self) -> list[tuple[int, Converter]]:
        """What turns a database's values into the fields' own, by position."""
        if connection.vendor not in self._converters:
            self._converters[connection.vendor] = [
                (index, convert) for index, field in enumerate(self.fields) for convert in _converters_of(field)
            ]
        return self._converters[connection.vendor]


def _converters_of(field: Any) -> list[Converter]:
    column = field.get_col(field.model._meta.db_table)
    backend: Any = connection.ops
    found = [*backend.get_db_converters(column), *column.get_db_converters(connection)]
    return [_bound(convert, column) for convert in found]


def _bound(convert: Any, column: Any) -> Converter:
    return lambda value: convert(value, column, connection)


def records(row: Sequence[Any], *parts: Columns[Any]) -> list[Any]:
    """The records that stand side by side in one row, in the order of the parts."""
    found, start = [], 0
    for part in parts:
        found.append(part.record(row[start : start + len(part)]))
        start += len(part)
    return found


def keep_beside(record: Model, relation: str, related: Model | None) -> None:
    """Let a record's relation find what was read in the same row, without another read."""
    field: Any = record._meta.get_field(relation)
    field.set_cached_value(record, related)


def insert_records(records: Sequence[M]) -> None:
    """Write new records of one model in the order given; each then knows its id.

    One SQL statement for up to 500. As `bulk_create` does it, without what that spends on building the statement.
    """
    for start in range(0, len(records), RECORDS_IN_ONE_STATEMENT):
        part = records[start : start + RECORDS_IN_ONE_STATEMENT]
        fields: list[Any] = [field for field in part[0]._meta.concrete_fields if not field.primary_key]
        row_of_marks = f"({', '.join(['%s'] * len(fields))})"
        with connection.cursor() as cursor:
            cursor.execute(
                f"INSERT INTO {part[0]._meta.db_table} ({', '.join(field.column for field in fields)}) "
                f"VALUES {', '.join([row_of_marks] * len(part))} RETURNING id",
                [
                    field.get_db_prep_save(field.pre_save(record, True), connection)
                    for record in part
                    for field in fields
                ],
            )
            ids = sorted(found[0] for found in cursor.fetchall())
        for record, pk in zip(part, ids, strict=True):
            record.pk = pk
            record._state.adding, record._state.db = False, connection.alias
