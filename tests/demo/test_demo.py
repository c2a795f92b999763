"""The invented shop is a whole one: everything a visitor should find is there, and its ledger adds up."""

from datetime import date

import pytest
from django.core.management import call_command

from inventory.demo.diary import write_diary
from inventory.demo.events import BAD_HARDENER
from inventory.demo.fill import fill
from inventory.demo.keeper import Keeper
from inventory.jobs.models import Job
from inventory.pours.models import Pour
from inventory.shop.models import Person
from inventory.stock.models import Balance, Blend, Lot, StockCount

pytestmark = pytest.mark.django_db

DAY = date(2026, 6, 15)


@pytest.fixture(scope="module")
def keeper(django_db_setup: None, django_db_blocker: object) -> Keeper:
    from django.db import connection, transaction

    with django_db_blocker.unblock():  # type: ignore[attr-defined]
        atomic = transaction.atomic()
        atomic.__enter__()
        yield fill(today=DAY)
        transaction.set_rollback(True)
        atomic.__exit__(None, None, None)
        connection.close()


def test_the_same_seed_writes_the_same_diary() -> None:
    assert write_diary(seed=3, today=DAY) == write_diary(seed=3, today=DAY)
    assert write_diary(seed=3, today=DAY) != write_diary(seed=4, today=DAY)


def test_the_shop_has_everything_a_visitor_should_find(keeper: Keeper) -> None:
    assert 28 <= len(keeper.materials) <= 36
    assert 70 <= Lot.objects.count() <= 110
    assert Job.objects.count() == 45
    assert 140 <= Pour.objects.count() <= 165
    assert Pour.objects.filter(status="planned").exists()
    assert Balance.objects.filter(quantity__gt=0, lot__use_by__lt=DAY).exists(), "something expired on the shelf"
    assert set(Lot.objects.values_list("basis", flat=True)) == {"paid", "free", "borrowed", "customers_own"}
    assert Lot.objects.filter(is_provisional=True).exists()
    assert Blend.objects.count() == 3
    assert StockCount.objects.count() == 2


def test_one_hardener_stands_behind_the_soft_tops(keeper: Keeper) -> None:
    repaired = Job.objects.filter(pieces__pour_pieces__pour__layer="repair").distinct()

    assert repaired.count() == 3
    for job in repaired:
        assert job.pieces.filter(pour_pieces__pour__usages__lot__lot_number=BAD_HARDENER).exists()
    assert set(Lot.objects.filter(lot_number=BAD_HARDENER).values_list("status", flat=True)) == {"on_hold"}


def test_the_demo_s_ledger_adds_up(keeper: Keeper) -> None:
    call_command("verify_ledger", verbosity=0)


def test_a_shop_that_is_there_is_left_alone(keeper: Keeper, capsys: pytest.CaptureFixture[str]) -> None:
    before = Person.objects.count(), Lot.objects.count()

    call_command("fill_demo")

    assert (Person.objects.count(), Lot.objects.count()) == before
    assert "leaves it as it is" in capsys.readouterr().out
