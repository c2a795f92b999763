"""`manage.py verify_ledger` says what differs, for each thing that could: the guards are taken away, something is
tampered with, and the check that must notice is the one that does."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import timedelta
from decimal import Decimal
from io import StringIO
from typing import Any

import pytest
from django.core.management import CommandError, call_command
from django.db import connection

from inventory.stock.actions import Counted, Input, blend, count_place, hold, move, open_container, write_off
from inventory.stock.models import Balance, Lot, Movement
from inventory.stock.triggers import drop_triggers, install_triggers
from inventory.stock.verification import CHECKS, verify
from tests.stock.shelf import Shelf, day

Tamper = tuple[str, str]


@pytest.fixture
def busy(shelf: Shelf) -> Shelf:
    """A shelf on which some of everything happened."""
    pail = shelf.lot("1000", "50", number="A-1", containers=4)
    gold = shelf.lot("100", "20", number="G-1", material=shelf.stuff("GLD", "Gold paste", "paste"))
    opened = open_container(lot=pail, happened_at=day(2), by=shelf.by)
    shelf.use(opened, "40", at=day(3), cause=7)
    blend(
        material=shelf.material,
        inputs=[Input(opened, Decimal(100)), Input(gold, Decimal(10))],
        made_at=day(4),
        by=shelf.by,
    )
    move(lot=pail, quantity=Decimal(100), to=shelf.van, happened_at=day(5), by=shelf.by)
    write_off(lot=gold, quantity=Decimal(5), reason="Hard", happened_at=day(6), by=shelf.by)
    lines = [Counted(pail, Decimal(640)), Counted(gold, Decimal(86))]
    count_place(place=shelf.place, counted_at=day(7), lines=lines, by=shelf.by)
    shelf.charge(pail, "3.3333")
    hold(lot=gold, reason="Cloudy", by=shelf.by)
    return shelf


@contextmanager
def unguarded() -> Iterator[Any]:
    """A cursor for what the guards would refuse, and constraints that wait."""
    drop_triggers(connection)
    try:
        with connection.cursor() as cursor:
            yield cursor
    finally:
        install_triggers(connection)


def differing() -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for finding in verify():
        found.setdefault(finding.check, []).append(finding.words)
    return found


def test_a_sound_ledger_agrees_with_itself(busy: Shelf) -> None:
    out = StringIO()

    call_command("verify_ledger", stdout=out)

    assert differing() == {}
    assert "The ledger agrees with itself." in out.getvalue()
    assert all(f"ok       {check}" in out.getvalue() for check in CHECKS)


def test_the_command_names_what_differs_and_fails(busy: Shelf) -> None:
    Balance.objects.filter(lot__lot_number="G-1").update(quantity=Decimal(80))
    out = StringIO()

    with pytest.raises(CommandError, match="differences in the ledger"):
        call_command("verify_ledger", stdout=out)

    assert "DIFFERS  balances are the sums of their movements" in out.getvalue()
    assert "6.000000 more than the balance" in out.getvalue()


TAMPERINGS = {
    "balances are the sums of their movements": "UPDATE stock_balance SET quantity = quantity + 1",
    "no lot was below zero at any past moment": (
        "UPDATE stock_movement SET quantity = quantity * 2000 WHERE kind = 'used'"
    ),
    "no lot was below zero, or worth something while empty, after any posting": (
        "UPDATE stock_movement SET value = value - 90000000 WHERE kind = 'used'"
    ),
    "what came in is on hand or went": "UPDATE stock_movement SET quantity = quantity + 1 WHERE kind = 'received'",
    "every line is an inflow, an issue or a move, within bounds": (
        "UPDATE stock_movement SET into_lot_id = lot_id WHERE kind = 'used'"
    ),
    "moves, openings and mixes net to zero": (
        "UPDATE stock_movement SET value = value - 1 WHERE kind = 'moved' AND quantity < 0"
    ),
    "what went into a lot is what came into it": (
        "UPDATE stock_movement SET value = value + 1 WHERE kind = 'blended' AND into_lot_id IS NULL"
    ),
    "a changed cost was spread in proportion": (
        "UPDATE stock_movement SET value = value - 1 WHERE kind = 'opened' AND quantity = 0 AND into_lot_id IS NOT NULL"
    ),
    "counts hold": "UPDATE stock_stockcountline SET counted = counted + 1",
}


@pytest.mark.parametrize(("check", "tampering"), TAMPERINGS.items(), ids=TAMPERINGS)
def test_tampering_is_noticed(busy: Shelf, check: str, tampering: str) -> None:
    with unguarded() as cursor:
        cursor.execute(tampering)

    assert check in differing()


def test_a_missing_guard_is_named(busy: Shelf) -> None:
    drop_triggers(connection)
    found = differing()
    install_triggers(connection)

    assert any("stock_movement_update" in words for words in found["the guards over the ledger are there"])


def test_a_line_of_another_material_is_named(busy: Shelf) -> None:
    other = shelf_material(busy)
    line = Movement.objects.get(kind="used", corrects=None)
    with unguarded() as cursor:
        cursor.execute("UPDATE stock_movement SET material_id = %s WHERE id = %s", [other, line.pk])

    [words] = differing()["every line names its lot's material, and corrects a line of its own kind"]
    assert words == f"movement {line.pk} names another material than its lot"


def shelf_material(shelf: Shelf) -> int:
    return shelf.stuff("BLU", "Blue dye", "dye").pk


def test_a_second_taking_back_is_named(busy: Shelf) -> None:
    line = Movement.objects.get(kind="used", corrects=None)
    with unguarded() as cursor:
        for _ in range(2):
            cursor.execute(
                "INSERT INTO stock_movement (posting_id, kind, lot_id, material_id, place_id, quantity, value, "
                "happened_at, happened_on, corrects_id) SELECT posting_id, kind, lot_id, material_id, place_id, "
                "-quantity, -value, happened_at, happened_on, id FROM stock_movement WHERE id = %s",
                [line.pk],
            )

    assert differing()["nothing is taken back more than once"][0].startswith(f"of movement {line.pk} ")


@pytest.mark.parametrize(("shift", "word"), [(timedelta(days=-60), "came in"), (timedelta(days=4000), "recorded")])
def test_a_line_at_an_impossible_time_is_named(busy: Shelf, shift: timedelta, word: str) -> None:
    line = Movement.objects.get(kind="used", corrects=None)
    moment = connection.ops.adapt_datetimefield_value(line.happened_at + shift)
    with unguarded() as cursor:
        cursor.execute("UPDATE stock_movement SET happened_at = %s WHERE id = %s", [moment, line.pk])

    found = differing()
    assert any(word in words for words in found["nothing happened before its lot came in, or after it was recorded"])
    assert "every line has its day" in found


def test_a_circle_of_lots_is_named(busy: Shelf) -> None:
    gold = Lot.objects.get(lot_number="G-1")
    mix = Lot.objects.get(origin="blend")
    with unguarded() as cursor:
        cursor.execute(
            "UPDATE stock_movement SET kind = 'blended', into_lot_id = %s WHERE kind = 'written_off'", [mix.pk]
        )
        cursor.execute(
            "INSERT INTO stock_movement (posting_id, kind, lot_id, material_id, place_id, quantity, value, "
            "happened_at, happened_on, into_lot_id) SELECT posting_id, 'blended', %s, %s, place_id, -1, 0, "
            "happened_at, happened_on, %s FROM stock_movement WHERE kind = 'used'",
            [mix.pk, mix.material_id, gold.pk],
        )

    assert any("circle" in words for words in differing()["what is traced sums to what was received"])


def test_a_status_or_use_by_that_nothing_says_is_named(busy: Shelf) -> None:
    Lot.objects.filter(lot_number="G-1").update(status="usable")
    Lot.objects.filter(origin="opened").update(use_by=None)

    found = differing()["lots stand as their bars say, and keep as their dates say"]
    assert len(found) == 2


def test_every_check_is_shown_to_notice_something() -> None:
    elsewhere = {
        "the guards over the ledger are there",
        "every line names its lot's material, and corrects a line of its own kind",
        "nothing is taken back more than once",
        "nothing happened before its lot came in, or after it was recorded",
        "every line has its day",
        "what is traced sums to what was received",
        "lots stand as their bars say, and keep as their dates say",
    }
    assert set(TAMPERINGS) | elsewhere == set(CHECKS)
