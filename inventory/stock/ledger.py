"""The one door of the ledger.

`post` writes one posting with its movements and the new balances; nothing else inserts a movement or touches a
balance. The rules are in `calc.bookkeeping`; here they meet the database, in a handful of set-based statements.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any
from uuid import UUID, uuid4
from zoneinfo import ZoneInfo

from django.db import connection
from django.utils import timezone

from inventory.calc.bookkeeping import Entry, Line, Shortage, settle
from inventory.shop.clock import shop_day
from inventory.shop.fields import to_decimal
from inventory.shop.models import Person
from inventory.stock.book import Book, LotFacts
from inventory.stock.lines import IS_INFLOW, MAY_BE_INFLOW
from inventory.stock.models import Kind
from inventory.stock.problems import NotEnoughStock, TooMuch, UsedBeforeReceived

MOST_QUANTITY = 9_999_999_999_999
MOST_MONEY = 99_999_999_999
ROWS_IN_ONE_STATEMENT = 500


@dataclass(frozen=True, slots=True)
class Posted:
    """A posting as written: its id, and its lines with the movements' ids, in order of recording."""

    id: int
    uuid: UUID
    recorded_at: datetime
    lines: tuple[Line, ...]
    movements: tuple[int, ...]

    def movement_of(self, entry: int) -> tuple[int, Line]:
        """The movement and the line of the entry at this position."""
        for movement, line in zip(self.movements, self.lines, strict=True):
            if line.entry == entry and not line.keeps_count:
                return movement, line
        raise LookupError(f"entry {entry} was not posted")


def post(
    kind: Kind,
    entries: Sequence[Entry],
    *,
    book: Book,
    by: Person,
    zone: ZoneInfo,
    reason: str = "",
    charged_on: date | None = None,
) -> Posted:
    """Write one act of the shop: all of its entries or nothing.

    book: opened by `open_book` over every lot named, from the earliest moment named; it is brought up to date.
    zone: the shop's, for the day on which each line happened.
    Three SQL statements for up to 500 lines, one more where a lot comes to a place for the first time, one where
    something is found. Raises NotEnoughStock, UsedBeforeReceived, TooMuch.
    """
    for entry in entries:
        _check(entry, book)
        book.holding(entry.lot, entry.place)
    try:
        lines = settle(entries, book.holdings, lot_cost=inflow_of)
    except Shortage as shortage:
        raise _not_enough(shortage, book) from shortage
    for line in lines:
        if abs(line.quantity) > MOST_QUANTITY or abs(line.value) > MOST_MONEY:
            raise TooMuch("One line can hold at most 9,999,999.999999 of a unit and 9,999,999.9999 of money. Split it.")
    uuid, recorded_at = uuid4(), timezone.now()
    with connection.cursor() as cursor:
        posting = _insert_posting(cursor, uuid, kind, reason, by, recorded_at, charged_on)
        movements = _insert_movements(cursor, posting, lines, book, zone)
        _change_balances(cursor, lines, book)
    return Posted(posting, uuid, recorded_at, tuple(lines), tuple(movements))


def inflow_of(lot: int) -> tuple[int, int]:
    """(quantity, money) that ever came into a lot, net, in millionths and ten-thousandths. One SQL statement."""
    with connection.cursor() as cursor:
        cursor.execute(
            f"SELECT COALESCE(SUM(quantity), 0), COALESCE(SUM(value), 0) FROM stock_movement "
            f"WHERE lot_id = %s AND {MAY_BE_INFLOW} AND {IS_INFLOW}",
            [lot],
        )
        quantity, value = cursor.fetchone()
    return int(quantity), int(value)


def _check(entry: Entry, book: Book) -> None:
    facts = book.lots.get(entry.lot)
    if facts is None or entry.happened_at < book.earliest:
        raise RuntimeError("the book was not opened over everything that is posted")
    if entry.quantity < 0 and entry.corrects is None:
        refuse_before_received(facts, entry.happened_at)


def refuse_before_received(facts: LotFacts, moment: datetime) -> None:
    """Raise UsedBeforeReceived for a moment before a lot came in."""
    if moment >= facts.received_at:
        return
    raise UsedBeforeReceived(
        f"Lot {facts.number} ({facts.lot_number}) came in on {facts.received_on}; "
        f"it cannot have been taken from before that. Mend the date, or name another lot.",
        lot=facts.id,
        received_on=facts.received_on.isoformat(),
        remedies=[
            {"kind": "other_lot", "text": "Name a lot that was there."},
            {"kind": "change_time", "text": "Mend the time, if it is wrong."},
        ],
    )


