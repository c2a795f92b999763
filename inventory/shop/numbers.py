"""Short spoken numbers: lot 12, pour 207."""

from django.db import connection


def next_number(noun: str, *, count: int = 1) -> int:
    """Take the next `count` spoken numbers of a noun and return the first of them.

    One statement, inside the caller's transaction. It locks the noun's counter until that ends, so an action takes
    its numbers last.
    """
    with connection.cursor() as cursor:
        cursor.execute(
            "INSERT INTO shop_counter (noun, last) VALUES (%s, %s) "
            "ON CONFLICT (noun) DO UPDATE SET last = shop_counter.last + excluded.last RETURNING last",
            [noun, count],
        )
        last: int = cursor.fetchone()[0]
    return last - count + 1
