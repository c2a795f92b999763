"""The bill arrives after the goods, or was read wrongly the first time."""

from datetime import UTC, date, datetime
from decimal import Decimal

import pytest

from inventory.calc.landed_cost import SpreadBy
from inventory.purchasing.actions import ChargeGiven, PackLine, PriceGiven, set_prices
from inventory.purchasing.models import Delivery
from inventory.rest.problems import BadBody
from inventory.shop.models import Change
from inventory.stock.actions import Input, blend, open_container
from inventory.stock.models import Basis, Lot, Posting
from inventory.stock.problems import CreditTooLarge
from tests.purchasing.conftest import Door, costs, lots_of, on_shelf, used_money


def price(door: Door, delivery: Delivery, *given: PriceGiven) -> Delivery:
    return set_prices(delivery=delivery, prices=given, by=door.by)


def by_line(delivery: Delivery, cost: str, position: int = 1, basis: Basis | None = None) -> PriceGiven:
    return PriceGiven(Decimal(cost), line=delivery.lines.get(position=position).pk, basis=basis)


def test_a_price_that_follows_settles_the_lot_and_what_was_used_of_it(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1000 ml"))
    [lot] = lots_of(delivery)
    door.use(lot, "250")
    assert (used_money(lot), lot.is_provisional) == (0, True)

    price(door, delivery, by_line(delivery, "40"))

    lot.refresh_from_db()
    assert (on_shelf(lot), used_money(lot)) == ((750, 30), 10)
    assert not lot.is_provisional
    assert delivery.lines.get().cost == 40


def test_a_price_may_be_corrected_again_and_again(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1000 ml", "40"), charges=(ChargeGiven("freight", Decimal(4)),))
    [lot] = lots_of(delivery)
    door.use(lot, "250")

    for cost, on_the_shelf, used in (("56", "45", "15"), ("16", "15", "5"), ("40", "33", "11")):
        price(door, delivery, by_line(delivery, cost))
        assert (on_shelf(lot)[1], used_money(lot)) == (Decimal(on_the_shelf), Decimal(used))

    assert costs(delivery) == [44]


def test_every_change_of_a_price_is_in_the_change_log(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1000 ml"))
    price(door, delivery, by_line(delivery, "40"))
    price(door, delivery, by_line(delivery, "36.50"))

    changes = Change.objects.filter(noun="deliveryline", record=delivery.lines.get().pk).order_by("id")
    assert [(change.field, change.before, change.after) for change in changes] == [
        ("cost", "", "40"),
        ("cost", "40", "36.5"),
    ]


def test_a_price_that_was_guessed_right_moves_no_money(door: Door) -> None:
    door.deliver(door.line(door.resin, "1000 ml", "40"))
    delivery = door.deliver(door.line(door.resin, "500 ml"))
    before = Posting.objects.count()

    price(door, delivery, by_line(delivery, "20"))

    assert Posting.objects.count() == before
    assert not lots_of(delivery)[0].is_provisional


def test_a_price_of_nothing_needs_a_basis(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1000 ml"))

    with pytest.raises(BadBody) as refusal:
        price(door, delivery, by_line(delivery, "0"))
    assert refusal.value.errors[0]["pointer"] == "/lines/0/cost"

    price(door, delivery, by_line(delivery, "0", basis=Basis.FREE))
    assert lots_of(delivery)[0].basis == "free"
    price(door, delivery, by_line(delivery, "10"))
    assert lots_of(delivery)[0].basis == "paid"


def test_a_price_below_the_discount_is_refused(door: Door) -> None:
    discount = ChargeGiven("discount", Decimal(-10))
    delivery = door.deliver(door.line(door.resin, "1000 ml", "40"), charges=(discount,))

    with pytest.raises(CreditTooLarge):
        price(door, delivery, by_line(delivery, "9.9999"))
    assert costs(delivery) == [30]

    price(door, delivery, by_line(delivery, "10"))
    assert costs(delivery) == [0]


def test_a_line_of_another_delivery_and_a_line_twice_are_named(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1000 ml"))
    other = door.deliver(door.line(door.resin, "1000 ml"))

    with pytest.raises(BadBody) as refusal:
        price(door, delivery, by_line(delivery, "5"), by_line(other, "5"), by_line(delivery, "6"))

    assert [error["pointer"] for error in refusal.value.errors] == ["/lines/1/line", "/lines/2/line"]
    price(door, delivery, by_line(delivery, "5"))


def test_a_kits_price_that_follows_is_divided_like_one_that_was_known(door: Door) -> None:
    kit = door.kit(shares=("75", "25"))
    delivery = door.deliver(door.line(door.mica, "5 g", "2"), PackLine(kit.pk, count=2))

    with pytest.raises(BadBody) as refusal:
        price(door, delivery, PriceGiven(Decimal(100), pack_line=2))
    assert refusal.value.errors[0]["pointer"] == "/lines/0/pack_line"

    price(door, delivery, PriceGiven(Decimal(100), pack_line=1))
    assert costs(delivery) == [2, 75, 25]
    assert not any(lot.is_provisional for lot in lots_of(delivery))


def test_charges_stay_as_they_were_spread(door: Door) -> None:
    freight = ChargeGiven("freight", Decimal(6), SpreadBy.QUANTITY)
    delivery = door.deliver(door.line(door.resin, "1 l"), door.line(door.hardener, "2 l", "8"), charges=(freight,))

    price(door, delivery, by_line(delivery, "90"))

    assert costs(delivery) == [92, 12]


def jug_of(door: Door, *inputs: Lot) -> Lot:
    """A jug of 100 ml from each of these lots."""
    taken = [Input(lot, Decimal(100)) for lot in inputs]
    return blend(material=door.resin, inputs=taken, made_at=datetime(2026, 2, 10, 18, tzinfo=UTC), by=door.by).lot


def test_a_blend_waits_until_the_last_of_its_prices_is_known(door: Door) -> None:
    first = door.deliver(door.line(door.resin, "200 ml"))
    second = door.deliver(door.line(door.resin, "200 ml"))
    jug = jug_of(door, *lots_of(first), *lots_of(second))
    second_jug = jug_of(door, jug)
    assert jug.is_provisional

    price(door, first, by_line(first, "20"))
    jug.refresh_from_db()
    assert (jug.is_provisional, on_shelf(jug)) == (True, (100, 5))

    price(door, second, by_line(second, "40"))
    jug.refresh_from_db()
    second_jug.refresh_from_db()
    assert (jug.is_provisional, on_shelf(jug)) == (False, (100, 15))
    assert (second_jug.is_provisional, on_shelf(second_jug)) == (False, (100, 15))


def test_a_price_goes_on_into_what_was_blended_and_used_from_it(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "200 ml", "20"))
    jug = jug_of(door, *lots_of(delivery))
    door.use(jug, "50", day=11)

    price(door, delivery, by_line(delivery, "40"))

    assert on_shelf(lots_of(delivery)[0]) == (100, 20)
    assert (on_shelf(jug), used_money(jug)) == ((50, 10), 10)


def test_an_opened_container_follows_its_lot(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "400 ml", containers=2))
    opened = open_container(lot=lots_of(delivery)[0], opened_on=date(2026, 2, 10), by=door.by)
    assert opened.is_provisional

    price(door, delivery, by_line(delivery, "0", basis=Basis.BORROWED))
    opened.refresh_from_db()
    assert (opened.is_provisional, opened.basis) == (False, "borrowed")

    price(door, delivery, by_line(delivery, "40"))
    opened.refresh_from_db()
    assert (opened.basis, on_shelf(opened)) == ("paid", (200, 20))


def test_a_jug_with_something_free_in_it_says_so_until_that_is_priced(door: Door) -> None:
    free = door.deliver(door.line(door.resin, "200 ml", basis=Basis.FREE))
    paid = door.deliver(door.line(door.resin, "200 ml", "40"))
    jug = jug_of(door, *lots_of(paid), *lots_of(free))
    assert jug.basis == "free"

    price(door, paid, by_line(paid, "44"))
    jug.refresh_from_db()
    assert jug.basis == "free"

    price(door, free, by_line(free, "10"))
    jug.refresh_from_db()
    assert jug.basis == "paid"
