"""Taking from a lot: from which of its places, how much exactly, and when."""

from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from django.utils import timezone

from inventory.calc.allocation import is_enough, taken_from
from inventory.shop.clock import refuse_future
from inventory.shop.fields import to_whole
from inventory.shop.problems import bad_field
from inventory.stock.book import Book
from inventory.stock.ledger import not_enough, refuse_before_received
from inventory.stock.models import Lot, Place
from inventory.stock.queries import default_place


@dataclass(frozen=True, slots=True)
class Part:
    """So much of a lot at one place, in millionths of its stock unit, above 0."""

    place: int
    quantity: int


def moment_of(happened_at: datetime | None) -> datetime:
    """When something happened: now, where nobody says. Raises InTheFuture."""
    return timezone.now() if happened_at is None else refuse_future(happened_at)


def parts_taken(
    book: Book, lot: Lot, *, quantity: Decimal | None, place: Place | None, at: datetime, pointer: str = "/place"
) -> list[Part]:
    """From where a quantity of a lot is taken at a moment; all of it (None) from wherever it lies, where none is named.

    quantity: in the stock unit, > 0. What is asked and what is there count as the same within 0.001 of a unit.
    Raises NotEnoughStock, UsedBeforeReceived, and BadBody where the lot lies in several places and none is named.
    """
    refuse_before_received(book.lots[lot.pk], at)
    if quantity is None and place is None:
        parts = [Part(spot, book.takeable(lot.pk, spot, at)) for spot in book.places_of(lot.pk)]
        parts = [part for part in parts if part.quantity]
        if not parts:
            raise not_enough(book, lot.pk, default_place().pk, wanted=0, there=0)
        return parts
    spot = place.pk if place else the_only_place(book, lot, pointer=pointer)
    there = book.takeable(lot.pk, spot, at)
    wanted = there if quantity is None else to_whole(quantity, 6)
    if not there or not is_enough(there, wanted=wanted):
        raise not_enough(book, lot.pk, spot, wanted=wanted, there=there)
    return [Part(spot, taken_from(there, wanted=wanted))]


def the_only_place(book: Book, lot: Lot, *, pointer: str = "/place") -> int:
    """The place where a lot lies; the default one where it lies nowhere. Raises BadBody for several."""
    places = book.places_of(lot.pk)
    if len(places) > 1:
        raise bad_field(pointer, f"Lot {lot.number} lies in several places. Say which one is meant.")
    return places[0] if places else default_place().pk
