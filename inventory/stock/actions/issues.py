"""What leaves a lot other than by a pour: written off, returned, sold or given away, and the rest of an empty pail."""

from datetime import datetime
from decimal import Decimal

from django.db import connection, transaction

from inventory.calc.apportion import apportion
from inventory.calc.bookkeeping import Entry
from inventory.rest.problems import Unprocessable
from inventory.shop.clock import shop_zone
from inventory.shop.models import Person
from inventory.stock import ledger
from inventory.stock.book import open_book
from inventory.stock.models import Basis, Emptied, Kind, Lot, Place, Return
from inventory.stock.taking import moment_of, parts_taken


@transaction.atomic
def write_off(
    *,
    lot: Lot,
    quantity: Decimal | None,
    reason: str,
    place: Place | None = None,
    happened_at: datetime | None = None,
    by: Person,
) -> ledger.Posted:
    """Take out of the book what is no longer good for anything: hardened, spilt, past its use-by.

    quantity: in the stock unit; None: all of it, at the place, or wherever it lies. Its money goes with it.
    Undone by reversing the posting. Raises NotEnoughStock, UsedBeforeReceived, InTheFuture.
    """
    return _issue(Kind.WRITTEN_OFF, lot, quantity, place, happened_at, reason=reason, by=by)


@transaction.atomic
def return_goods(
    *,
    lot: Lot,
    quantity: Decimal | None,
    to: str,
    reason: str,
    credit: Decimal | None = None,
    place: Place | None = None,
    happened_at: datetime | None = None,
    by: Person,
) -> ledger.Posted:
    """Send goods back to the supplier, or borrowed ones to their lender.

    What goes takes its share of the lot's money with it. credit: the money that came back, kept beside; it does not
    change what the rest of the lot cost. Undone by reversing the posting.
    Raises NotEnoughStock, UsedBeforeReceived, InTheFuture, Unprocessable for goods that are not that one's.
    """
    is_borrowed = lot.basis == Basis.BORROWED
    if (to == Return.To.LENDER) != is_borrowed:
        owner = "was borrowed: it goes back to its lender" if is_borrowed else "was not borrowed: it has no lender"
        raise Unprocessable(f"Lot {lot.number} {owner}.", errors=[{"pointer": "/to", "detail": f"It {owner}."}])
    posted = _issue(Kind.RETURNED, lot, quantity, place, happened_at, reason=reason, by=by)
    Return.objects.create(lot=lot, posting_id=posted.id, to=to, credit=credit)
    return posted


@transaction.atomic
def give_away(
    *,
    lot: Lot,
    quantity: Decimal | None,
    reason: str,
    price: Decimal | None = None,
    place: Place | None = None,
    happened_at: datetime | None = None,
    by: Person,
) -> ledger.Posted:
    """Sell or give some of a lot away. price: what was paid for it, kept in the reason; the lot's cost goes out.

    Undone by reversing the posting. Raises NotEnoughStock, UsedBeforeReceived, InTheFuture.
    """
    why = f"{reason} (for {price})" if price is not None else reason
    return _issue(Kind.GIVEN, lot, quantity, place, happened_at, reason=why, by=by)


@transaction.atomic
def empty(
    *, lot: Lot, place: Place | None = None, happened_at: datetime | None = None, reason: str = "", by: Person
) -> ledger.Posted:
    """Say that a lot is empty: what the book still has of it stayed in the pail.

    It is waste of the acts that used the lot, in proportion to what each used (domain: pail loss); where nothing was
    used it is written off. Undone by reversing the posting. Raises NotEnoughStock where the book has nothing left.
    """
    at = moment_of(happened_at)
    book = open_book(earliest=at, lots=[lot.pk])
    causes = _users_of(lot)
    kind = Kind.WASTED if causes else Kind.WRITTEN_OFF
    entries = [
        Entry(kind=kind, lot=lot.pk, place=part.place, quantity=-share, happened_at=at, cause=cause)
        for part in parts_taken(book, lot, quantity=None, place=place, at=at)
        for cause, share in _shared(part.quantity, causes)
        if share
    ]
    posted = ledger.post(
        kind, entries, book=book, by=by, zone=shop_zone(), reason=reason or "Left in the pail when it was empty."
    )
    Emptied.objects.create(lot=lot, posting_id=posted.id)
    return posted


def _issue(
    kind: Kind,
    lot: Lot,
    quantity: Decimal | None,
    place: Place | None,
    happened_at: datetime | None,
    *,
    reason: str,
    by: Person,
) -> ledger.Posted:
    at = moment_of(happened_at)
    book = open_book(earliest=at, lots=[lot.pk])
    entries = [
        Entry(kind=kind, lot=lot.pk, place=part.place, quantity=-part.quantity, happened_at=at)
        for part in parts_taken(book, lot, quantity=quantity, place=place, at=at)
    ]
    return ledger.post(kind, entries, book=book, by=by, zone=shop_zone(), reason=reason)


def _users_of(lot: Lot) -> dict[int, int]:
    """What each act used of a lot and still stands, in millionths. One SQL statement."""
    with connection.cursor() as cursor:
        cursor.execute(
            "SELECT cause, -SUM(quantity) FROM stock_movement WHERE lot_id = %s AND kind = 'used' "
            "AND cause IS NOT NULL GROUP BY cause HAVING SUM(quantity) < 0 ORDER BY cause",
            [lot.pk],
        )
        return {cause: int(quantity) for cause, quantity in cursor.fetchall()}


def _shared(quantity: int, causes: dict[int, int]) -> list[tuple[int | None, int]]:
    """The quantity, divided over the causes by largest remainder."""
    if not causes:
        return [(None, quantity)]
    return list(zip(causes, apportion(quantity, list(causes.values())), strict=True))
