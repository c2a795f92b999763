"""Stock changes its place."""

from datetime import datetime
from decimal import Decimal

from django.db import transaction

from inventory.calc.bookkeeping import Entry, Worth
from inventory.shop.clock import shop_zone
from inventory.shop.models import Person
from inventory.shop.problems import bad_field
from inventory.stock import ledger
from inventory.stock.book import open_book
from inventory.stock.models import Kind, Lot, Place
from inventory.stock.places import refuse_archived_place
from inventory.stock.taking import moment_of, parts_taken


@transaction.atomic
def move(
    *,
    lot: Lot,
    to: Place,
    quantity: Decimal | None,
    origin: Place | None = None,
    reason: str = "",
    happened_at: datetime | None = None,
    by: Person,
) -> ledger.Posted:
    """Carry some of a lot, or all of it (quantity None), to another place, with its share of the money.

    origin: from where; may be left out while the lot lies in one place. Undone by reversing the posting, which moves it
    back at what it is worth then. Raises NotEnoughStock, UsedBeforeReceived, InTheFuture, BadBody for a move to where
    it is.
    """
    refuse_archived_place(to, pointer="/to")
    at = moment_of(happened_at)
    book = open_book(earliest=at, lots=[lot.pk])
    parts = [
        part
        for part in parts_taken(book, lot, quantity=quantity, place=origin, at=at, pointer="/from")
        if part.place != to.pk
    ]
    if not parts:
        raise bad_field("/to", f"Lot {lot.number} lies at {to} already. Name another place.")
    entries = []
    for bundle, part in enumerate(parts):
        entries += [
            Entry(
                kind=Kind.MOVED, lot=lot.pk, place=part.place, quantity=-part.quantity, happened_at=at, bundle=bundle
            ),
            Entry(
                kind=Kind.MOVED,
                lot=lot.pk,
                place=to.pk,
                quantity=part.quantity,
                happened_at=at,
                value=Worth.CARRIED,
                bundle=bundle,
            ),
        ]
    return ledger.post(Kind.MOVED, entries, book=book, by=by, zone=shop_zone(), reason=reason)
