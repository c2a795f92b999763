"""A delivery comes in: lots, lot numbers, days, and what the lines cost."""

from datetime import UTC, date, datetime
from decimal import Decimal

import pytest
import time_machine

from inventory.calc.quantities import parse_quantity
from inventory.catalog.actions import add_supplier, archive
from inventory.purchasing.actions import ChargeGiven, ContentLabel, MaterialLine, PackLine, reverse_delivery
from inventory.purchasing.models import Delivery, DeliveryLine
from inventory.purchasing.problems import LotTwice
from inventory.rest.problems import BadBody
from inventory.shop.clock import InTheFuture
from inventory.stock.models import Basis, Lot, Movement
from tests.purchasing.conftest import ARRIVED, Door, costs, lots_of, on_shelf


def test_each_line_is_one_lot_on_the_shelf_at_what_it_cost(door: Door) -> None:
    delivery = door.deliver(
        door.line(door.resin, "3 gal", "180", lot_number="K-7", containers=3), door.line(door.tape, "10 each", "25.50")
    )

    resin, tape = lots_of(delivery)
    assert (resin.lot_number, resin.is_own_number, resin.containers) == ("K-7", False, 3)
    assert on_shelf(resin) == (Decimal("11356.235352"), Decimal(180))
    assert on_shelf(tape) == (10, Decimal("25.50"))
    assert Movement.objects.get(lot=resin).happened_at == datetime(2026, 2, 2, 6, tzinfo=UTC)  # 00:00 in the shop


def test_a_missing_lot_number_gets_the_shops_own(door: Door) -> None:
    nameless, other = lots_of(door.deliver(door.line(door.resin, "1 gal", "60"), door.line(door.resin, "1 gal", "60")))

    assert nameless.is_own_number
    assert other.is_own_number
    assert nameless.lot_number != other.lot_number


def test_one_material_with_one_lot_number_comes_once_in_a_delivery(door: Door) -> None:
    first = door.line(door.resin, "1 gal", "60", lot_number="K-7")

    with pytest.raises(LotTwice) as refusal:
        door.deliver(first, door.line(door.resin, "2 gal", "120", lot_number=" K-7 "))

    assert refusal.value.errors[0]["pointer"] == "/lines/1/lot_number"
    assert not Lot.objects.exists()
    door.deliver(first, door.line(door.hardener, "1 gal", "60", lot_number="K-7"))
    door.deliver(first)  # the same number delivered again is a new lot
    assert Lot.objects.filter(material=door.resin, lot_number="K-7").count() == 2


def test_a_made_on_date_and_the_shelf_life_give_the_expiry(door: Door) -> None:
    aging = door.material("R-2", "Aging resin", "resin", "ml", shelf_life_days=30)
    made = {"made_on": date(2026, 1, 10)}

    [from_life] = lots_of(door.deliver(door.line(aging, "1 gal", "60", **made)))
    [both] = lots_of(door.deliver(door.line(aging, "1 gal", "60", expires_on=date(2026, 8, 1), **made)))

    assert from_life.expires_on == from_life.use_by == date(2026, 2, 9)
    assert both.made_on == date(2026, 1, 10)
    assert both.use_by == date(2026, 8, 1)


@pytest.mark.parametrize(
    ("days", "field"),
    [
        ({"made_on": date(2026, 1, 10), "expires_on": date(2026, 1, 9)}, "expires_on"),
        ({"made_on": date(2026, 2, 3)}, "made_on"),
    ],
)
def test_days_that_cannot_be_are_named_in_their_field(door: Door, days: dict[str, date], field: str) -> None:
    with pytest.raises(BadBody) as refusal:
        door.deliver(door.line(door.resin, "1 gal", "60", **days))

    assert [error["pointer"] for error in refusal.value.errors] == [f"/lines/0/{field}"]
    door.deliver(door.line(door.resin, "1 gal", "60", made_on=ARRIVED, expires_on=ARRIVED))


def test_nothing_is_received_tomorrow(door: Door) -> None:
    with time_machine.travel(datetime(2026, 2, 3, 5, 30, tzinfo=UTC), tick=False):  # 23:30 on the 2nd in the shop
        with pytest.raises(InTheFuture):
            door.deliver(door.line(door.resin, "1 gal", "60"), on=date(2026, 2, 3))
        door.deliver(door.line(door.resin, "1 gal", "60"), on=date(2026, 2, 2))


def test_a_cost_of_nothing_needs_a_basis_and_a_basis_costs_nothing(door: Door) -> None:
    for cost, basis, field in (("0", None, "cost"), ("0", Basis.PAID, "cost"), ("5", Basis.FREE, "basis")):
        with pytest.raises(BadBody) as refusal:
            door.deliver(door.line(door.resin, "1 gal", cost, basis=basis))
        assert refusal.value.errors[0]["pointer"] == f"/lines/0/{field}"

    delivery = door.deliver(
        door.line(door.resin, "1 gal", "0", basis=Basis.FREE),
        door.line(door.resin, "1 gal", basis=Basis.CUSTOMERS_OWN),
        door.line(door.resin, "1 gal", "5", basis=Basis.PAID),
    )
    assert costs(delivery) == [0, 0, 5]
    assert [lot.basis for lot in lots_of(delivery)] == ["free", "customers_own", "paid"]
    assert not any(lot.is_provisional for lot in lots_of(delivery))


