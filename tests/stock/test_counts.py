"""Counts: what they post, what they promise, how they are undone."""

from datetime import date, datetime
from decimal import Decimal

import pytest

from inventory.rest.problems import BadBody
from inventory.shop.clock import InTheFuture
from inventory.stock.actions import Counted, count_place, move, undo_count
from inventory.stock.models import Lot, Movement, Posting, StockCount
from inventory.stock.problems import AlreadyCounted, AlreadyUndone, NotEnoughStock, NotWhole, UsedBeforeReceived
from tests.stock.shelf import Shelf, day


def count(shelf: Shelf, at: datetime, **found: Lot) -> StockCount:
    """count(shelf, day(1), n60=lot) found 60 of the lot."""
    lines = [Counted(lot, Decimal(name.removeprefix("n"))) for name, lot in found.items()]
    return count_place(place=shelf.place, counted_at=at, lines=lines, by=shelf.by)


def test_a_loss_takes_its_share_of_the_money_and_a_gain_comes_in_at_unit_cost(shelf: Shelf) -> None:
    short, long, right, silent = (shelf.lot("100", "10") for _ in range(4))

    made = count(shelf, day(1), n60=short, n120=long, n100=right)

    assert [shelf.balance(lot) for lot in (short, long, right, silent)] == [(60, 6), (120, 12), (100, 10), (100, 10)]
    assert [(line.book, line.counted, line.difference) for line in made.lines.all()] == [
        (100, 60, -40),
        (100, 120, 20),
        (100, 100, 0),
    ]
    assert Movement.objects.filter(posting=made.posting).count() == 2


def test_a_lot_that_the_book_has_elsewhere_is_found_at_the_place(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10", place=shelf.van)

    count(shelf, day(1), n5=lot)

    assert (shelf.balance(lot), shelf.balance(lot, shelf.van)) == ((5, Decimal("0.5")), (100, 10))


def test_the_book_is_that_of_the_moment_of_the_count(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10")
    shelf.use(lot, "30", at=day(5))

    made = count(shelf, day(3), n90=lot)

    assert (made.lines.get().book, shelf.balance(lot)) == (100, (60, 6))


def test_what_is_entered_later_and_dated_before_a_count_leaves_it_true(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10")
    count(shelf, day(10), n60=lot)

    used = shelf.use(lot, "25", at=day(5))
    assert shelf.balance(lot) == (60, 6)
    assert shelf.kinds(lot) == ["received", "counted", "counted", "used"]  # the gain first

    shelf.take_back(used)
    assert shelf.balance(lot) == (60, 6)
    shelf.use(lot, "20", at=day(11))  # after it, things move on
    assert shelf.balance(lot) == (40, 4)


def test_an_undone_count_promises_nothing_and_leaves_nothing(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10")
    made = count(shelf, day(10), n60=lot)
    shelf.use(lot, "25", at=day(5))

    undo_count(count=made, reason="Wrong shelf", by=shelf.by)

    assert shelf.balance(lot) == (75, Decimal("7.5"))
    shelf.use(lot, "5", at=day(6))
    assert shelf.balance(lot) == (70, 7)
    with pytest.raises(AlreadyUndone):
        undo_count(count=made, reason="Again", by=shelf.by)
    again = count(shelf, day(10), n50=lot)  # the same moment is free again
    undo_count(count=again, reason="Again", by=shelf.by)
    assert shelf.balance(lot) == (70, 7)


def test_a_gain_that_was_used_since_cannot_be_undone(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10")
    made = count(shelf, day(1), n120=lot)
    used = shelf.use(lot, "110", at=day(2))

    with pytest.raises(NotWhole) as refusal:
        undo_count(count=made, reason="Wrong shelf", by=shelf.by)

    assert [step["posting"] for step in refusal.value.extra["first"]] == [used.id]
    assert made.lines.get().is_asserted
    shelf.take_back(used)
    undo_count(count=made, reason="Wrong shelf", by=shelf.by)
    assert shelf.balance(lot) == (100, 10)


def test_a_count_that_cannot_be_is_refused(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10", on=date(2026, 2, 2))
    shelf.use(lot, "80", at=day(10))
    postings = Posting.objects.count()

    with pytest.raises(NotEnoughStock):  # 80 of 50 would have been used afterwards
        count(shelf, day(5), n50=lot)
    with pytest.raises(UsedBeforeReceived):
        count(shelf, day(1), n50=lot)
    with pytest.raises(InTheFuture):
        count(shelf, datetime.fromisoformat("2199-01-01T00:00:00Z"), n50=lot)
    with pytest.raises(BadBody, match="twice"):
        count_place(
            place=shelf.place,
            counted_at=day(5),
            lines=[Counted(lot, Decimal(90)), Counted(lot, Decimal(9))],
            by=shelf.by,
        )
    assert Posting.objects.count() == postings
    count(shelf, day(5), n100=lot)
    with pytest.raises(AlreadyCounted):
        count(shelf, day(5), n90=lot)


def test_a_move_before_a_count_of_either_place_leaves_both_true(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10")
    count(shelf, day(10), n60=lot)

    move(lot=lot, quantity=Decimal(30), to=shelf.van, happened_at=day(5), by=shelf.by)

    assert (shelf.balance(lot), shelf.balance(lot, shelf.van)) == ((60, 6), (30, 3))
