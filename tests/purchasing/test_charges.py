"""Freight, duty and discounts, with the goods and long after them."""

from datetime import UTC, date, datetime
from decimal import Decimal

import pytest
import time_machine

from inventory.calc.landed_cost import SpreadBy
from inventory.catalog.problems import UnitMismatch
from inventory.purchasing.actions import ChargeGiven, PriceGiven, add_charge, set_prices
from inventory.purchasing.models import ChargeShare, Delivery
from inventory.purchasing.problems import NothingToSpreadOver
from inventory.rest.problems import BadBody
from inventory.shop.clock import InTheFuture
from inventory.stock.models import Basis, Kind, Movement, Posting
from inventory.stock.problems import CreditTooLarge
from tests.purchasing.conftest import Door, costs, lots_of, on_shelf, used_money


def charge(amount: str, spread_by: SpreadBy = SpreadBy.VALUE, kind: str = "freight") -> ChargeGiven:
    return ChargeGiven(kind, Decimal(amount), spread_by)


def later(door: Door, delivery: Delivery, given: ChargeGiven, on: date = date(2026, 3, 1)) -> Delivery:
    return add_charge(delivery=delivery, charge=given, charged_on=on, by=door.by)


def test_a_charge_is_spread_to_the_last_ten_thousandth(door: Door) -> None:
    three = [door.line(door.resin, "1 gal", "50") for _ in range(3)]

    assert costs(door.deliver(*three, charges=(charge("100"),))) == [
        Decimal("83.3334"),
        Decimal("83.3333"),
        Decimal("83.3333"),
    ]


@pytest.mark.parametrize(
    ("spread_by", "landed"),
    [
        (SpreadBy.VALUE, ["45", "15"]),
        (SpreadBy.MASS, ["42.4880", "17.5120"]),  # 1130 g against 960 g
        (SpreadBy.QUANTITY, ["42", "18"]),
    ],
)
def test_a_charge_is_spread_by_value_mass_or_quantity(door: Door, spread_by: SpreadBy, landed: list[str]) -> None:
    lines = [door.line(door.resin, "1 l", "36"), door.line(door.hardener, "1 l", "12")]

    assert costs(door.deliver(*lines, charges=(charge("12", spread_by),))) == [Decimal(cost) for cost in landed]


def test_by_mass_every_line_needs_one_and_the_refusal_says_which_has_none(door: Door) -> None:
    lines = [door.line(door.resin, "1 l", "36"), door.line(door.mica, "50 g", "9"), door.line(door.tape, "4 each", "8")]

    with pytest.raises(UnitMismatch) as refusal:
        door.deliver(*lines, charges=(charge("12"), charge("5", SpreadBy.MASS)))

    assert "Edge tape" in refusal.value.detail
    assert "Pearl mica" not in refusal.value.detail
    assert refusal.value.errors[0]["pointer"] == "/charges/1/spread_by"
    assert refusal.value.extra == {"lines": [3], "materials": [door.tape.pk]}
    assert [remedy["kind"] for remedy in refusal.value.remedies] == ["spread_by"]  # tape has no density to give
    door.deliver(*lines[:2], charges=(charge("12"), charge("5", SpreadBy.MASS)))


def test_a_liquid_without_a_density_is_asked_for_it(door: Door) -> None:
    thinner = door.material("S-1", "Thinner", "solvent", "ml")

    with pytest.raises(UnitMismatch) as refusal:
        door.deliver(door.line(thinner, "1 l", "9"), charges=(charge("5", SpreadBy.MASS),))

    assert refusal.value.remedies[0]["kind"] == "give_figure"
    assert refusal.value.remedies[0]["material"] == thinner.pk


def test_by_quantity_all_lines_are_in_one_unit(door: Door) -> None:
    volumes = [door.line(door.resin, "1 l", "36"), door.line(door.hardener, "1 gal", "9")]

    with pytest.raises(UnitMismatch) as refusal:
        door.deliver(*volumes, door.line(door.mica, "4 g", "8"), charges=(charge("5", SpreadBy.QUANTITY),))

    assert "Pearl mica" in refusal.value.detail
    door.deliver(*volumes, charges=(charge("5", SpreadBy.QUANTITY),))


