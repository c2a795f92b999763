"""What a refusal by the database means to the client.

The actions check first and speak more clearly; what arrives here lost a race, or slipped past. The codes are those of
https://www.sqlite.org/rescode.html and https://www.postgresql.org/docs/current/errcodes-appendix.html
"""

import re
from functools import cache

from django.apps import apps
from django.db import DatabaseError, DataError, Error, IntegrityError, OperationalError
from django.db.models import Model, UniqueConstraint

from inventory.rest.problems import AlreadyExists, Busy, Conflict, Problem

# lock_not_available, deadlock_detected, serialization_failure
POSTGRESQL_BUSY = {"55P03", "40P01", "40001"}
SQLITE_BUSY = {5, 6}  # SQLITE_BUSY, SQLITE_LOCKED; the low byte of the extended codes too
UNIQUE_VIOLATION, FOREIGN_KEY_VIOLATION, CHECK_VIOLATION = "23505", "23503", "23514"
SQLITE_UNIQUE = re.compile(r"UNIQUE constraint failed: (?P<columns>.+)")
SQLITE_CHECK = re.compile(r"CHECK constraint failed: (?P<name>\w+)")
SQLITE_INDEX = re.compile(r"index '(?P<name>\w+)'")


def problem_of_database(exception: Error) -> Problem | None:
    """The client's side of a database error; None where it is ours alone."""
    if is_busy(exception):
        return Busy("Somebody else is at the same records. Nothing was written; try again in a moment.")
    if isinstance(exception, IntegrityError):
        return of_integrity(exception)
    if isinstance(exception, DataError):
        return Problem("A value is outside what can be kept: a number too large, or a text too long.")
    return None


def is_busy(exception: Error) -> bool:
    if not isinstance(exception, OperationalError | DatabaseError):
        return False
    cause = exception.__cause__
    if getattr(cause, "sqlstate", None) in POSTGRESQL_BUSY:
        return True
    code = getattr(cause, "sqlite_errorcode", None)
    return code is not None and code & 0xFF in SQLITE_BUSY


def of_integrity(exception: IntegrityError) -> Problem:
    text = str(exception)
    state = getattr(exception.__cause__, "sqlstate", None)
    name = getattr(getattr(exception.__cause__, "diag", None), "constraint_name", None)
    if unique := SQLITE_UNIQUE.search(text):
        return already_exists(*of_columns(unique["columns"]))
    if state == UNIQUE_VIOLATION:
        detail = getattr(getattr(exception.__cause__, "diag", None), "message_detail", None) or ""
        table = getattr(getattr(exception.__cause__, "diag", None), "table_name", None) or ""
        columns = re.search(r"Key \((?P<columns>[^)]*)\)", detail)
        names = [column.strip() for column in columns["columns"].split(",")] if columns else []
        return already_exists(table, names, name)
    if state == FOREIGN_KEY_VIOLATION or "FOREIGN KEY" in text:
        return Conflict("It names a record that is not there any more, or is still named by another. Read both again.")
    check = SQLITE_CHECK.search(text)
    message = message_of(check["name"] if check else name or "")
    return Conflict(message or "The database refused it: it would break a rule that always holds. Nothing was written.")


def of_columns(text: str) -> tuple[str, list[str], str | None]:
    """Table, columns and index of SQLite's "table.a, table.b" or "index 'name'"."""
    if index := SQLITE_INDEX.search(text):
        return "", [], index["name"]
    pairs = [column.strip().partition(".") for column in text.split(",")]
    return pairs[0][0], [column for _, _, column in pairs], None


def already_exists(table: str, columns: list[str], constraint: str | None) -> AlreadyExists:
    if message := message_of(constraint or ""):
        return AlreadyExists(message)
    noun = noun_of(table)
    fields = [column.removesuffix("_id") for column in columns if column.isidentifier()]
    what = f" with the same {' and '.join(fields)}" if fields else " like it"
    return AlreadyExists(f"There is already a {noun}{what}. Use that one, or choose another value.", fields=fields)


def noun_of(table: str) -> str:
    for model in apps.get_models():
        if model._meta.db_table == table:
            return str(model._meta.verbose_name)
    return "record"


@cache
def constraint_messages() -> dict[str, str]:
    """The messages that models' own constraints carry (`violation_error_message`), by constraint name."""
    return {
        constraint.name: str(constraint.violation_error_message)
        for model in apps.get_models()
        for constraint in own_constraints(model)
        if constraint.violation_error_message != constraint.default_violation_error_message
    }


def own_constraints(model: type[Model]) -> list[UniqueConstraint]:
    return list(model._meta.constraints)  # type: ignore[arg-type]


def message_of(constraint: str) -> str | None:
    return constraint_messages().get(constraint)
