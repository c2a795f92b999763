"""Hold, reject, OK again: whom they reach, and since when."""

from datetime import date
from decimal import Decimal

import pytest
from django.utils import timezone

from inventory.stock.actions import Input, blend, edit_lot, hold, open_container, reject, release
from inventory.stock.bars import status_at
from inventory.stock.models import Lot
from inventory.stock.problems import NotOnHold, StillOnHold
from tests.stock.shelf import Shelf, day


def status(*lots: Lot) -> list[str]:
    return [Lot.objects.get(pk=lot.pk).status for lot in lots]


def mixed(shelf: Shelf, *lots: Lot) -> Lot:
    inputs = [Input(Lot.objects.get(pk=lot.pk), Decimal(1)) for lot in lots]
    return blend(material=shelf.material, inputs=inputs, reason="For the sample", by=shelf.by).lot


def test_a_hold_reaches_the_whole_number_and_all_that_was_made_of_it(shelf: Shelf) -> None:
    first = shelf.lot("100", "10", number="A-1", containers=2)
    again = shelf.lot("100", "10", number="A-1")
    other = shelf.lot("100", "10", number="B-2")
    child = open_container(lot=first, by=shelf.by)
    mix = mixed(shelf, child, other)
    deeper = mixed(shelf, mix)

    hold(lot=again, reason="Cloudy", by=shelf.by)

    assert status(first, again, child, mix, deeper, other) == ["on_hold"] * 5 + ["usable"]
    assert shelf.lot("100", "10", number="A-1").status == "on_hold"  # what comes in later
    release(lot=first, reason="Warmed, clear", by=shelf.by)
    assert status(first, again, child, mix, deeper) == ["usable"] * 5
    assert shelf.lot("100", "10", number="A-1").status == "usable"


def test_a_hold_of_one_lot_reaches_that_one_and_what_was_made_of_it(shelf: Shelf) -> None:
    first, again = shelf.lot("100", "10", number="A-1"), shelf.lot("100", "10", number="A-1")
    mix = mixed(shelf, first)

    hold(lot=first, reason="Open overnight", all_of_this_number=False, by=shelf.by)

    assert status(first, mix, again) == ["on_hold", "on_hold", "usable"]
    assert shelf.lot("100", "10", number="A-1").status == "usable"


def test_a_number_of_another_material_is_another_number(shelf: Shelf) -> None:
    resin = shelf.lot("100", "10", number="A-1")
    dye = shelf.lot("100", "10", number="A-1", material=shelf.stuff("BLU", "Blue dye", "dye"))

    hold(lot=resin, reason="Cloudy", by=shelf.by)

    assert status(resin, dye) == ["on_hold", "usable"]


def test_lots_without_a_number_on_the_label_are_each_their_own(shelf: Shelf) -> None:
    first, second = shelf.lot("100", "10"), shelf.lot("100", "10")

    hold(lot=first, reason="Cloudy", by=shelf.by)

    assert status(first, second) == ["on_hold", "usable"]


def test_a_mix_stays_held_while_another_of_its_inputs_is(shelf: Shelf) -> None:
    first, second = shelf.lot("100", "10", number="A-1"), shelf.lot("100", "10", number="B-2")
    mix = mixed(shelf, first, second)
    hold(lot=first, reason="Cloudy", by=shelf.by)
    reject(lot=second, reason="Hard", by=shelf.by)
    assert status(mix) == ["rejected"]

    release(lot=second, reason="Wrong pail", by=shelf.by)
    assert status(first, second, mix) == ["on_hold", "usable", "on_hold"]
    release(lot=first, reason="Clear", by=shelf.by)
    assert status(mix) == ["usable"]


def test_one_lot_of_a_held_number_is_released_alone(shelf: Shelf) -> None:
    first, second = shelf.lot("100", "10", number="A-1"), shelf.lot("100", "10", number="A-1")
    both = mixed(shelf, first, second)
    of_first = mixed(shelf, first)
    hold(lot=first, reason="Cloudy", by=shelf.by)

    release(lot=first, reason="Clear", all_of_this_number=False, by=shelf.by)

    assert status(first, of_first, second, both) == ["usable", "usable", "on_hold", "on_hold"]


def test_a_mix_made_of_a_held_lot_is_released_by_itself_or_with_it(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10", number="A-1")
    hold(lot=lot, reason="Cloudy", by=shelf.by)
    mix = mixed(shelf, lot)
    assert status(mix) == ["on_hold"]

    release(lot=mix, reason="Tested", by=shelf.by)
    assert status(lot, mix) == ["on_hold", "usable"]
    with pytest.raises(NotOnHold):
        release(lot=mix, reason="Again", by=shelf.by)


def test_the_status_of_a_past_moment_is_told(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10", number="A-1")
    hold(lot=lot, reason="Cloudy", since=day(5), by=shelf.by)
    reject(lot=lot, reason="Hard", since=day(8), by=shelf.by)

    told = [status_at([lot.pk], moment)[lot.pk] for moment in (day(4), day(5), day(7), day(8), timezone.now())]

    assert told == ["usable", "on_hold", "on_hold", "rejected", "rejected"]
    release(lot=lot, reason="Fine", by=shelf.by)
    assert status_at([lot.pk], day(8)) == {lot.pk: "rejected"}
    assert status_at([lot.pk], timezone.now()) == {lot.pk: "usable"}


def test_a_number_is_mended_on_a_lot_and_on_what_was_opened_from_it(shelf: Shelf) -> None:
    lot = shelf.lot("100", "10", number="A-1", containers=2, expires_on=date(2027, 1, 1))
    child = open_container(lot=lot, opened_on=date(2026, 2, 1), by=shelf.by)
    mix = mixed(shelf, child)
    assert mix.use_by == date(2026, 7, 31)

    edit_lot(lot=lot, lot_number="A-7", expires_on=date(2026, 5, 1), by=shelf.by)

    child.refresh_from_db()
    mix.refresh_from_db()
    assert (child.lot_number, child.expires_on, child.use_by) == ("A-7", date(2026, 5, 1), date(2026, 5, 1))
    assert mix.use_by == date(2026, 5, 1)


def test_a_lot_that_turns_out_to_bear_a_held_number_is_held(shelf: Shelf) -> None:
    held, other = shelf.lot("100", "10", number="A-1"), shelf.lot("100", "10", number="A-l")
    mix = mixed(shelf, other)
    hold(lot=held, reason="Cloudy", by=shelf.by)

    edit_lot(lot=other, lot_number="A-1", by=shelf.by)

    assert status(other, mix) == ["on_hold", "on_hold"]
    with pytest.raises(StillOnHold):
        edit_lot(lot=other, lot_number="A-2", by=shelf.by)
