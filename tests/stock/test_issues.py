"""What leaves a lot other than by a pour, and how it comes back."""

from datetime import date
from decimal import Decimal

import pytest

from inventory.rest.problems import BadBody, Unprocessable
from inventory.shop.clock import InTheFuture
from inventory.stock.actions import empty, give_away, move, return_goods, reverse_posting, write_off
from inventory.stock.models import Basis, Kind, Movement, Place, Posting, Return
from inventory.stock.problems import AlreadyUndone, NotEnoughStock, NotUndoneHere, NotWhole, UsedBeforeReceived
from tests.stock.shelf import Shelf, day


def undo(shelf: Shelf, posting: int) -> None:
    reverse_posting(posting=Posting.objects.get(pk=posting), reason="Mistake", by=shelf.by)


def test_all_of_a_lot_is_written_off_wherever_it_lies(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10")
    move(lot=lot, quantity=Decimal(40), to=shelf.van, happened_at=day(1), by=shelf.by)

    with pytest.raises(BadBody, match="several places"):
        write_off(lot=lot, quantity=Decimal(10), reason="Hard", by=shelf.by)
    posted = write_off(lot=lot, quantity=None, reason="Hard", by=shelf.by)

    assert (shelf.balance(lot), shelf.balance(lot, shelf.van)) == ((0, 0), (0, 0))
    undo(shelf, posted.id)
    assert (shelf.balance(lot), shelf.balance(lot, shelf.van)) == ((60, 6), (40, 4))


@pytest.mark.parametrize("asked", ["99.9990", "100.0000", "100.0010"])
def test_all_but_a_thousandth_is_all(shelf: Shelf, asked: str) -> None:
    lot = shelf.lot("100", "10")

    write_off(lot=lot, quantity=Decimal(asked), reason="Hard", by=shelf.by)

    assert shelf.balance(lot) == (0, 0)


@pytest.mark.parametrize(("asked", "left"), [("99.9989", "0.0011"), ("100.0011", None)])
def test_more_than_a_thousandth_is_a_difference(shelf: Shelf, asked: str, left: str | None) -> None:
    lot = shelf.lot("100", "10")

    if left is None:
        with pytest.raises(NotEnoughStock):
            write_off(lot=lot, quantity=Decimal(asked), reason="Hard", by=shelf.by)
    else:
        write_off(lot=lot, quantity=Decimal(asked), reason="Hard", by=shelf.by)
        assert shelf.balance(lot)[0] == Decimal(left)


def test_a_write_off_is_dated_between_the_receipt_and_now(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10", on=date(2026, 2, 10))

    with pytest.raises(UsedBeforeReceived):
        write_off(lot=lot, quantity=Decimal(1), reason="Spilt", happened_at=day(9), by=shelf.by)
    with pytest.raises(InTheFuture):
        write_off(lot=lot, quantity=Decimal(1), reason="Spilt", happened_at=day(9).replace(year=2199), by=shelf.by)
    write_off(lot=lot, quantity=Decimal(1), reason="Spilt", happened_at=day(10), by=shelf.by)
    assert shelf.balance(lot)[0] == 99


def test_goods_go_back_to_whom_they_came_from_and_the_credit_revalues_nothing(shelf: Shelf) -> None:
    bought = shelf.lot("100", "10")
    borrowed = shelf.lot("100", "0", basis=Basis.BORROWED)

    with pytest.raises(Unprocessable, match="has no lender"):
        return_goods(lot=bought, quantity=Decimal(10), to="lender", reason="Dented", by=shelf.by)
    with pytest.raises(Unprocessable, match="goes back to its lender"):
        return_goods(lot=borrowed, quantity=Decimal(10), to="supplier", reason="Lent", by=shelf.by)
    posted = return_goods(
        lot=bought, quantity=Decimal(10), to="supplier", credit=Decimal("3.5"), reason="Dented", by=shelf.by
    )
    return_goods(lot=borrowed, quantity=None, to="lender", reason="Given back", by=shelf.by)

    assert Return.objects.get(posting=posted.id).credit == Decimal("3.5")
    assert (shelf.balance(bought), shelf.balance(borrowed)) == ((90, 9), (0, 0))


def test_a_price_is_noted_when_something_is_sold(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10")

    posted = give_away(lot=lot, quantity=Decimal(10), reason="To a neighbour", price=Decimal("4.00"), by=shelf.by)

    assert Posting.objects.get(pk=posted.id).reason == "To a neighbour (for 4.00)"
    assert shelf.balance(lot) == (90, 9)


def test_the_rest_of_an_empty_pail_is_waste_of_the_pours_that_used_it_in_proportion(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10")
    shelf.use(lot, "60", at=day(1), cause=1)
    shelf.use(lot, "30", at=day(2), cause=2)
    gone = shelf.use(lot, "5", at=day(3), cause=3)
    shelf.take_back(gone)

    posted = empty(lot=lot, by=shelf.by)

    waste = Movement.objects.filter(posting=posted.id).order_by("cause").values_list("kind", "cause", "quantity")
    assert list(waste) == [("wasted", 1, Decimal("-6.666667")), ("wasted", 2, Decimal("-3.333333"))]
    assert shelf.balance(lot) == (0, 0)
    undo(shelf, posted.id)
    assert shelf.balance(lot) == (10, 1)
    with pytest.raises(AlreadyUndone):
        undo(shelf, posted.id)


def test_an_unused_pail_that_is_empty_is_written_off(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10")

    posted = empty(lot=lot, by=shelf.by)

    assert Posting.objects.get(pk=posted.id).kind == "written_off"
    with pytest.raises(NotEnoughStock):
        empty(lot=lot, by=shelf.by)


def test_what_comes_back_brings_its_money_with_every_later_charge(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10")
    posted = write_off(lot=lot, quantity=Decimal(50), reason="Spilt", happened_at=day(1), by=shelf.by)
    shelf.charge(lot, "4")

    undo(shelf, posted.id)

    assert shelf.balance(lot) == (100, 14)


def test_a_move_is_undone_at_what_it_is_worth_now(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10")
    moved = move(lot=lot, quantity=Decimal(50), to=shelf.van, happened_at=day(1), by=shelf.by)
    shelf.charge(lot, "4")
    assert shelf.balance(lot, shelf.van) == (50, 7)
    used = shelf.use(lot, "20", at=day(2), place=shelf.van)

    with pytest.raises(NotWhole) as refusal:
        undo(shelf, moved.id)
    assert [step["posting"] for step in refusal.value.extra["first"]] == [used.id]

    shelf.take_back(used)
    undo(shelf, moved.id)
    assert (shelf.balance(lot), shelf.balance(lot, shelf.van)) == ((100, 14), (0, 0))
    with pytest.raises(AlreadyUndone):
        undo(shelf, moved.id)


def test_a_lot_is_not_moved_to_where_it_lies_nor_to_an_archived_place(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10")
    Place.objects.filter(pk=shelf.van.pk).update(is_archived=True)
    shelf.van.refresh_from_db()

    with pytest.raises(BadBody, match="lies at Shop already"):
        move(lot=lot, quantity=None, to=shelf.place, by=shelf.by)
    with pytest.raises(BadBody, match="archived"):
        move(lot=lot, quantity=None, to=shelf.van, by=shelf.by)


def test_what_belongs_elsewhere_is_not_undone_here(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10")
    used = shelf.use(lot, "10", at=day(1), cause=1)
    wasted = shelf.use(lot, "10", at=day(1), cause=1, kind=Kind.WASTED)
    received = Movement.objects.get(lot=lot, kind="received").posting_id

    for posting in (used.id, wasted.id, received):
        with pytest.raises(NotUndoneHere):
            undo(shelf, posting)
