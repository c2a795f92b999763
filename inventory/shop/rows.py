"""Records out of plain SQL and into it, for statements that take longer to build than to carry out."""

from collections.abc import Callable, Collection, Sequence
from functools import cache
from operator import attrgetter
from typing import Any, Generic, TypeVar

from django.db import connection, connections
from django.db.models import BooleanField, CharField, ForeignKey, IntegerField, Model, TextField

from inventory.shop.fields import FixedField, to_whole

M = TypeVar("M", bound=Model)
Converter = Callable[[Any], Any]
ValueOf = Callable[[Any], Any]
RECORDS_IN_ONE_STATEMENT = 500
AS_THEY_ARE = (CharField, TextField, BooleanField, IntegerField, ForeignKey)
"""Fields whose values both databases take as Python has them."""


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
        kept = _kept(type(part[0]))
        row_of_marks = f"({', '.join(['%s'] * len(kept))})"
        with connection.cursor() as cursor:
            cursor.execute(
                f"INSERT INTO {part[0]._meta.db_table} ({', '.join(column for column, _ in kept)}) "
                f"VALUES {', '.join([row_of_marks] * len(part))} RETURNING id",
                [value_of(record) for record in part for _, value_of in kept],
            )
            ids = sorted(found[0] for found in cursor.fetchall())
        for record, pk in zip(part, ids, strict=True):
            record.pk = pk
            record._state.adding, record._state.db = False, connection.alias


def update_record(record: Model, fields: Collection[str]) -> None:
    """Write these fields of a record that was read before, named as the model names them. One SQL statement."""
    columns = {field.column for field in record._meta.concrete_fields if field.name in fields}
    written = [(column, value_of) for column, value_of in _kept(type(record)) if column in columns]
    with connection.cursor() as cursor:
        cursor.execute(
            f"UPDATE {record._meta.db_table} SET {', '.join(f'{column} = %s' for column, _ in written)} WHERE id = %s",
            [*(value_of(record) for _, value_of in written), record.pk],
        )


@cache
def _kept(model: type[Model]) -> list[tuple[str, ValueOf]]:
    """Each column beside the key, with what the database keeps there of a record."""
    fields: Sequence[Any] = model._meta.concrete_fields
    return [(field.column, _value_of(field)) for field in fields if not field.primary_key]


def _value_of(field: Any) -> ValueOf:
    name: str = field.attname
    if isinstance(field, FixedField):
        places = field.places
        return lambda record: None if (value := getattr(record, name)) is None else to_whole(value, places)
    if isinstance(field, AS_THEY_ARE):
        return attrgetter(name)
    return lambda record: field.get_db_prep_save(getattr(record, name), connections[connection.alias])
