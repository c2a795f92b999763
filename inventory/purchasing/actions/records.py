"""What the later acts on a delivery share: it locked, its lots' book opened, a change of their cost posted."""

from collections.abc import Collection, Mapping, Sequence
from datetime import date, datetime
from typing import NamedTuple
from zoneinfo import ZoneInfo

from inventory.purchasing.models import Delivery, DeliveryLine
from inventory.shop.models import Person
from inventory.stock import ledger
from inventory.stock.book import Book, open_book
from inventory.stock.corrections import lots_made_from, revaluation_entries
from inventory.stock.models import Kind, Lot, Movement
from inventory.stock.problems import AlreadyUndone


def lock_delivery(delivery: Delivery) -> Delivery:
    """The delivery, locked before its lots until the transaction ends. Raises AlreadyUndone for one that was undone."""
    locked = Delivery.objects.select_for_update(no_key=True).get(pk=delivery.pk)
    if locked.undone_by_id is not None:
        raise AlreadyUndone(f"Delivery {locked.number} was undone. Book it anew if the goods came after all.")
    return locked


def open_with_all_made_from(lines: Sequence[DeliveryLine]) -> Book:
    """The book over these lines' lots and everything that anything of them went into, all of it locked.

    What was made from them between looking and locking is looked for again, until nothing new turns up.
    """
    lots = {line.lot_id for line in lines}
    earliest = min(Lot.objects.filter(pk__in=lots).values_list("received_at", flat=True))
    reached = lots_made_from(lots)
    while True:
        book = open_book(earliest=earliest, lots=reached)
        now = lots_made_from(lots)
        if now == reached:
            return book
        reached = now


def revalue_lots(
    book: Book,
    changes: Mapping[int, int],
    *,
    by: Person,
    zone: ZoneInfo,
    reason: str = "",
    charged_on: date | None = None,
    reshared: Collection[int] = (),
) -> int | None:
    """Post changes of lots' cost, in ten-thousandths, carried on to all they became; the posting's id.

    reshared: lots whose parts take their shares anew though the cost stays. None where no money moves. Raises
    CreditTooLarge.
    """
    entries = revaluation_entries(book, changes, reshared=reshared)
    if not entries:
        return None
    posted = ledger.post(Kind.CHARGED, entries, book=book, by=by, zone=zone, reason=reason, charged_on=charged_on)
    return posted.id


def lines_of(delivery: Delivery) -> list[DeliveryLine]:
    """The delivery's lines with their materials and the materials' measures. Two SQL statements."""
    rows = DeliveryLine.objects.filter(delivery=delivery).select_related("material", "lot")
    return list(rows.prefetch_related("material__measures"))


class Receipt(NamedTuple):
    """The movement by which a lot came in."""

    movement: int
    place: int
    happened_at: datetime


def receipts_of(lines: Sequence[DeliveryLine]) -> dict[int, Receipt]:
    """How each line's lot came in, by lot. One SQL statement."""
    rows = Movement.objects.filter(
        lot__in=[line.lot_id for line in lines], kind=Kind.RECEIVED, corrects=None
    ).values_list("lot_id", "pk", "place_id", "happened_at")
    return {lot: Receipt(movement, place, at) for lot, movement, place, at in rows}
