"""The one door of the ledger: what a posting does, and what it refuses."""

from datetime import UTC, date, datetime
from decimal import Decimal
from zoneinfo import ZoneInfo

import pytest
from django.db import DatabaseError, connection, transaction

from inventory.calc.bookkeeping import Entry
from inventory.catalog.models import Material
from inventory.shop.fields import to_whole
from inventory.shop.models import Person
from inventory.stock import ledger
from inventory.stock.actions import Arrival, receive
from inventory.stock.book import open_book
from inventory.stock.corrections import lots_made_from, revaluation_entries, standing, take_back
from inventory.stock.models import Balance, Kind, Lot, Movement, Place, Posting
from inventory.stock.problems import CreditTooLarge, NotEnoughStock, UsedBeforeReceived
from inventory.stock.queries import default_place
from inventory.stock.triggers import install_triggers, missing_triggers

ZONE = ZoneInfo("America/Chicago")


class Shelf:
    """Puts lots on a shelf and takes from them, through the real doors."""

    def __init__(self, by: Person) -> None:
        self.by = by
        self.place: Place = default_place()
        self.material = Material.objects.create(
            number=1, code="RES", name="Clear resin A", kind="resin", stock_unit="ml", density_g_per_ml=Decimal("1.13")
        )

    def lot(self, quantity: str, value: str, *, on: date = date(2026, 1, 5), number: str | None = None) -> Lot:
        arrival = Arrival(self.material, Decimal(quantity), Decimal(value), lot_number=number)
        return receive(arrivals=[arrival], place=self.place, received_on=on, zone=ZONE, by=self.by).lots[0]

    def use(self, lot: Lot, quantity: str, *, at: datetime, kind: Kind = Kind.USED) -> ledger.Posted:
        with transaction.atomic():
            book = open_book(earliest=at, lots=[lot.pk])
            entry = Entry(
                kind=kind, lot=lot.pk, place=self.place.pk, quantity=-to_whole(Decimal(quantity), 6), happened_at=at
            )
            return ledger.post(kind, [entry], book=book, by=self.by, zone=ZONE)

    def take_back(self, posted: ledger.Posted) -> ledger.Posted:
        with transaction.atomic():
            issues = list(standing(posted.movements).values())
            book = open_book(earliest=min(issue.happened_at for issue in issues), lots={issue.lot for issue in issues})
            return ledger.post(Kind.REVERSED, take_back(issues), book=book, by=self.by, zone=ZONE)

    def charge(self, lot: Lot, amount: str) -> ledger.Posted:
        with transaction.atomic():
            book = open_book(earliest=lot.received_at, lots=lots_made_from([lot.pk]))
            entries = revaluation_entries(book, {lot.pk: to_whole(Decimal(amount), 4)})
            return ledger.post(Kind.CHARGED, entries, book=book, by=self.by, zone=ZONE)

    def balance(self, lot: Lot) -> tuple[Decimal, Decimal]:
        row = Balance.objects.get(lot=lot, place=self.place)
        return row.quantity, row.value


@pytest.fixture
def shelf(owner: Person) -> Shelf:
    return Shelf(owner)


def day(number: int, hour: int = 12) -> datetime:
    return datetime(2026, 2, number, hour, tzinfo=UTC)


def test_an_issue_takes_money_in_proportion_and_the_last_takes_the_rest(shelf: Shelf) -> None:
    lot = shelf.lot("3", "10")

    shelf.use(lot, "1", at=day(1))
    assert shelf.balance(lot) == (Decimal(2), Decimal("6.6667"))

    shelf.use(lot, "2", at=day(2))
    assert shelf.balance(lot) == (0, 0)


def test_more_than_is_there_is_refused_and_nothing_is_written(shelf: Shelf) -> None:
    lot = shelf.lot("3", "10")
    before = Posting.objects.count(), Movement.objects.count()

    with pytest.raises(NotEnoughStock) as refusal:
        shelf.use(lot, "3.5", at=day(1))

    assert refusal.value.extra["missing"] == "0.500000"
    assert (Posting.objects.count(), Movement.objects.count()) == before
    assert shelf.balance(lot) == (3, 10)


def test_nothing_is_used_before_it_was_received(shelf: Shelf) -> None:
    lot = shelf.lot("3", "10", on=date(2026, 2, 10))

    with pytest.raises(UsedBeforeReceived):
        shelf.use(lot, "1", at=day(9))

    shelf.use(lot, "1", at=day(10))


def test_a_backdated_issue_takes_at_most_the_lowest_balance_since(shelf: Shelf) -> None:
    lot = shelf.lot("10", "100")
    shelf.use(lot, "8", at=day(20))

    with pytest.raises(NotEnoughStock) as refusal:
        shelf.use(lot, "3", at=day(5))

    assert refusal.value.extra["there"] == "2.000000"
    shelf.use(lot, "2", at=day(5))


def test_taking_an_issue_back_restores_its_quantity_and_its_money_with_the_later_charge(shelf: Shelf) -> None:
    lot = shelf.lot("4", "40")
    used = shelf.use(lot, "1", at=day(1))
    shelf.charge(lot, "8")
    assert shelf.balance(lot) == (3, 36)

    shelf.take_back(used)

    assert shelf.balance(lot) == (4, 48)


def test_a_credit_cannot_exceed_what_the_lot_cost(shelf: Shelf) -> None:
    lot = shelf.lot("4", "40")

    with pytest.raises(CreditTooLarge):
        shelf.charge(lot, "-40.0001")

    shelf.charge(lot, "-40")
    assert shelf.balance(lot) == (4, 0)


def test_a_lot_number_on_hold_comes_in_on_hold(shelf: Shelf) -> None:
    lot = shelf.lot("4", "40", number="K-7")
    Lot.objects.filter(pk=lot.pk).update(status="on_hold")

    assert shelf.lot("1", "1", number="K-7").status == "on_hold"
    assert shelf.lot("1", "1", number="K-8").status == "usable"


@pytest.mark.parametrize("table", ["stock_posting", "stock_movement"])
@pytest.mark.parametrize("verb", ["UPDATE {} SET id = id", "DELETE FROM {}"])
def test_the_database_refuses_to_change_the_ledger(shelf: Shelf, table: str, verb: str) -> None:
    shelf.lot("4", "40")

    with pytest.raises(DatabaseError, match="append-only"), transaction.atomic(), connection.cursor() as cursor:
        cursor.execute(verb.format(table))


def test_a_missing_guard_is_noticed(db: None) -> None:
    assert missing_triggers(connection) == []
    with connection.cursor() as cursor:
        on = " ON stock_movement" if connection.vendor == "postgresql" else ""
        cursor.execute(f"DROP TRIGGER stock_movement_update{on}")

    assert missing_triggers(connection) == ["stock_movement_update"]
    install_triggers(connection)
    assert missing_triggers(connection) == []
