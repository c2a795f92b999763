"""What a check finds, and how a check asks."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from django.db import connection

from inventory.shop.fields import to_decimal

ROWS_AT_ONCE = 2_000


@dataclass(frozen=True, slots=True)
class Finding:
    """check: the claim that does not hold. words: what differs."""

    check: str
    words: str


def ask(sql: str, parameters: Sequence[Any] = ()) -> Iterator[Sequence[Any]]:
    """The rows of a query, a few thousand in memory at a time."""
    with connection.chunked_cursor() as cursor:
        cursor.execute(sql, parameters)
        while rows := cursor.fetchmany(ROWS_AT_ONCE):
            yield from rows


def quantity(whole: Any) -> str:
    return f"{to_decimal(int(whole), 6):f}"


def money(whole: Any) -> str:
    return f"{to_decimal(int(whole), 4):f}"
