"""House mixes and jugs: what goes together, what it costs, how long it keeps, how it is taken apart."""

from datetime import date
from decimal import Decimal

import pytest

from inventory.catalog.models import Material
from inventory.rest.problems import BadBody
from inventory.shop.models import Person
from inventory.stock.actions import Input, blend, hold, undo_blend
from inventory.stock.models import Basis, Blend, Lot
from inventory.stock.problems import (
    AlreadyUndone,
    DoesNotMix,
    LotExpired,
    LotOnHold,
    NotEnoughStock,
    NotWhole,
)
from tests.stock.shelf import Shelf, day


def mix(shelf: Shelf, *parts: tuple[Lot, str], material: Material | None = None, **more: object) -> Blend:
    inputs = [Input(Lot.objects.get(pk=lot.pk), Decimal(quantity)) for lot, quantity in parts]
    told = {"made_at": day(10), "by": shelf.by, **more}
    return blend(material=material or shelf.material, inputs=inputs, **told)  # type: ignore[arg-type]


@pytest.fixture
def gold(shelf: Shelf) -> Material:
    return shelf.stuff("GLD", "Gold paste", "paste")


def test_a_mix_costs_what_went_in_and_keeps_as_its_earliest_input(shelf: Shelf, gold: Material) -> None:
    resin = shelf.lot("1000", "50", expires_on=date(2027, 5, 1))
    paste = shelf.lot("100", "20", material=gold, expires_on=date(2026, 9, 1), basis=Basis.FREE, is_provisional=True)

    made = mix(shelf, (resin, "500"), (paste, "50"), lot_number="HOUSE-1")

    assert shelf.balance(made.lot) == (550, 35)
    assert (made.lot.use_by, made.lot.lot_number) == (date(2026, 9, 1), "HOUSE-1")
    assert (made.lot.basis, made.lot.is_provisional) == (Basis.FREE, True)
    assert (shelf.balance(resin), shelf.balance(paste)) == ((500, 25), (50, 10))


def test_a_later_charge_goes_on_into_the_mix_and_what_was_mixed_from_it(shelf: Shelf) -> None:
    resin = shelf.lot("1000", "50")
    jug = mix(shelf, (resin, "500")).lot
    bottle = mix(shelf, (jug, "100")).lot

    shelf.charge(resin, "10")

    assert [shelf.balance(lot)[1] for lot in (resin, jug, bottle)] == [30, 24, 6]


def test_resin_and_hardener_are_refused_at_any_depth(shelf: Shelf, gold: Material) -> None:
    hardener = shelf.lot("1000", "50", material=shelf.stuff("HRD", "Hardener B", "hardener"))
    resin = shelf.lot("1000", "50")
    tinted = mix(shelf, (resin, "100"), material=gold).lot
    deeper = mix(shelf, (tinted, "50"), material=gold).lot

    for lot in (resin, tinted, deeper):
        with pytest.raises(DoesNotMix):
            mix(shelf, (lot, "10"), (hardener, "10"), material=gold)
    with pytest.raises(DoesNotMix):
        mix(shelf, (hardener, "10"))
    assert mix(shelf, (hardener, "10"), material=gold).lot.origin == "blend"


def test_a_doubtful_input_takes_the_owner_with_a_reason_and_the_mix_is_as_doubtful(shelf: Shelf, crew: Person) -> None:
    old = shelf.lot("100", "10", expires_on=date(2026, 2, 9))
    held = shelf.lot("100", "10", number="H-1")
    hold(lot=held, reason="Cloudy", by=shelf.by)

    for lot, problem in [(old, LotExpired), (held, LotOnHold)]:
        with pytest.raises(problem):
            mix(shelf, (lot, "10"))
        with pytest.raises(problem):
            mix(shelf, (lot, "10"), by=crew, reason="Looks fine")
    assert mix(shelf, (old, "10"), made_at=day(9)).lot.status == "usable"  # its last good day
    assert mix(shelf, (held, "10"), reason="For the sample").lot.status == "on_hold"


def test_what_is_not_there_is_not_mixed(shelf: Shelf, gold: Material) -> None:
    resin = shelf.lot("100", "10")
    grams = shelf.lot("100", "10", material=shelf.stuff("MIC", "Mica", "powder", "g"))

    with pytest.raises(NotEnoughStock):
        mix(shelf, (resin, "101"))
    with pytest.raises(BadBody, match="twice"):
        mix(shelf, (resin, "1"), (resin, "2"))
    with pytest.raises(BadBody, match="different units"):
        mix(shelf, (resin, "1"), (grams, "2"))
    assert shelf.balance(mix(shelf, (resin, "10"), (grams, "2"), quantity=Decimal(11)).lot)[0] == 11


def test_a_mix_is_taken_apart_while_whole(shelf: Shelf, gold: Material) -> None:
    resin, paste = shelf.lot("1000", "50"), shelf.lot("100", "20", material=gold)
    made = mix(shelf, (resin, "500"), (paste, "100"))
    used = shelf.use(made.lot, "1", at=day(11))

    with pytest.raises(NotWhole):
        undo_blend(blend=made, reason="Wrong gold", by=shelf.by)

    shelf.take_back(used)
    shelf.charge(resin, "10")
    undo_blend(blend=made, reason="Wrong gold", by=shelf.by)
    assert [shelf.balance(lot) for lot in (resin, paste, made.lot)] == [(1000, 60), (100, 20), (0, 0)]
    with pytest.raises(AlreadyUndone):
        undo_blend(blend=made, reason="Again", by=shelf.by)
