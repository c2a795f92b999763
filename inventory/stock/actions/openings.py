"""A container is opened, and from then on keeps for as long as an open one keeps."""

from datetime import date, datetime

from django.db import connection, transaction

from inventory.calc.allocation import is_enough, taken_from, use_by
from inventory.calc.bookkeeping import Entry, Worth
from inventory.calc.valuation import half_even
from inventory.rest.problems import Unprocessable
from inventory.shop.change_log import log_changes
from inventory.shop.clock import InTheFuture, shop_zone, start_of_day, today
from inventory.shop.models import Person
from inventory.shop.numbers import next_number
from inventory.shop.problems import bad_field
from inventory.stock import ledger
from inventory.stock.bars import bars_on, events_for, inherited
from inventory.stock.book import Book, open_book
from inventory.stock.corrections import standing, take_back
from inventory.stock.ledger import inflow_of, not_enough
from inventory.stock.models import Kind, Lot, Movement, Origin, Place, Posting, StatusEvent
from inventory.stock.problems import AlreadyOpen, AlreadyUndone
from inventory.stock.taking import moment_of, the_only_place
from inventory.stock.whole import refuse_unless_whole


@transaction.atomic
def open_container(
    *,
    lot: Lot,
    opened_on: date | None = None,
    containers: int = 1,
    place: Place | None = None,
    happened_at: datetime | None = None,
    by: Person,
) -> Lot:
    """Open one or several of a lot's containers and return the lot that is open now.

    One container of several splits off a child lot with its own opened date, its even share of what came in (less,
    where less is left), and the parent's number, dates and bars; the others keep theirs. The last one needs no split:
    the lot itself is open then.
    It happened at 00:00 of `opened_on` (today, where nobody says), or at `happened_at`.
    Undone by `undo_opening` while nothing was taken from it.
    Raises AlreadyOpen, NotEnoughStock, UsedBeforeReceived, InTheFuture, BadBody.
    """
    zone = shop_zone()
    day = opened_on or (today(zone) if happened_at is None else happened_at.astimezone(zone).date())
    if day > today(zone):
        raise InTheFuture(f"{day} has not come yet. Give the day on which it was opened.")
    if day < lot.received_on:
        raise Unprocessable(
            f"Lot {lot.number} came in on {lot.received_on}; it cannot have been opened before.",
            errors=[{"pointer": "/opened_on", "detail": f"Give {lot.received_on} or a later day."}],
        )
    earliest = moment_of(happened_at) if happened_at else max(start_of_day(day, zone), lot.received_at)
    book = open_book(earliest=earliest, lots=[lot.pk])
    lot = Lot.objects.select_related("material").get(pk=lot.pk)
    if lot.opened_on is not None:
        raise AlreadyOpen(f"Lot {lot.number} was opened on {lot.opened_on}. Use it, or open another one.", lot=lot.pk)
    if containers > lot.containers:
        raise bad_field("/containers", f"Lot {lot.number} has {lot.containers} closed containers.")
    if containers == lot.containers:
        if not book.on_hand(lot.pk):
            raise not_enough(book, lot.pk, the_only_place(book, lot), wanted=0, there=0)
        return _open_whole(lot, day, by=by)
    spot = place.pk if place else the_only_place(book, lot)
    quantity = _size_of(lot, containers)
    at = earliest
    if happened_at is None and day == today(zone) and not is_enough(book.takeable(lot.pk, spot, at), wanted=quantity):
        at = moment_of(None)
    return _split_off(lot, day, containers, quantity, spot, at, book=book, by=by)


def _open_whole(lot: Lot, day: date, *, by: Person) -> Lot:
    life = lot.material.open_life_days
    log_changes(record=lot, changes={"opened_on": (None, day)}, by=by)
    lot.opened_on, lot.open_life_days = day, life
    lot.use_by = use_by(expires_on=lot.expires_on, opened_on=day, open_life_days=life)
    lot.version += 1
    lot.save(update_fields=["opened_on", "open_life_days", "use_by", "version"])
    return lot


def _size_of(lot: Lot, containers: int) -> int:
    """What so many of a lot's containers hold, in millionths: an even share of what came in and was not split off."""
    came_in, _ = inflow_of(lot.pk)
    with connection.cursor() as cursor:
        cursor.execute(
            "SELECT COALESCE(SUM(quantity), 0) FROM stock_movement "
            "WHERE lot_id = %s AND kind = 'opened' AND into_lot_id IS NOT NULL",
            [lot.pk],
        )
        split_off = int(cursor.fetchone()[0])
    return half_even((came_in + split_off) * containers, lot.containers)