def not_enough(book: Book, lot: int, place: int, *, wanted: int, there: int) -> NotEnoughStock:
    """What to raise where a lot cannot give what is asked; says where else it lies. Quantities in millionths."""
    facts = book.lots[lot]
    asked, can_give = to_decimal(wanted, 6), to_decimal(there, 6)
    elsewhere = {at: book.holdings[lot, at].quantity for at in book.places_of(lot) if at != place}
    remedies = [
        {"kind": "other_lot", "text": "Take it from another lot."},
        {"kind": "found_more", "text": "Say that there was more than the book said."},
        {"kind": "receive_first", "text": "Book the delivery that is not in the book yet; its price may follow."},
    ]
    if elsewhere:
        remedies.insert(0, {"kind": "move", "text": "It lies elsewhere: move it here, or take it from there."})
    return NotEnoughStock(
        f"Lot {facts.number} ({facts.lot_number}) can give {can_give.normalize():f} at that moment, "
        f"{(asked - can_give).normalize():f} less than the {asked.normalize():f} asked for.",
        lot=lot,
        material=facts.material,
        place=place,
        wanted=str(asked),
        there=str(can_give),
        missing=str(asked - can_give),
        elsewhere=[{"place": at, "on_hand": str(to_decimal(quantity, 6))} for at, quantity in elsewhere.items()],
        remedies=remedies,
    )


def _not_enough(shortage: Shortage, book: Book) -> NotEnoughStock:
    entry = shortage.entry
    return not_enough(book, entry.lot, entry.place, wanted=-entry.quantity, there=shortage.takeable)


def _insert_posting(
    cursor: Any, uuid: UUID, kind: Kind, reason: str, by: Person, recorded_at: datetime, charged_on: date | None
) -> int:
    cursor.execute(
        "INSERT INTO stock_posting (uuid, kind, reason, by_id, recorded_at, charged_on) "
        "VALUES (%s, %s, %s, %s, %s, %s) RETURNING id",
        [
            uuid if connection.features.has_native_uuid_field else uuid.hex,
            kind.value,
            reason,
            by.pk,
            connection.ops.adapt_datetimefield_value(recorded_at),
            charged_on,
        ],
    )
    posting: int = cursor.fetchone()[0]
    return posting


def _insert_movements(cursor: Any, posting: int, lines: Sequence[Line], book: Book, zone: ZoneInfo) -> list[int]:
    """The new movements' ids, in the order of the lines: ids are given in that order within one statement."""
    moment_for = connection.ops.adapt_datetimefield_value
    days: dict[datetime, tuple[Any, date]] = {}
    ids: list[int] = []
    for start in range(0, len(lines), ROWS_IN_ONE_STATEMENT):
        part = lines[start : start + ROWS_IN_ONE_STATEMENT]
        parameters: list[Any] = []
        for line in part:
            at = line.happened_at
            if at not in days:
                days[at] = moment_for(at), shop_day(at, zone)
            moment, day = days[at]
            parameters += (
                posting,
                line.kind,
                line.lot,
                book.lots[line.lot].material,
                line.place,
                line.quantity,
                line.value,
                moment,
                day,
                line.corrects,
                line.into_lot,
                line.cause,
            )
        row = f"({', '.join(['%s'] * 12)})"
        cursor.execute(
            "INSERT INTO stock_movement (posting_id, kind, lot_id, material_id, place_id, quantity, value, "
            "happened_at, happened_on, corrects_id, into_lot_id, cause) "
            f"VALUES {', '.join([row] * len(part))} RETURNING id",
            parameters,
        )
        ids += sorted(found[0] for found in cursor.fetchall())
    return ids


def _change_balances(cursor: Any, lines: Sequence[Line], book: Book) -> None:
    """Add the lines to the balances, relative to what stands there, so that the database's own checks see the sum."""
    changes: dict[tuple[int, int], tuple[int, int]] = {}
    for line in lines:
        quantity, value = changes.get((line.lot, line.place), (0, 0))
        changes[line.lot, line.place] = quantity + line.quantity, value + line.value
    old = [(lot, place, *change) for (lot, place), change in sorted(changes.items()) if (lot, place) in book.kept]
    new = [(lot, place, *change) for (lot, place), change in sorted(changes.items()) if (lot, place) not in book.kept]
    number = "%s::bigint" if connection.vendor == "postgresql" else "%s"
    cast = f"({', '.join([number] * 4)})"
    for start in range(0, len(old), ROWS_IN_ONE_STATEMENT):
        rows = old[start : start + ROWS_IN_ONE_STATEMENT]
        cursor.execute(
            f"WITH change (lot, place, quantity, value) AS (VALUES {', '.join([cast] * len(rows))}) "
            "UPDATE stock_balance SET quantity = stock_balance.quantity + change.quantity, "
            "value = stock_balance.value + change.value FROM change "
            "WHERE stock_balance.lot_id = change.lot AND stock_balance.place_id = change.place",
            [value for row in rows for value in row],
        )
    for start in range(0, len(new), ROWS_IN_ONE_STATEMENT):
        rows = new[start : start + ROWS_IN_ONE_STATEMENT]
        cursor.execute(
            f"INSERT INTO stock_balance (lot_id, place_id, quantity, value) "
            f"VALUES {', '.join(['(%s, %s, %s, %s)'] * len(rows))}",
            [value for row in rows for value in row],
        )
    book.kept.update(changes)
