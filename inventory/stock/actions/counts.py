"""Counting: somebody looks at a place and writes down what is there."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from typing import Any

from django.db import connection, transaction

from inventory.calc.bookkeeping import Entry, Worth
from inventory.shop.clock import refuse_future, shop_zone
from inventory.shop.fields import to_decimal, to_whole
from inventory.shop.models import Person
from inventory.shop.numbers import next_number
from inventory.shop.problems import bad_fields
from inventory.stock import ledger
from inventory.stock.book import Book, as_moment, marks, open_book
from inventory.stock.corrections import standing, take_back
from inventory.stock.models import Kind, Lot, Movement, Place, StockCount, StockCountLine
from inventory.stock.problems import AlreadyCounted, AlreadyUndone, NotEnoughStock, NotWhole, UsedBeforeReceived


@dataclass(frozen=True, slots=True)
class Counted:
    """What was counted of one lot, in its material's stock unit, >= 0; and why it may differ from the book."""

    lot: Lot
    quantity: Decimal
    reason: str = ""


@transaction.atomic
def count_place(
    *, place: Place, counted_at: datetime, lines: Sequence[Counted], reason: str = "", by: Person
) -> StockCount:
    """Write down what was counted at a place, and post what differs from the book, as of that moment.

    Lots that are not named are not touched. A loss takes its share of the lot's money with it; a gain comes in at the
    lot's unit cost, also where the book has none of the lot at the place. From then on the count holds: whatever is
    entered later and dated before it is met by an opposite counted line at the count. Undone by `undo_count`.
    Raises InTheFuture, AlreadyCounted, UsedBeforeReceived, BadBody, NotEnoughStock where what was taken since would no
    longer have been there.
    """
    refuse_future(counted_at)
    _refuse_twice(lines)
    lots = [line.lot.pk for line in lines]
    book = open_book(earliest=counted_at, lots=lots)
    for line in lines:
        _refuse_impossible(line.lot, place, counted_at, book)
    said = [to_whole(line.quantity, 6) for line in lines]
    had = [book.holding(lot, place.pk).at(counted_at) for lot in lots]
    entries = [
        _difference(lot, place, counted - there, counted_at)
        for lot, counted, there in zip(lots, said, had, strict=True)
        if counted != there
    ]
    posted = ledger.post(Kind.COUNTED, entries, book=book, by=by, zone=shop_zone(), reason=reason)
    count = StockCount.objects.create(
        number=next_number("count"), place=place, counted_at=counted_at, by=by, posting_id=posted.id
    )
    StockCountLine.objects.bulk_create(
        StockCountLine(
            count=count,
            lot=line.lot,
            place=place,
            counted_at=counted_at,
            counted=line.quantity,
            book=to_decimal(there, 6),
            reason=line.reason,
        )
        for line, there in zip(lines, had, strict=True)
    )
    return count


def _difference(lot: int, place: Place, quantity: int, at: datetime) -> Entry:
    worth = Worth.UNIT_COST if quantity > 0 else Worth.IN_PROPORTION
    return Entry(kind=Kind.COUNTED, lot=lot, place=place.pk, quantity=quantity, happened_at=at, value=worth)


def _refuse_twice(lines: Sequence[Counted]) -> None:
    seen: set[int] = set()
    errors = []
    for index, line in enumerate(lines):
        if line.lot.pk in seen:
            errors.append((f"/lines/{index}/lot", f"Lot {line.lot.number} stands there twice. Add its amounts up."))
        seen.add(line.lot.pk)
    if errors:
        raise bad_fields(errors)


def _refuse_impossible(lot: Lot, place: Place, at: datetime, book: Book) -> None:
    if book.lots[lot.pk].received_at > at:
        raise UsedBeforeReceived(
            f"Lot {lot.number} came in on {lot.received_on}; it cannot have been counted before. Mend the time.",
            lot=lot.pk,
            received_on=lot.received_on.isoformat(),
        )
    if at in book.holding(lot.pk, place.pk).counts:
        raise AlreadyCounted(
            f"Lot {lot.number} was counted at {place} at this very moment. Undo that count, or mend the time.",
            lot=lot.pk,
        )


@transaction.atomic
def undo_count(*, count: StockCount, reason: str, by: Person) -> StockCount:
    """Take a count back: it holds no longer. Counted losses are restored, counted gains taken out again, and so are the
    counted lines that kept it true.

    Raises AlreadyUndone, NotWhole where what was found has been taken since.
    """
    lots = sorted(count.lines.values_list("lot_id", flat=True))
    open_book(earliest=count.counted_at, lots=lots)
    count = StockCount.objects.select_related("place").get(pk=count.pk)
    if count.undone_by_id is not None:
        raise AlreadyUndone(f"Count {count.number} was undone before.")
    count.lines.update(is_asserted=False)
    book = open_book(earliest=count.counted_at, lots=lots)
    try:
        posted = ledger.post(
            Kind.REVERSED, _counted_away(count, lots), book=book, by=by, zone=shop_zone(), reason=reason
        )
    except NotEnoughStock as short:
        first = _taken_since(count, short.extra["lot"])
        raise NotWhole(
            f"What count {count.number} found of lot {book.lots[short.extra['lot']].number} has been taken since.",
            first=first,
            remedies=[{"kind": "undo_first", "text": "Undo what took it, or count again as of now."}],
        ) from short
    count.undone_by_id = posted.id
    count.save(update_fields=["undone_by"])
    return count


def _counted_away(count: StockCount, lots: Sequence[int]) -> list[Entry]:
    """Entries that undo what was counted at that moment, by this count or to keep it true: losses are taken back, then
    gains are met by counted losses."""
    rows = Movement.objects.filter(
        lot__in=lots,
        place=count.place,
        happened_at=count.counted_at,
        kind=Kind.COUNTED,
        corrects=None,
        posting__gte=count.posting_id,
    ).values_list("id", "lot_id", "quantity")
    gains: dict[int, int] = dict.fromkeys(lots, 0)
    losses: list[int] = []
    for movement, lot, quantity in rows:
        if quantity > 0:
            gains[lot] += to_whole(quantity, 6)
        else:
            losses.append(movement)
    standing_losses = standing(losses)
    entries = take_back([standing_losses[key] for key in sorted(standing_losses) if standing_losses[key].quantity])
    entries += [_difference(lot, count.place, -gains[lot], count.counted_at) for lot in lots if gains[lot]]
    return entries


def _taken_since(count: StockCount, lot: int) -> list[dict[str, Any]]:
    with connection.cursor() as cursor:
        cursor.execute(
            "SELECT posting_id, kind, happened_at, cause FROM stock_movement "
            f"WHERE lot_id IN ({marks([lot])}) AND place_id = %s AND quantity < 0 AND corrects_id IS NULL "
            "AND happened_at > %s ORDER BY id DESC LIMIT 50",
            [lot, count.place_id, connection.ops.adapt_datetimefield_value(count.counted_at)],
        )
        return [
            {"posting": posting, "kind": kind, "cause": cause, "happened_at": as_moment(moment).isoformat()}
            for posting, kind, moment, cause in cursor.fetchall()
        ]