def test_a_price_to_follow_is_booked_at_the_last_price_provisionally(door: Door) -> None:
    door.deliver(door.line(door.resin, "1000 ml", "45"), on=date(2026, 1, 5))
    door.deliver(door.line(door.resin, "1000 ml", "60"), on=date(2026, 1, 20))
    door.deliver(door.line(door.resin, "1000 ml", basis=Basis.FREE), on=date(2026, 1, 25))

    delivery = door.deliver(door.line(door.resin, "250 ml"), door.line(door.mica, "50 g"))

    assert costs(delivery) == [15, 0]
    assert [line.cost for line in delivery.lines.all()] == [None, None]
    assert all(lot.is_provisional for lot in lots_of(delivery))
    assert on_shelf(lots_of(delivery)[0]) == (250, 15)


def test_a_last_price_leaves_out_charges_and_deliveries_that_were_undone(door: Door) -> None:
    freight = ChargeGiven("freight", Decimal(8))
    door.deliver(door.line(door.resin, "1000 ml", "40"), charges=(freight,), on=date(2026, 1, 5))
    mistaken = door.deliver(door.line(door.resin, "1000 ml", "400"), on=date(2026, 1, 20))
    assert costs(door.deliver(door.line(door.resin, "100 ml"))) == [40]

    reverse_delivery(delivery=mistaken, reason="Typed a nought too many.", by=door.by)

    assert costs(door.deliver(door.line(door.resin, "100 ml"))) == [4]


def test_nothing_is_half_received(door: Door) -> None:
    with pytest.raises(BadBody) as refusal:
        door.deliver(door.line(door.resin, "1 gal", "60"), MaterialLine(999_999, parse_quantity("1 gal")))

    assert refusal.value.errors[0]["pointer"] == "/lines/1/material"
    assert (Lot.objects.count(), Delivery.objects.count(), Movement.objects.count()) == (0, 0, 0)


def test_what_is_archived_is_not_received(door: Door) -> None:
    archive(record=door.mica, by=door.by)

    with pytest.raises(BadBody) as refusal:
        door.deliver(door.line(door.mica, "50 g", "9"))
    assert refusal.value.errors[0]["pointer"] == "/lines/0/material"

    door.deliver(door.line(door.resin, "1 gal", "60"))


def test_a_kit_times_its_count_is_a_lot_of_each_content(door: Door) -> None:
    label = ContentLabel(door.resin.pk, lot_number="A-1", expires_on=date(2027, 1, 1))
    delivery = door.deliver(PackLine(door.kit().pk, count=3, cost=Decimal(90), contents=[label]))

    resin, hardener = lots_of(delivery)
    assert (resin.lot_number, resin.use_by, resin.containers) == ("A-1", date(2027, 1, 1), 3)
    assert (on_shelf(resin)[0], on_shelf(hardener)[0]) == (3000, 1500)
    assert hardener.is_own_number
    assert {(line.pack_line, line.pack_count) for line in delivery.lines.all()} == {(1, 3)}
    assert [(line.typed_amount, line.typed_unit) for line in delivery.lines.all()] == [("3000", "ml"), ("1500", "ml")]


def test_a_kits_price_is_divided_by_the_shares_that_the_shop_set(door: Door) -> None:
    kit = door.kit(shares=("70", "30"))

    assert costs(door.deliver(PackLine(kit.pk, count=2, cost=Decimal("100.01")))) == [
        Decimal("70.0070"),
        Decimal("30.0030"),
    ]


def test_without_shares_the_last_prices_say_how_a_kits_price_is_divided_and_else_the_mass(door: Door) -> None:
    kit = door.kit()
    by_mass = costs(door.deliver(PackLine(kit.pk, cost=Decimal(100))))
    assert by_mass == [Decimal("70.1863"), Decimal("29.8137")]  # 1130 g against 480 g

    door.deliver(door.line(door.resin, "1000 ml", "30"), door.line(door.hardener, "1000 ml", "60"))

    assert costs(door.deliver(PackLine(kit.pk, cost=Decimal(100)))) == [50, 50]


def test_a_kit_without_a_price_waits_for_it_content_by_content(door: Door) -> None:
    door.deliver(door.line(door.resin, "1000 ml", "30"))

    delivery = door.deliver(PackLine(door.kit().pk, count=2))

    assert costs(delivery) == [60, 0]
    assert all(lot.is_provisional for lot in lots_of(delivery))


def test_a_label_of_what_the_pack_does_not_hold_is_refused(door: Door) -> None:
    kit = door.kit()
    with pytest.raises(BadBody) as refusal:
        door.deliver(PackLine(kit.pk, cost=Decimal(100), contents=[ContentLabel(door.tape.pk, lot_number="X")]))
    assert refusal.value.errors[0]["pointer"] == "/lines/0/contents/0/material"

    door.deliver(PackLine(kit.pk, cost=Decimal(100), contents=[ContentLabel(door.resin.pk, lot_number="X")]))


def test_a_pack_comes_from_who_sells_it(door: Door) -> None:
    kit = door.kit()
    other = add_supplier(name="Quarry Road Paints", lead_time_days=3, by=door.by)
    with pytest.raises(BadBody) as refusal:
        door.deliver(PackLine(kit.pk, cost=Decimal(100)), supplier=other)
    assert refusal.value.errors[0]["pointer"] == "/lines/0/pack"

    door.deliver(PackLine(kit.pk, cost=Decimal(100)))


def test_what_the_line_keeps_is_what_the_ledger_carries(door: Door) -> None:
    kits = PackLine(door.kit().pk, count=2)
    door.deliver(door.line(door.resin, "3 gal", "180"), kits, door.line(door.mica, "0.25 lb", "8"))

    lines = DeliveryLine.objects.all()
    assert len(lines) == 4
    for line in lines:
        assert on_shelf(line.lot) == (line.quantity, line.landed_cost)
