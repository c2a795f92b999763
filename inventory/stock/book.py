"""The book, opened: the lots of an act, locked in order, with what the ledger says of each.

`open_book` is the one place where stock is locked. On PostgreSQL it locks the lots in the order of their ids and reads
their balances in the next statement; on SQLite the transaction already holds the write lock.
"""

from collections.abc import Collection, Iterable
from dataclasses import dataclass, field
from datetime import UTC, date, datetime
from typing import Any, NamedTuple

from django.db import connection, transaction

from inventory.calc.bookkeeping import Holding, Key
from inventory.stock.models import Lot, LotStatus


class LotFacts(NamedTuple):
    """What choosing and posting need to know of a lot."""

    id: int
    number: int
    lot_number: str
    material: int
    status: str
    use_by: date | None
    received_on: date
    received_at: datetime
    opened_on: date | None
    origin: str

    @property
    def is_usable(self) -> bool:
        return self.status == LotStatus.USABLE


FACTS = "id, number, lot_number, material_id, status, use_by, received_on, received_at, opened_on, origin"


@dataclass(slots=True)
class Book:
    """Lots and their holdings, as of now, under lock until the transaction ends.

    earliest: the moment from which on the book knows what happened; entries may not be dated before it.
    """

    earliest: datetime
    lots: dict[int, LotFacts] = field(default_factory=dict)
    holdings: dict[Key, Holding] = field(default_factory=dict)
    kept: set[Key] = field(default_factory=set)  # which of them have a row in the balances

    def holding(self, lot: int, place: int) -> Holding:
        return self.holdings.setdefault((lot, place), Holding())

    def takeable(self, lot: int, place: int, moment: datetime) -> int:
        """Millionths of the stock unit that can leave this lot at this place at this moment."""
        holding = self.holdings.get((lot, place))
        return holding.takeable(moment) if holding else 0

    def places_of(self, lot: int) -> list[int]:
        """The places where the lot lies now."""
        return sorted(place for (held, place), holding in self.holdings.items() if held == lot and holding.quantity)

    def on_hand(self, lot: int) -> int:
        return sum(holding.quantity for (held, _), holding in self.holdings.items() if held == lot)

    def add_new(self, lots: Iterable[Lot]) -> None:
        """Take in lots that this transaction has just made, which nobody else can see."""
        for lot in lots:
            self.lots[lot.pk] = LotFacts(
                lot.pk,
                lot.number,
                lot.lot_number,
                lot.material_id,
                lot.status,
                lot.use_by,
                lot.received_on,
                lot.received_at,
                lot.opened_on,
                lot.origin,
            )


def open_book(
    *,
    earliest: datetime,
    lots: Collection[int] = (),
    materials: Collection[int] = (),
    place: int | None = None,
) -> Book:
    """Lock the named lots, and every lot of the named materials that lies at the place, and read what the book says.

    earliest: the earliest moment at which anything of this act happened.
    Three SQL statements (two where nothing is found). Must run inside a transaction.
    Raises a lock time-out of the database, which becomes `busy`, where somebody else holds a lot too long.
    """
    if not transaction.get_connection().in_atomic_block:
        raise RuntimeError("stock is locked inside a transaction only")
    book = Book(earliest=earliest)
    with connection.cursor() as cursor:
        for row in _lock(cursor, lots, materials, place):
            dates = _day(row[5]), _day(row[6]), as_moment(row[7]), _day(row[8])
            facts = LotFacts._make((*row[:5], *dates, row[9]))
            book.lots[facts.id] = facts
        if book.lots:
            _read_balances(cursor, book)
            _read_later(cursor, book)
    return book


def _lock(cursor: Any, lots: Collection[int], materials: Collection[int], place: int | None) -> list[Any]:
    wanted: list[str] = []
    parameters: list[int | None] = []
    if lots:
        wanted.append(f"id IN ({marks(lots)})")
        parameters += sorted(lots)
    if materials:
        wanted.append(
            f"(material_id IN ({marks(materials)}) AND EXISTS (SELECT 1 FROM stock_balance b "
            "WHERE b.lot_id = stock_lot.id AND b.place_id = %s AND b.quantity > 0))"
        )
        parameters += [*sorted(materials), place]
    if not wanted:
        return []
    lock = " FOR NO KEY UPDATE" if connection.features.has_select_for_update else ""
    cursor.execute(f"SELECT {FACTS} FROM stock_lot WHERE {' OR '.join(wanted)} ORDER BY id{lock}", parameters)
    return list(cursor.fetchall())


def _read_balances(cursor: Any, book: Book) -> None:
    cursor.execute(
        f"SELECT lot_id, place_id, quantity, value FROM stock_balance WHERE lot_id IN ({marks(book.lots)})",
        list(book.lots),
    )
    for lot, place, quantity, value in cursor.fetchall():
        book.holdings[lot, place] = Holding(quantity=quantity, value=value)
        book.kept.add((lot, place))


def _read_later(cursor: Any, book: Book) -> None:
    """What happened at or after the earliest moment, and the counts asserted since."""
    since = connection.ops.adapt_datetimefield_value(book.earliest)
    these = marks(book.lots)
    cursor.execute(
        f"SELECT lot_id, place_id, happened_at, SUM(quantity), 0 FROM stock_movement "
        f"WHERE lot_id IN ({these}) AND happened_at >= %s GROUP BY lot_id, place_id, happened_at "
        f"UNION ALL SELECT lot_id, place_id, counted_at, 0, 1 FROM stock_stockcountline "
        f"WHERE lot_id IN ({these}) AND counted_at >= %s AND is_asserted",
        [*book.lots, since, *book.lots, since],
    )
    rows = sorted((as_moment(moment), lot, place, int(q), count) for lot, place, moment, q, count in cursor.fetchall())
    for moment, lot, place, quantity, is_count in rows:
        holding = book.holding(lot, place)
        if is_count:
            holding.counts.append(moment)
        elif quantity:
            holding.later.append((moment, quantity))


def marks(values: Collection[int]) -> str:
    return ", ".join(["%s"] * len(values))


def as_moment(value: Any) -> datetime:
    """A time read by plain SQL; SQLite keeps UTC without an offset, and loses the type in a compound SELECT."""
    if isinstance(value, str):
        value = datetime.fromisoformat(value)
    moment: datetime = value
    return moment if moment.tzinfo else moment.replace(tzinfo=UTC)


def _day(value: Any) -> Any:
    return date.fromisoformat(value) if isinstance(value, str) else value
