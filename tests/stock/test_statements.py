"""How many SQL statements each act and each list takes: the same, however long the history."""

from collections.abc import Callable
from decimal import Decimal
from typing import Any

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from rest_framework.test import APIClient

from inventory.shop.models import Person
from inventory.stock.actions import (
    Counted,
    Input,
    blend,
    count_place,
    edit_lot,
    empty,
    give_away,
    hold,
    move,
    open_container,
    release,
    return_goods,
    reverse_posting,
    undo_blend,
    undo_count,
    undo_opening,
    write_off,
)
from inventory.stock.models import Lot, Posting
from tests.stock.shelf import Shelf, day

FRAMES = ("SAVEPOINT", "RELEASE SAVEPOINT", "BEGIN", "COMMIT", "SET TRANSACTION")


def statements(act: Callable[[], Any]) -> int:
    with CaptureQueriesContext(connection) as queries:
        act()
    return sum(not row["sql"].startswith(FRAMES) for row in queries.captured_queries)


@pytest.fixture(params=[1, 25], ids=["short history", "long history"])
def pail(shelf: Shelf, request: pytest.FixtureRequest) -> Lot:
    """A pail with a short or a long history: uses, openings, mixes, moves."""
    lot = shelf.lot("1000", "50", number="A-1", containers=60)
    for _ in range(request.param):
        shelf.use(lot, "1", at=day(1), cause=1)
        opened = open_container(lot=Lot.objects.get(pk=lot.pk), place=shelf.place, happened_at=day(2), by=shelf.by)
        blend(material=shelf.material, inputs=[Input(opened, Decimal(1))], made_at=day(3), by=shelf.by)
        move(lot=lot, quantity=Decimal(1), to=shelf.van, origin=shelf.place, happened_at=day(4), by=shelf.by)
    other = shelf.lot("10", "1")
    count_place(place=shelf.place, counted_at=day(5), lines=[Counted(other, Decimal(9))], by=shelf.by)
    return Lot.objects.select_related("material").get(pk=lot.pk)


def last_posting() -> Posting:
    posting = Posting.objects.order_by("-id").first()
    assert posting
    return posting


def test_each_act_takes_a_fixed_number_of_statements(shelf: Shelf, pail: Lot) -> None:
    by, place = shelf.by, shelf.place
    one = Decimal(1)
    common: dict[str, Any] = {"lot": pail, "quantity": one, "reason": "At all", "place": place, "by": by}
    taken: dict[str, int] = {
        "write off": statements(lambda: write_off(**common)),
        "take back": statements(lambda: reverse_posting(posting=last_posting(), reason="No", by=by)) - 1,
        "return": statements(lambda: return_goods(**common, to="supplier")),
        "give": statements(lambda: give_away(**common)),
        "move": statements(lambda: move(lot=pail, quantity=one, origin=place, to=shelf.van, by=by)),
        "move back": statements(lambda: reverse_posting(posting=last_posting(), reason="No", by=by)) - 1,
        "open": statements(lambda: open_container(lot=pail, place=place, happened_at=day(9), by=by)),
    }
    opened = Lot.objects.filter(origin="opened").latest("id")
    taken["undo opening"] = statements(lambda: undo_opening(lot=opened, reason="No", by=by))
    lines = [Counted(pail, Decimal(500))]
    taken["count"] = statements(lambda: count_place(place=place, counted_at=day(10), lines=lines, by=by))
    count = last_posting()
    made = count_of(count)
    taken["undo count"] = statements(lambda: undo_count(count=made, reason="No", by=by))
    inputs = [Input(pail, one)]
    taken["mix"] = statements(
        lambda: blend(material=shelf.material, inputs=inputs, place=place, made_at=day(11), by=by)
    )
    mix = Lot.objects.filter(origin="blend").latest("id").blend
    taken["undo mix"] = statements(lambda: undo_blend(blend=mix, reason="No", by=by))
    taken["hold"] = statements(lambda: hold(lot=pail, reason="Cloudy", by=by))
    taken["OK again"] = statements(lambda: release(lot=pail, reason="Clear", by=by))
    taken["empty"] = statements(lambda: empty(lot=pail, place=place, by=by))

    assert taken == {
        "write off": 7,
        "take back": 10,
        "return": 8,
        "give": 7,
        "move": 7,
        "move back": 9,
        "open": 16,
        "undo opening": 15,
        "count": 10,
        "undo count": 16,
        "mix": 18,
        "undo mix": 14,
        "hold": 10,
        "OK again": 13,
        "empty": 9,
    }


def count_of(posting: Posting) -> Any:
    from inventory.stock.models import StockCount

    return StockCount.objects.get(posting=posting)


LISTS = {
    "lots/": 6,
    "movements/": 8,
    "movements/?format=csv": 6,
    "shelf/": 6,
    "stock-counts/": 4,
    "blends/": 13,
    "places/": 3,
}


@pytest.mark.parametrize(("url", "taken"), LISTS.items(), ids=LISTS)
def test_each_list_takes_a_fixed_number_of_statements(
    shelf: Shelf, pail: Lot, api: Callable[[Person], APIClient], url: str, taken: int
) -> None:
    client = api(shelf.by)

    assert statements(lambda: client.get(f"/api/{url}")) == taken


def test_mending_a_lot_takes_a_statement_more_for_each_lot_that_changes(shelf: Shelf, pail: Lot) -> None:
    lots = Lot.objects.count()

    assert statements(lambda: edit_lot(lot=pail, lot_number="A-2", by=shelf.by)) <= 20 + lots
