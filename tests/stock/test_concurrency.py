"""Two people at once cannot take the same gram: workers on one lot, on whichever database the tests run."""

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from datetime import datetime
from decimal import Decimal
from threading import Barrier

import pytest
from django.conf import settings
from django.db import IntegrityError, connection, connections, transaction
from django.utils import timezone

from inventory.calc.bookkeeping import Entry
from inventory.rest.problems import Role
from inventory.shop.models import Person, Shop
from inventory.stock import ledger
from inventory.stock.actions import move, write_off
from inventory.stock.book import Book, open_book
from inventory.stock.models import Kind, Lot, Movement
from inventory.stock.problems import NotEnoughStock
from inventory.stock.verification import verify
from tests.conftest import person
from tests.stock.shelf import ZONE, Shelf

WORKERS = 8
ISSUES = 500


@pytest.fixture
def shared(transactional_db: None) -> Shelf:
    """A shelf that other connections see."""
    Shop.objects.create(pk=1, name="Kelp Lane Tops", currency="USD", time_zone="America/Chicago")
    return Shelf(person(Role.OWNER))


def at_once(work: Callable[[int], int]) -> int:
    """Let the workers work at the same time; the sum of what each did. Each has a connection of its own."""
    ready = Barrier(WORKERS)

    def run(worker: int) -> int:
        try:
            ready.wait()
            return work(worker)
        finally:
            connections.close_all()

    with ThreadPoolExecutor(WORKERS) as pool:
        return sum(pool.map(run, range(WORKERS)))


def take_one(lot: Lot, place: int, by: Person, at: datetime) -> bool:
    entry = Entry(kind=Kind.USED, lot=lot.pk, place=place, quantity=-1_000_000, happened_at=at)
    try:
        with transaction.atomic():
            book = open_book(earliest=at, lots=[lot.pk])
            ledger.post(Kind.USED, [entry], book=book, by=by, zone=ZONE)
    except NotEnoughStock:
        return False
    return True


def test_eight_workers_take_five_hundred_times_and_no_gram_twice(shared: Shelf) -> None:
    lot = shared.lot("450", "123.4567")
    at = timezone.now()

    def work(worker: int) -> int:
        share = range(worker, ISSUES, WORKERS)
        return sum(take_one(lot, shared.place.pk, shared.by, at) for _ in share)

    assert at_once(work) == 450  # of 500 that were wanted
    assert shared.balance(lot) == (0, 0)
    used = Movement.objects.filter(lot=lot, kind=Kind.USED)
    assert (used.count(), -sum(line.value for line in used)) == (450, Decimal("123.4567"))
    assert list(verify()) == []


def test_workers_on_two_lots_in_either_order_do_not_block_each_other(shared: Shelf) -> None:
    lots = [shared.lot("400", "40"), shared.lot("400", "40")]
    at = timezone.now()

    def work(worker: int) -> int:
        order = lots if worker % 2 else lots[::-1]
        for _ in range(20):
            entries = [
                Entry(kind=Kind.USED, lot=lot.pk, place=shared.place.pk, quantity=-1_000_000, happened_at=at)
                for lot in order
            ]
            with transaction.atomic():
                book = open_book(earliest=at, lots=[lot.pk for lot in order])
                ledger.post(Kind.USED, entries, book=book, by=shared.by, zone=ZONE)
        return 20

    assert at_once(work) == 160
    assert [shared.balance(lot)[0] for lot in lots] == [240, 240]
    assert list(verify()) == []


def test_moves_and_write_offs_at_once_lose_nothing(shared: Shelf) -> None:
    lot = shared.lot("100", "100")

    def work(worker: int) -> int:
        done = 0
        for _ in range(10):
            try:
                if worker % 2:
                    write_off(lot=lot, quantity=Decimal(1), place=shared.place, reason="Spilt", by=shared.by)
                else:
                    move(lot=lot, quantity=Decimal(2), origin=shared.place, to=shared.van, by=shared.by)
                done += 1
            except NotEnoughStock:
                pass
        return done

    at_once(work)

    here, there = shared.balance(lot), shared.balance(lot, shared.van)
    spilt = -sum(line.quantity for line in Movement.objects.filter(lot=lot, kind=Kind.WRITTEN_OFF))
    assert here[0] + there[0] + spilt == 100
    assert list(verify()) == []


def unlocked_book(lot: Lot, at: datetime) -> Book:
    """The book as `open_book` reads it, its lock let go of."""
    with transaction.atomic():
        return open_book(earliest=at, lots=[lot.pk])


def test_without_the_lock_both_take_the_last_gram(shared: Shelf) -> None:
    """Where the book is read outside the transaction that writes, only the database's own check stops the second."""
    lot = shared.lot("1", "10")
    at = timezone.now()
    entry = Entry(kind=Kind.USED, lot=lot.pk, place=shared.place.pk, quantity=-1_000_000, happened_at=at)
    first, second = unlocked_book(lot, at), unlocked_book(lot, at)

    with transaction.atomic():
        ledger.post(Kind.USED, [entry], book=first, by=shared.by, zone=ZONE)
    with pytest.raises(IntegrityError, match="balance_is_never_negative"), transaction.atomic():
        ledger.post(Kind.USED, [entry], book=second, by=shared.by, zone=ZONE)

    assert not take_one(lot, shared.place.pk, shared.by, at)  # with the lock it is refused in words
    assert shared.balance(lot) == (0, 0)


def test_without_the_lock_money_goes_astray(shared: Shelf) -> None:
    """Both take half of 0.0001, which rounds to nothing, and an empty lot would be worth something."""
    lot = shared.lot("2", "0.0001")
    at = timezone.now()
    entry = Entry(kind=Kind.USED, lot=lot.pk, place=shared.place.pk, quantity=-1_000_000, happened_at=at)
    first, second = unlocked_book(lot, at), unlocked_book(lot, at)

    with transaction.atomic():
        ledger.post(Kind.USED, [entry], book=first, by=shared.by, zone=ZONE)
    with pytest.raises(IntegrityError, match="empty_is_worth_nothing"), transaction.atomic():
        ledger.post(Kind.USED, [entry], book=second, by=shared.by, zone=ZONE)

    assert take_one(lot, shared.place.pk, shared.by, at)  # with the lock the last takes the rest
    assert shared.balance(lot) == (0, 0)


if settings.TEST_DATABASE == "postgresql":  # SQLite has one writer: inside a transaction there is no race to show

    @pytest.mark.parametrize("is_locked", [True, False])
    def test_inside_transactions_the_row_lock_is_what_prevents_the_race(
        shared: Shelf, monkeypatch: pytest.MonkeyPatch, is_locked: bool
    ) -> None:
        lots = [shared.lot("5", "1.2345") for _ in range(40)]
        at = timezone.now()
        if not is_locked:
            monkeypatch.setattr(type(connection.features), "has_select_for_update", False)
        collided = []

        def work(worker: int) -> int:
            taken = 0
            for lot in lots:
                try:
                    taken += take_one(lot, shared.place.pk, shared.by, at)
                except IntegrityError:
                    collided.append(worker)
            return taken

        taken = at_once(work)

        assert bool(collided) is not is_locked
        assert taken == 200 if is_locked else taken <= 200
