"""Goods come in: new lots, and the posting that puts them on the shelf."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from zoneinfo import ZoneInfo

from django.db import transaction
from django.utils import timezone

from inventory.calc.allocation import days_after, use_by
from inventory.calc.bookkeeping import Entry
from inventory.catalog.models import Material
from inventory.shop.clock import refuse_future, start_of_day
from inventory.shop.fields import to_whole
from inventory.shop.models import Person
from inventory.shop.numbers import next_number
from inventory.stock import ledger
from inventory.stock.bars import InForce, bars_of_numbers, events_for, inherited, status_of
from inventory.stock.book import Book, open_book
from inventory.stock.models import Basis, Kind, Lot, Origin, Place, StatusEvent


@dataclass(frozen=True, slots=True)
class Arrival:
    """One lot that comes in.

    quantity: in the material's stock unit, > 0. value: what it costs, charges included, >= 0.
    lot_number: the supplier's; None where none is on the label.
    """

    material: Material
    quantity: Decimal
    value: Decimal
    lot_number: str | None = None
    made_on: date | None = None
    expires_on: date | None = None
    containers: int = 1
    basis: Basis = Basis.PAID
    is_provisional: bool = False


@dataclass(frozen=True, slots=True)
class Received:
    lots: tuple[Lot, ...]
    posted: ledger.Posted


@transaction.atomic
def receive(
    *, arrivals: Sequence[Arrival], place: Place, received_on: date, zone: ZoneInfo, by: Person, reason: str = ""
) -> Received:
    """Put what arrived on the shelf: a lot for each arrival, in one posting dated 00:00 of the shop's day.

    A lot number that is on hold or rejected comes in as such: hold and reject work on the number. Raises InTheFuture.
    """
    received_at = refuse_future(start_of_day(received_on, zone))
    barred = _bars_of(arrivals)
    first = next_number("lot", count=len(arrivals))
    lots = []
    for number, arrival in enumerate(arrivals, start=first):
        expires_on = arrival.expires_on or _end_of_shelf_life(arrival)
        lots.append(
            Lot(
                number=number,
                material=arrival.material,
                lot_number=arrival.lot_number or f"own-{number}",
                is_own_number=not arrival.lot_number,
                origin=Origin.DELIVERY,
                received_on=received_on,
                received_at=received_at,
                made_on=arrival.made_on,
                expires_on=expires_on,
                use_by=use_by(expires_on=expires_on, opened_on=None, open_life_days=None),
                containers=arrival.containers,
                status=status_of(barred.get((arrival.material.pk, arrival.lot_number or ""), ())),
                basis=arrival.basis,
                is_provisional=arrival.is_provisional,
            )
        )
    Lot.objects.bulk_create(lots)
    StatusEvent.objects.bulk_create(
        event
        for lot in lots
        for event in events_for(lot, inherited(barred.get(key_of(lot), ()), since=received_at), by=by)
    )
    Material.objects.filter(pk__in={arrival.material.pk for arrival in arrivals}, is_in_use=False).update(
        is_in_use=True
    )
    book = Book(earliest=received_at)
    book.add_new(lots)
    entries = [
        Entry(
            kind=Kind.RECEIVED,
            lot=lot.pk,
            place=place.pk,
            quantity=to_whole(arrival.quantity, 6),
            value=to_whole(arrival.value, 4),
            happened_at=received_at,
        )
        for lot, arrival in zip(lots, arrivals, strict=True)
    ]
    posted = ledger.post(Kind.RECEIVED, entries, book=book, by=by, zone=zone, reason=reason)
    return Received(tuple(lots), posted)


def _end_of_shelf_life(arrival: Arrival) -> date | None:
    life = arrival.material.shelf_life_days
    return days_after(arrival.made_on, life) if arrival.made_on and life is not None else None


def key_of(lot: Lot) -> tuple[int, str]:
    return lot.material_id, lot.lot_number


def _bars_of(arrivals: Sequence[Arrival]) -> dict[tuple[int, str], list[InForce]]:
    """What holds for the supplier numbers that come in. Their lots are locked, so that no hold is missed meanwhile."""
    numbers = {(arrival.material.pk, arrival.lot_number) for arrival in arrivals if arrival.lot_number}
    there = Lot.objects.filter(lot_number__in={number for _, number in numbers}, is_own_number=False)
    rows = there.values_list("pk", "material_id", "lot_number")
    same = [pk for pk, material, number in rows if (material, number) in numbers]
    if not same:
        return {}
    open_book(earliest=timezone.now(), lots=same)
    return bars_of_numbers(numbers)
