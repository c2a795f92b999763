"""Lines by themselves and beside each other."""

from collections.abc import Iterator
from datetime import date, datetime, timedelta

from inventory.stock.book import as_moment
from inventory.stock.ledger import MOST_MONEY, MOST_QUANTITY
from inventory.stock.lines import IS_INFLOW, IS_ISSUE
from inventory.stock.verification.findings import ask, money, quantity

# Zones lie between UTC-12 and UTC+14 (IANA time zone database).
WESTMOST, EASTMOST = timedelta(hours=-12), timedelta(hours=14)
AHEAD_ALLOWED = timedelta(minutes=5)


def kinds() -> Iterator[str]:
    rows = ask(
        f"SELECT id, kind, quantity, value FROM stock_movement WHERE CASE WHEN {IS_INFLOW} THEN 1 ELSE 0 END "
        f"+ CASE WHEN {IS_ISSUE} THEN 1 ELSE 0 END + CASE WHEN kind = 'moved' THEN 1 ELSE 0 END <> 1 "
        f"OR quantity NOT BETWEEN -{MOST_QUANTITY} AND {MOST_QUANTITY} "
        f"OR value NOT BETWEEN -{MOST_MONEY} AND {MOST_MONEY} "
        "OR (into_lot_id IS NOT NULL AND kind NOT IN ('opened', 'blended')) ORDER BY id"
    )
    for movement, kind, amount, worth in rows:
        yield f"movement {movement} ({kind}, {quantity(amount)}, {money(worth)}) counts as none of them, or as several"


def references() -> Iterator[str]:
    rows = ask(
        "SELECT m.id FROM stock_movement m JOIN stock_lot l ON l.id = m.lot_id WHERE m.material_id <> l.material_id "
        "ORDER BY m.id"
    )
    for (movement,) in rows:
        yield f"movement {movement} names another material than its lot"
    rows = ask(
        "SELECT c.id, m.id FROM stock_movement c JOIN stock_movement m ON m.id = c.corrects_id "
        "WHERE c.lot_id <> m.lot_id OR c.place_id <> m.place_id OR c.kind <> m.kind OR c.id < m.id "
        "OR COALESCE(c.into_lot_id, 0) <> COALESCE(m.into_lot_id, 0) ORDER BY c.id"
    )
    for correction, movement in rows:
        yield f"movement {correction} corrects movement {movement}, which is of another lot, place or kind"


def transfers() -> Iterator[str]:
    rows = ask(
        "SELECT posting_id, kind, SUM(quantity), SUM(value) FROM stock_movement "
        "WHERE kind IN ('moved', 'opened', 'blended') GROUP BY posting_id, kind "
        "HAVING SUM(value) <> 0 OR (kind <> 'blended' AND SUM(quantity) <> 0) ORDER BY 1"
    )
    for posting, kind, amount, worth in rows:
        yield f"posting {posting}: what it {kind} leaves {quantity(amount)} and {money(worth)} over"
    rows = ask(
        "SELECT posting_id, lot_id, SUM(quantity), SUM(value) FROM stock_movement WHERE kind = 'moved' "
        "GROUP BY posting_id, lot_id HAVING SUM(quantity) <> 0 OR SUM(value) <> 0 ORDER BY 1, 2"
    )
    for posting, lot, amount, worth in rows:
        yield f"posting {posting}: moving lot {lot} leaves {quantity(amount)} and {money(worth)} over"


def taken_back() -> Iterator[str]:
    """What stands of an issue lies between all and nothing of it, and nothing is worth nothing."""
    rows = ask(
        "SELECT standing.movement, m.quantity, standing.quantity, standing.value FROM ("
        "SELECT COALESCE(corrects_id, id) AS movement, SUM(quantity) AS quantity, SUM(value) AS value "
        f"FROM stock_movement WHERE {IS_ISSUE} GROUP BY COALESCE(corrects_id, id)) standing "
        "JOIN stock_movement m ON m.id = standing.movement "
        "WHERE standing.quantity > 0 OR standing.quantity < m.quantity OR standing.value > 0 "
        "OR (standing.quantity = 0 AND standing.value <> 0) ORDER BY 1"
    )
    for movement, was, stands, worth in rows:
        yield f"of movement {movement} ({quantity(was)}) there stand {quantity(stands)}, worth {money(worth)}"


def moments() -> Iterator[str]:
    rows = ask(
        "SELECT m.id, m.lot_id, m.happened_at FROM stock_movement m JOIN stock_lot l ON l.id = m.lot_id "
        "WHERE m.corrects_id IS NULL AND m.happened_at < l.received_at ORDER BY m.id"
    )
    for movement, lot, moment in rows:
        yield f"movement {movement} happened at {moment}, before lot {lot} came in"
    rows = ask(
        "SELECT m.id, m.happened_at, p.recorded_at FROM stock_movement m JOIN stock_posting p ON p.id = m.posting_id "
        "WHERE m.happened_at > p.recorded_at ORDER BY m.id"
    )
    for movement, moment, recorded in rows:
        if as_moment(moment) > as_moment(recorded) + AHEAD_ALLOWED:
            yield f"movement {movement} happened at {moment}, after it was recorded at {recorded}"


def days() -> Iterator[str]:
    """The day of a line is its moment's day in some zone; which zone the shop was in then is not kept."""
    for moment, day in ask("SELECT DISTINCT happened_at, happened_on FROM stock_movement"):
        at = as_moment(moment)
        on = day if isinstance(day, date) and not isinstance(day, datetime) else date.fromisoformat(str(day)[:10])
        if not (at + WESTMOST).date() <= on <= (at + EASTMOST).date():
            yield f"what happened at {at.isoformat()} is booked on {on}"
