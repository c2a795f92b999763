"""Opening a container, and saying that it was not opened after all."""

from datetime import date
from decimal import Decimal

import pytest

from inventory.rest.problems import Unprocessable
from inventory.shop.clock import InTheFuture
from inventory.stock.actions import hold, move, open_container, undo_opening
from inventory.stock.models import Lot
from inventory.stock.problems import AlreadyOpen, AlreadyUndone, NotEnoughStock, NotWhole
from tests.stock.shelf import Shelf, day


def test_one_of_several_splits_off_with_its_share_its_dates_and_its_own_use_by(shelf: Shelf) -> None:
    lot = shelf.lot("1000", "50", number="A-1", containers=4, expires_on=date(2027, 1, 1))

    child = open_container(lot=lot, opened_on=date(2026, 2, 1), by=shelf.by)

    lot.refresh_from_db()
    assert (child.opened_from, child.lot_number, child.expires_on) == (lot, "A-1", date(2027, 1, 1))
    assert (child.received_on, child.received_at) == (lot.received_on, day(1, 6))  # 00:00 in the shop
    assert child.use_by == date(2026, 7, 31)  # 180 days once open
    assert (shelf.balance(child), shelf.balance(lot)) == ((250, Decimal("12.5")), (750, Decimal("37.5")))
    assert (lot.containers, lot.opened_on, lot.use_by) == (3, None, date(2027, 1, 1))


def test_the_share_stays_even_when_something_was_used_of_the_lot(shelf: Shelf) -> None:
    lot = shelf.lot("1000", "50", containers=4)
    first = open_container(lot=lot, happened_at=day(1), by=shelf.by)
    shelf.use(lot, "300", at=day(2))  # taken from closed ones, without saying so
    second = open_container(lot=lot, happened_at=day(3), by=shelf.by)
    third = open_container(lot=lot, happened_at=day(4), by=shelf.by)

    assert [shelf.balance(child)[0] for child in (first, second)] == [250, 250]
    assert (shelf.balance(third)[0], shelf.balance(lot)[0]) == (200, 0)  # less was left than its share


def test_the_last_container_is_open_itself(shelf: Shelf) -> None:
    lot = shelf.lot("1000", "50")

    opened = open_container(lot=lot, opened_on=date(2026, 2, 1), by=shelf.by)

    assert (opened.pk, opened.opened_on, opened.use_by) == (lot.pk, date(2026, 2, 1), date(2026, 7, 31))
    assert shelf.kinds(lot) == ["received"]
    with pytest.raises(AlreadyOpen):
        open_container(lot=lot, by=shelf.by)
    closed = undo_opening(lot=opened, reason="Still sealed", by=shelf.by)
    assert (closed.opened_on, closed.use_by) == (None, None)
    with pytest.raises(AlreadyUndone):
        undo_opening(lot=closed, reason="Again", by=shelf.by)


def test_an_opening_is_undone_while_nothing_was_taken(shelf: Shelf) -> None:
    lot = shelf.lot("1000", "50", containers=4)
    child = open_container(lot=lot, happened_at=day(1), by=shelf.by)
    used = shelf.use(child, "10", at=day(2), cause=7)

    with pytest.raises(NotWhole) as refusal:
        undo_opening(lot=child, reason="Other pail", by=shelf.by)
    [first] = refusal.value.extra["first"]
    assert (first["posting"], first["kind"], first["cause"], first["quantity"]) == (used.id, "used", 7, "10.000000")

    shelf.take_back(used)
    shelf.charge(lot, "8")
    undo_opening(lot=child, reason="Other pail", by=shelf.by)

    assert (shelf.balance(child), shelf.balance(lot)) == ((0, 0), (1000, 58))
    assert Lot.objects.get(pk=lot.pk).containers == 4


def test_a_lot_that_was_moved_is_put_back_after_the_move_is_undone(shelf: Shelf) -> None:
    child = open_container(lot=shelf.lot("1000", "50", containers=4), happened_at=day(1), by=shelf.by)
    move(lot=child, quantity=None, to=shelf.van, happened_at=day(2), by=shelf.by)

    with pytest.raises(NotWhole, match="moved to another place"):
        undo_opening(lot=child, reason="Other pail", by=shelf.by)


def test_a_container_of_a_held_lot_is_held(shelf: Shelf) -> None:
    lot = shelf.lot("1000", "50", containers=4)
    hold(lot=lot, reason="Cloudy", by=shelf.by)

    child = open_container(lot=Lot.objects.get(pk=lot.pk), by=shelf.by)

    assert (child.status, child.status_events.get().reason) == ("on_hold", "Cloudy")


def test_opening_is_refused_where_it_cannot_have_been(shelf: Shelf) -> None:
    lot = shelf.lot("1000", "50", containers=4)

    with pytest.raises(Unprocessable, match="cannot have been opened before"):
        open_container(lot=lot, opened_on=date(2026, 1, 4), by=shelf.by)
    with pytest.raises(InTheFuture):
        open_container(lot=lot, opened_on=date(2199, 1, 4), by=shelf.by)
    with pytest.raises(NotEnoughStock):
        open_container(lot=lot, place=shelf.van, by=shelf.by)
    assert open_container(lot=lot, opened_on=date(2026, 1, 5), by=shelf.by).opened_from == lot
