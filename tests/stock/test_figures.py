"""Stock figures: on hand, usable, reserved, available; and setting aside."""

from datetime import date
from decimal import Decimal

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from inventory.stock.actions import hold
from inventory.stock.models import Reservation
from inventory.stock.queries import available, stock_figures
from inventory.stock.reservations import SetAside, release, reserve
from tests.stock.shelf import Shelf, day


def test_usable_leaves_out_held_and_expired_lots_and_available_what_is_set_aside(shelf: Shelf) -> None:
    shelf.lot("100", "10", expires_on=date(2026, 5, 31), number="A-1")
    held = shelf.lot("50", "5", number="B-2")
    shelf.lot("7", "1", number="C-3", place=shelf.van)
    hold(lot=held, reason="Cloudy", by=shelf.by)
    reserve(wants=[SetAside(shelf.material.pk, Decimal(120))], place=shelf.place, cause=1, needed_on=date(2026, 5, 1))

    last_good_day = stock_figures(on=date(2026, 5, 31))[shelf.material.pk]
    day_after = stock_figures(on=date(2026, 6, 1))[shelf.material.pk]
    in_the_van = stock_figures(on=date(2026, 6, 1), place=shelf.van)[shelf.material.pk]

    assert (last_good_day.on_hand, last_good_day.usable, last_good_day.reserved) == (157, 107, 120)
    assert (last_good_day.available, last_good_day.value, last_good_day.lots) == (-13, 16, 3)
    assert last_good_day.next_use_by == date(2026, 5, 31)
    assert (day_after.usable, day_after.available, day_after.next_use_by) == (7, -113, None)
    assert (in_the_van.on_hand, in_the_van.reserved, in_the_van.available) == (7, 0, 7)


def test_what_was_set_aside_is_free_again_once_released(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10")
    wants = [SetAside(shelf.material.pk, Decimal(40)), SetAside(shelf.material.pk, Decimal(10), lot=lot.pk)]
    reserve(wants=wants, place=shelf.place, cause=1, job_key=3)
    reserve(wants=wants[:1], place=shelf.place, cause=2)
    on = date(2026, 2, 1)

    assert available(materials=[shelf.material.pk], on=on) == {shelf.material.pk: 10}
    release(cause=1)
    assert available(materials=[shelf.material.pk], on=on) == {shelf.material.pk: 60}
    assert Reservation.objects.get().cause == 2


def test_a_material_without_stock_has_figures_of_nothing(shelf: Shelf) -> None:
    assert available(materials=[shelf.material.pk], on=date(2026, 2, 1)) == {shelf.material.pk: 0}


@pytest.mark.parametrize("lots", [1, 12])
def test_figures_and_reserving_take_the_same_statements_for_one_lot_and_for_many(shelf: Shelf, lots: int) -> None:
    for number in range(lots):
        material = shelf.stuff(f"M{number}", f"Material {number}", "dye")
        shelf.use(shelf.lot("100", "10", material=material), "1", at=day(1))
    wants = [SetAside(line.material_id, Decimal(1)) for line in shelf_lots()]

    with CaptureQueriesContext(
        connection,
    ) as figures:
        stock_figures(on=date(2026, 2, 1))
    with CaptureQueriesContext(connection) as reserving:
        reserve(wants=wants, place=shelf.place, cause=1)

    assert (len(figures), len(statements(reserving))) == (2, 4)


def shelf_lots() -> "list[object]":
    from inventory.stock.models import Lot

    return list(Lot.objects.all())


def statements(queries: CaptureQueriesContext) -> list[str]:
    return [row["sql"] for row in queries.captured_queries if "SAVEPOINT" not in row["sql"]]
