"""The one door of the ledger: what a posting does, and what it refuses."""

from datetime import date
from decimal import Decimal

import pytest
from django.db import DatabaseError, connection, transaction

from inventory.stock.actions import hold
from inventory.stock.models import Movement, Posting
from inventory.stock.problems import CreditTooLarge, NotEnoughStock, UsedBeforeReceived
from inventory.stock.triggers import install_triggers, missing_triggers
from tests.stock.shelf import Shelf, day


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
    hold(lot=lot, reason="Cloudy", by=shelf.by)

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
