"""Taking back what was posted, and spreading a later change of a lot's cost over everything it became."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from django.db import connection

from inventory.calc.bookkeeping import Entry
from inventory.calc.valuation import CarriedOn, ChangedIssue, CostBelowZero, Issue, LotMoney, revalue
from inventory.shop.fields import to_decimal
from inventory.stock.book import Book, as_moment, marks
from inventory.stock.lines import IS_ISSUE
from inventory.stock.models import Kind
from inventory.stock.problems import AlreadyUndone, CreditTooLarge


@dataclass(frozen=True, slots=True)
class Standing:
    """A movement with everything that later movements corrected of it: what still stands.

    quantity, value: signed, in millionths and ten-thousandths.
    """

    movement: int
    kind: str
    lot: int
    place: int
    happened_at: datetime
    into_lot: int | None
    cause: int | None
    quantity: int
    value: int


def standing(movements: Collection[int]) -> dict[int, Standing]:
    """What still stands of these movements, by id. One SQL statement."""
    if not movements:
        return {}
    with connection.cursor() as cursor:
        cursor.execute(
            "SELECT m.id, m.kind, m.lot_id, m.place_id, m.happened_at, m.into_lot_id, m.cause, "
            "m.quantity + COALESCE(SUM(c.quantity), 0), m.value + COALESCE(SUM(c.value), 0) "
            "FROM stock_movement m LEFT JOIN stock_movement c ON c.corrects_id = m.id "
            f"WHERE m.id IN ({marks(movements)}) "
            "GROUP BY m.id, m.kind, m.lot_id, m.place_id, m.happened_at, m.into_lot_id, m.cause, m.quantity, m.value",
            list(movements),
        )
        return {row[0]: _standing(row) for row in cursor.fetchall()}


def _standing(row: Sequence[Any]) -> Standing:
    movement, kind, lot, place, happened_at, into_lot, cause, quantity, value = row
    return Standing(movement, kind, lot, place, as_moment(happened_at), into_lot, cause, int(quantity), int(value))


def take_back(movements: Sequence[Standing]) -> list[Entry]:
    """Entries that undo issues: quantity and money as they stand now, dated when the issue happened.

    Raises AlreadyUndone where nothing of a movement stands any more.
    """
    entries = []
    for issue in movements:
        if not issue.quantity:
            raise AlreadyUndone("That was undone before; nothing of it stands any more.")
        entries.append(
            Entry(
                kind=issue.kind,
                lot=issue.lot,
                place=issue.place,
                quantity=-issue.quantity,
                value=-issue.value,
                happened_at=issue.happened_at,
                corrects=issue.movement,
                into_lot=issue.into_lot,
                cause=issue.cause,
            )
        )
    return entries


def lots_made_from(lots: Collection[int]) -> set[int]:
    """These lots and every lot that anything of them went into, to any depth. One SQL statement."""
    with connection.cursor() as cursor:
        cursor.execute(
            f"WITH RECURSIVE reached (lot) AS (SELECT id FROM stock_lot WHERE id IN ({marks(lots)}) "
            "UNION SELECT m.into_lot_id FROM reached JOIN stock_movement m ON m.lot_id = reached.lot "
            "WHERE m.into_lot_id IS NOT NULL) SELECT lot FROM reached",
            list(lots),
        )
        return {row[0] for row in cursor.fetchall()}


def lot_moneys(book: Book) -> tuple[dict[int, LotMoney], dict[int, Standing]]:
    """Every lot of the book with its parts, and the standing issues by movement. Two SQL statements."""
    issues: dict[int, list[Issue]] = {lot: [] for lot in book.lots}
    by_movement: dict[int, Standing] = {}
    with connection.cursor() as cursor:
        cursor.execute(
            "SELECT COALESCE(corrects_id, id), MIN(kind), lot_id, place_id, MIN(happened_at), MIN(into_lot_id), "
            f"MIN(cause), SUM(quantity), SUM(value) FROM stock_movement WHERE lot_id IN ({marks(book.lots)}) "
            f"AND {IS_ISSUE} GROUP BY COALESCE(corrects_id, id), lot_id, place_id HAVING SUM(quantity) <> 0 "
            "ORDER BY 1",
            list(book.lots),
        )
        for row in cursor.fetchall():
            issue = _standing(row)
            by_movement[issue.movement] = issue
            issues[issue.lot].append(Issue(issue.movement, issue.place, -issue.quantity, -issue.value, issue.into_lot))
        arrivals = _arrivals(cursor, book)
    stock: dict[int, dict[int, tuple[int, int]]] = {lot: {} for lot in book.lots}
    for (lot, place), holding in book.holdings.items():
        if holding.quantity:
            stock[lot][place] = holding.quantity, holding.value
    return {
        lot: LotMoney(lot, came_in_at=arrivals[lot], stock=stock[lot], issues=issues[lot]) for lot in book.lots
    }, by_movement


def revaluation_entries(
    book: Book, changes: Mapping[int, int], *, reshared: Collection[int] = frozenset()
) -> list[Entry]:
    """Entries that change lots' total cost, in ten-thousandths, and carry the change on to all they became.

    book: opened over `lots_made_from` the changed lots. Charges are dated when the lot came in, each changed issue
    when it happened. reshared: lots whose quantity was corrected, so that their parts take their shares anew even where
    the cost stays. Raises CreditTooLarge.
    """
    moneys, issues = lot_moneys(book)
    try:
        found = revalue(moneys, {lot: change for lot, change in changes.items() if change or lot in reshared})
    except CostBelowZero as error:
        facts = book.lots[error.lot]
        raise CreditTooLarge(
            f"Lot {facts.number} ({facts.lot_number}) cost {to_decimal(error.total, 4)}; "
            f"it cannot become cheaper by {to_decimal(-error.change, 4)}."
        ) from error
    entries = []
    for change in found:
        if isinstance(change, ChangedIssue):
            issue = issues[change.issue.movement]
            entries.append(
                Entry(
                    kind=issue.kind,
                    lot=issue.lot,
                    place=issue.place,
                    quantity=0,
                    value=-change.value,
                    happened_at=issue.happened_at,
                    corrects=issue.movement,
                    into_lot=issue.into_lot,
                    cause=issue.cause,
                )
            )
        elif isinstance(change, CarriedOn):
            source = issues[change.from_issue.movement]
            entries.append(_money_only(source.kind, change.lot, change.place, change.value, source.happened_at))
        else:
            at = book.lots[change.lot].received_at
            entries.append(_money_only(Kind.CHARGED, change.lot, change.place, change.value, at))
    return entries


def _money_only(kind: str, lot: int, place: int, value: int, at: datetime) -> Entry:
    return Entry(kind=kind, lot=lot, place=place, quantity=0, value=value, happened_at=at)


def _arrivals(cursor: Any, book: Book) -> dict[int, int]:
    """The place where each lot first came in."""
    cursor.execute(
        "SELECT lot_id, place_id FROM stock_movement WHERE id IN "
        f"(SELECT MIN(id) FROM stock_movement WHERE lot_id IN ({marks(book.lots)}) GROUP BY lot_id)",
        list(book.lots),
    )
    return dict(cursor.fetchall())