def test_a_charge_by_value_needs_a_value(door: Door) -> None:
    lines = [door.line(door.resin, "1 l"), door.line(door.hardener, "1 l", basis=Basis.FREE)]

    with pytest.raises(NothingToSpreadOver) as refusal:
        door.deliver(*lines, charges=(charge("5"),))

    assert {"give_price", "spread_by"} == {remedy["kind"] for remedy in refusal.value.remedies}
    assert costs(door.deliver(*lines, charges=(charge("5", SpreadBy.QUANTITY),))) == [Decimal("2.5"), Decimal("2.5")]


def test_a_discount_is_never_more_than_the_goods_cost(door: Door) -> None:
    lines = [door.line(door.resin, "1 l", "36"), door.line(door.hardener, "3 l", "12")]

    for too_much in (charge("-48.0001"), charge("-17", SpreadBy.QUANTITY)):  # 12.75 of 17 on the hardener
        with pytest.raises(CreditTooLarge):
            door.deliver(*lines, charges=(too_much,))

    assert costs(door.deliver(*lines, charges=(charge("-48"),))) == [0, 0]
    assert costs(door.deliver(*lines, charges=(charge("-16", SpreadBy.QUANTITY),))) == [32, 0]


def test_a_charge_of_nothing_is_refused(door: Door) -> None:
    with pytest.raises(BadBody) as refusal:
        door.deliver(door.line(door.resin, "1 l", "36"), charges=(charge("0"),))
    assert refusal.value.errors[0]["pointer"] == "/charges/0/amount"


def test_a_late_charge_reaches_what_was_used_and_what_is_left(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "4000 ml", "80"), door.line(door.hardener, "1 l", "20"))
    resin, hardener = lots_of(delivery)
    door.use(resin, "1000")

    later(door, delivery, charge("25"))

    assert on_shelf(resin) == (3000, 75)
    assert used_money(resin) == 25
    assert on_shelf(hardener) == (1000, 25)
    assert costs(delivery) == [100, 25]


def test_a_late_charge_keeps_its_own_day_beside_that_of_the_goods(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "4000 ml", "80"))

    later(door, delivery, charge("25"), on=date(2026, 3, 9))

    posting = Posting.objects.get(kind=Kind.CHARGED)
    assert (posting.charged_on, posting.reason) == (date(2026, 3, 9), "freight")
    assert Movement.objects.get(posting=posting).happened_on == date(2026, 2, 2)
    assert delivery.charges.get().charged_on == date(2026, 3, 9)


def test_a_late_charge_is_spread_as_the_delivery_stands(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1 l", "30"), door.line(door.hardener, "1 l"))
    later(door, delivery, charge("6"))
    assert costs(delivery) == [36, 0]
    hardener = delivery.lines.get(material=door.hardener)
    set_prices(delivery=delivery, prices=[PriceGiven(Decimal(30), line=hardener.pk)], by=door.by)

    later(door, delivery, charge("6"))

    assert costs(delivery) == [39, 33]


def test_a_late_credit_is_never_more_than_the_goods_cost(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1 l", "30"))
    [lot] = lots_of(delivery)
    door.use(lot, "250")

    with pytest.raises(CreditTooLarge):
        later(door, delivery, charge("-30.0001", kind="credit"))
    assert (on_shelf(lot), used_money(lot)) == ((750, Decimal("22.5")), Decimal("7.5"))

    later(door, delivery, charge("-30", kind="credit"))
    assert (on_shelf(lot), used_money(lot)) == ((750, 0), 0)


def test_a_charge_is_not_dated_ahead(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1 l", "30"))

    with time_machine.travel(datetime(2026, 3, 1, 18, tzinfo=UTC), tick=False):
        with pytest.raises(InTheFuture):
            later(door, delivery, charge("5"), on=date(2026, 3, 2))
        later(door, delivery, charge("5"), on=date(2026, 3, 1))


def test_what_a_line_bears_is_the_sum_of_its_shares(door: Door) -> None:
    delivery = door.deliver(
        door.line(door.resin, "1 l", "30"), door.line(door.hardener, "1 l", "11"), charges=(charge("7"), charge("-1"))
    )
    later(door, delivery, charge("0.0001"))
    later(door, delivery, charge("9", SpreadBy.MASS))

    for line in delivery.lines.all():
        assert line.charges == sum(share.amount for share in ChargeShare.objects.filter(line=line))
        assert on_shelf(line.lot)[1] == line.landed_cost
    assert sum(line.charges for line in delivery.lines.all()) == Decimal("15.0001")