def _split_off(
    lot: Lot, day: date, containers: int, wanted: int, place: int, at: datetime, *, book: Book, by: Person
) -> Lot:
    there = book.takeable(lot.pk, place, at)
    if not there or wanted <= 0:
        raise not_enough(book, lot.pk, place, wanted=wanted, there=there)
    quantity = taken_from(there, wanted=wanted)
    life = lot.material.open_life_days
    child = Lot.objects.create(
        number=next_number("lot"),
        material=lot.material,
        lot_number=lot.lot_number,
        is_own_number=lot.is_own_number,
        origin=Origin.OPENED,
        opened_from=lot,
        received_on=lot.received_on,
        received_at=at,
        made_on=lot.made_on,
        expires_on=lot.expires_on,
        opened_on=day,
        open_life_days=life,
        use_by=use_by(expires_on=lot.expires_on, opened_on=day, open_life_days=life),
        containers=containers,
        status=lot.status,
        basis=lot.basis,
        is_provisional=lot.is_provisional,
    )
    bars = inherited(bars_on([lot.pk])[lot.pk].values(), since=at)
    StatusEvent.objects.bulk_create(events_for(child, bars, by=by))
    Lot.objects.filter(pk=lot.pk).update(containers=lot.containers - containers, version=lot.version + 1)
    book.add_new([child])
    out = Entry(
        kind=Kind.OPENED, lot=lot.pk, place=place, quantity=-quantity, happened_at=at, bundle=0, into_lot=child.pk
    )
    into = Entry(
        kind=Kind.OPENED, lot=child.pk, place=place, quantity=quantity, happened_at=at, value=Worth.CARRIED, bundle=0
    )
    ledger.post(Kind.OPENED, [out, into], book=book, by=by, zone=shop_zone())
    return child


@transaction.atomic
def undo_opening(*, lot: Lot, reason: str, by: Person) -> Lot:
    """Say that a container was not opened after all, and return the lot that it is closed in again.

    lot: the one that is open. One that was split off goes back whole into its parent, with its money.
    Raises NotWhole, AlreadyUndone.
    """
    if lot.origin == Origin.OPENED:
        return _put_back(lot, reason=reason, by=by)
    open_book(earliest=moment_of(None), lots=[lot.pk])
    lot = Lot.objects.get(pk=lot.pk)
    if lot.opened_on is None:
        raise AlreadyUndone(f"Lot {lot.number} is closed.")
    log_changes(record=lot, changes={"opened_on": (lot.opened_on, f"closed: {reason}")}, by=by)
    lot.opened_on, lot.open_life_days, lot.use_by = None, None, lot.expires_on
    lot.version += 1
    lot.save(update_fields=["opened_on", "open_life_days", "use_by", "version"])
    return lot


def _put_back(child: Lot, *, reason: str, by: Person) -> Lot:
    parent = child.opened_from_id
    assert parent is not None  # a constraint of the table says so
    book = open_book(earliest=child.received_at, lots=[child.pk, parent])
    posting = Posting.objects.filter(kind=Kind.OPENED, movements__into_lot=child).get()
    out, into = Movement.objects.filter(posting=posting, corrects=None).exclude(kind=Kind.COUNTED).order_by("id")
    issue = standing([out.pk])[out.pk]
    if not issue.quantity:
        raise AlreadyUndone(f"Lot {child.number} was put back already.")
    entries = [take_out_whole(child, into, book=book), *take_back([issue])]
    ledger.post(Kind.REVERSED, entries, book=book, by=by, zone=shop_zone(), reason=reason)
    kept = Lot.objects.get(pk=parent)
    Lot.objects.filter(pk=parent).update(containers=kept.containers + child.containers, version=kept.version + 1)
    return Lot.objects.get(pk=parent)


def take_out_whole(lot: Lot, came_in: Movement, *, book: Book) -> Entry:
    """The entry that takes a made lot out of the book again, with all its money. Raises NotWhole."""
    [(place, quantity)] = refuse_unless_whole([lot.pk], book=book).values()
    return Entry(
        kind=came_in.kind,
        lot=lot.pk,
        place=place,
        quantity=-quantity,
        value=-book.holdings[lot.pk, place].value,
        happened_at=came_in.happened_at,
        corrects=came_in.pk,
    )
