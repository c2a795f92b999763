"""Balances against the lines."""

from collections.abc import Iterator

from inventory.stock.lines import IS_INFLOW, IS_ISSUE
from inventory.stock.verification.findings import ask, money, quantity


def sums() -> Iterator[str]:
    rows = ask(
        "SELECT lot_id, place_id, SUM(quantity), SUM(value) FROM ("
        "SELECT lot_id, place_id, SUM(quantity) AS quantity, SUM(value) AS value FROM stock_movement "
        "GROUP BY lot_id, place_id "
        "UNION ALL SELECT lot_id, place_id, -quantity, -value FROM stock_balance) both_sides "
        "GROUP BY lot_id, place_id HAVING SUM(quantity) <> 0 OR SUM(value) <> 0 ORDER BY 1, 2"
    )
    for lot, place, more, worth in rows:
        yield (
            f"lot {lot} at place {place}: the movements say {quantity(more)} more than the balance, "
            f"and {money(worth)} more money"
        )


def past_moments() -> Iterator[str]:
    """In order of happening; a moment means after all that happened in that instant."""
    rows = ask(
        "SELECT lot_id, place_id, MIN(happened_at), MIN(running) FROM ("
        "SELECT lot_id, place_id, happened_at, SUM(quantity) OVER "
        "(PARTITION BY lot_id, place_id ORDER BY happened_at) AS running FROM stock_movement) history "
        "WHERE running < 0 GROUP BY lot_id, place_id ORDER BY 1, 2"
    )
    for lot, place, moment, lowest in rows:
        yield f"lot {lot} at place {place} stood at {quantity(lowest)}, first at {moment}"


def order_of_recording() -> Iterator[str]:
    rows = ask(
        "SELECT lot_id, place_id, posting_id, MIN(quantity), MIN(value) FROM ("
        "SELECT lot_id, place_id, posting_id, "
        "SUM(quantity) OVER (PARTITION BY lot_id, place_id ORDER BY posting_id) AS quantity, "
        "SUM(value) OVER (PARTITION BY lot_id, place_id ORDER BY posting_id) AS value FROM stock_movement) history "
        "WHERE quantity < 0 OR value < 0 OR (quantity = 0 AND value <> 0) "
        "GROUP BY lot_id, place_id, posting_id ORDER BY 1, 2, 3"
    )
    for lot, place, posting, left, worth in rows:
        yield f"lot {lot} at place {place} stood at {quantity(left)}, worth {money(worth)}, after posting {posting}"


def identity() -> Iterator[str]:
    rows = ask(
        "SELECT movements.lot_id, came, went, COALESCE(here, 0), came_value, went_value, COALESCE(here_value, 0) FROM ("
        f"SELECT lot_id, SUM(CASE WHEN {IS_INFLOW} THEN quantity ELSE 0 END) AS came, "
        f"SUM(CASE WHEN {IS_INFLOW} THEN value ELSE 0 END) AS came_value, "
        f"-SUM(CASE WHEN {IS_ISSUE} THEN quantity ELSE 0 END) AS went, "
        f"-SUM(CASE WHEN {IS_ISSUE} THEN value ELSE 0 END) AS went_value "
        "FROM stock_movement GROUP BY lot_id) movements LEFT JOIN ("
        "SELECT lot_id, SUM(quantity) AS here, SUM(value) AS here_value FROM stock_balance GROUP BY lot_id) balances "
        "ON balances.lot_id = movements.lot_id "
        "WHERE came <> went + COALESCE(here, 0) OR came_value <> went_value + COALESCE(here_value, 0) ORDER BY 1"
    )
    for lot, came, went, here, came_value, went_value, here_value in rows:
        yield (
            f"lot {lot}: {quantity(came)} came in, {quantity(went)} went, {quantity(here)} is here; "
            f"money {money(came_value)} came in, {money(went_value)} went, {money(here_value)} is here"
        )
