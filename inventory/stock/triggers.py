"""The databases' own guard over the ledger: postings and movements can be added, and nothing else.

Triggers are installed after every migration, because an altered table loses them on SQLite; `missing_triggers` proves
that they are there, at start-up and in `verify_ledger`.
"""

from typing import Any

from django.db.backends.base.base import BaseDatabaseWrapper

GUARDED = ("stock_posting", "stock_movement")
MESSAGE = "the ledger is append-only: correct it with a further posting"

SQLITE = {
    f"{table}_{verb}": (
        f"CREATE TRIGGER {table}_{verb} BEFORE {verb.upper()} ON {table} BEGIN SELECT RAISE(ABORT, '{MESSAGE}'); END"
    )
    for table in GUARDED
    for verb in ("update", "delete")
}
POSTGRESQL_FUNCTION = (
    "CREATE OR REPLACE FUNCTION ledger_is_append_only() RETURNS trigger LANGUAGE plpgsql AS "
    f"$$ BEGIN RAISE EXCEPTION '{MESSAGE}' USING ERRCODE = 'restrict_violation'; END $$"
)
POSTGRESQL = {
    f"{table}_{verb}": (
        f"CREATE TRIGGER {table}_{verb} BEFORE {verb.upper()} ON {table} "
        f"FOR EACH {'STATEMENT' if verb == 'truncate' else 'ROW'} EXECUTE FUNCTION ledger_is_append_only()"
    )
    for table in GUARDED
    for verb in ("update", "delete", "truncate")
}


def wanted_triggers(connection: BaseDatabaseWrapper) -> dict[str, str]:
    return POSTGRESQL if connection.vendor == "postgresql" else SQLITE


def missing_triggers(connection: BaseDatabaseWrapper) -> list[str]:
    """The names of guards that the database does not have. One SQL statement."""
    catalogue = (
        "SELECT tgname FROM pg_trigger WHERE NOT tgisinternal AND tgenabled <> 'D'"
        if connection.vendor == "postgresql"
        else "SELECT name FROM sqlite_master WHERE type = 'trigger'"
    )
    with connection.cursor() as cursor:
        cursor.execute(catalogue)
        there = {row[0] for row in cursor.fetchall()}
    return sorted(set(wanted_triggers(connection)) - there)


def install_triggers(connection: BaseDatabaseWrapper) -> None:
    """Put every guard in place, whatever was there before."""
    drop_triggers(connection)
    with connection.cursor() as cursor:
        if connection.vendor == "postgresql":
            cursor.execute(POSTGRESQL_FUNCTION)
        for statement in wanted_triggers(connection).values():
            cursor.execute(statement)


def drop_triggers(connection: BaseDatabaseWrapper) -> None:
    """Take the guards away: for a restore, or a test that empties the tables. Put them back afterwards."""
    with connection.cursor() as cursor:
        for name in wanted_triggers(connection):
            table = name.rsplit("_", 1)[0]
            on = f" ON {table}" if connection.vendor == "postgresql" else ""
            cursor.execute(f"DROP TRIGGER IF EXISTS {name}{on}")


def install_after_migrate(*, using: str, **_: Any) -> None:
    from django.db import connections

    connection = connections[using]
    if set(GUARDED) <= set(connection.introspection.table_names()):
        install_triggers(connection)
