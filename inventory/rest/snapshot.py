"""Several reads that see the same moment."""

from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from typing import Any

from django.db import connection, transaction


@contextmanager
def read_snapshot() -> Iterator[None]:
    """All reads inside see the database as of the first of them, and nobody is kept from writing meanwhile.

    SQLite: a deferred transaction, which takes no write lock (`atomic()` would). PostgreSQL: REPEATABLE READ READ ONLY.
    Inside another transaction, or another snapshot, that one goes on. Do not write inside.
    """
    if connection.in_atomic_block:
        yield
    elif connection.vendor == "sqlite":
        with deferred_transaction():
            yield
    else:
        with transaction.atomic():
            with connection.cursor() as cursor:
                cursor.execute("SET TRANSACTION ISOLATION LEVEL REPEATABLE READ READ ONLY")
            yield


@contextmanager
def deferred_transaction() -> Iterator[None]:
    sqlite: Any = connection
    sqlite.ensure_connection()
    usual = sqlite.transaction_mode
    sqlite.transaction_mode = "DEFERRED"
    with ExitStack() as stack:
        try:
            stack.enter_context(transaction.atomic())
        finally:
            sqlite.transaction_mode = usual
        yield
