"""A delivery was written down wrongly: another quantity, or it never came."""

from datetime import UTC, date, datetime
from decimal import Decimal

import pytest

from inventory.calc.quantities import parse_quantity
from inventory.purchasing.actions import (
    ChargeGiven,
    PriceGiven,
    QuantityGiven,
    add_charge,
    correct_quantities,
    reverse_delivery,
    set_prices,
)
from inventory.purchasing.models import Delivery
from inventory.rest.problems import BadBody
from inventory.shop.models import Change
from inventory.stock.actions import (
    Counted,
    Input,
    blend,
    count_place,
    move,
    open_container,
    reverse_posting,
    undo_count,
)
from inventory.stock.models import Balance, Movement, Place, Posting, StockCount
from inventory.stock.problems import AlreadyUndone, NotEnoughStock, NotWhole, TooFewContainers
from tests.purchasing.conftest import Door, costs, lots_of, on_shelf, used_money


def correct(door: Door, delivery: Delivery, *quantities: str) -> Delivery:
    lines = delivery.lines.order_by("position")
    given = [QuantityGiven(line.pk, parse_quantity(said)) for line, said in zip(lines, quantities, strict=False)]
    return correct_quantities(delivery=delivery, quantities=given, reason="Counted the slip again.", by=door.by)


def test_more_came_than_was_written_the_money_stays_and_every_part_takes_its_share(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1000 ml", "90"))
    [lot] = lots_of(delivery)
    door.use(lot, "500")
    assert (on_shelf(lot), used_money(lot)) == ((500, 45), 45)

    correct(door, delivery, "1500 ml")

    assert (on_shelf(lot), used_money(lot)) == ((1000, 60), 30)
    assert costs(delivery) == [90]


def test_less_came_than_was_written_down_to_what_was_used_since(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1000 ml", "90"))
    [lot] = lots_of(delivery)
    door.use(lot, "500")

    with pytest.raises(NotEnoughStock) as refusal:
        correct(door, delivery, "499 ml")
    assert refusal.value.extra["least"] == {"amount": "500", "unit": "ml"}
    assert (on_shelf(lot), used_money(lot)) == ((500, 45), 45)

    correct(door, delivery, "750 ml")
    assert (on_shelf(lot), used_money(lot)) == ((250, 30), 60)
    correct(door, delivery, "500 ml")
    assert (on_shelf(lot), used_money(lot)) == ((0, 0), 90)


def test_a_correction_there_and_back_leaves_everything_as_it_was(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1000 ml", "10"), door.line(door.mica, "70 g", "0.0001"))
    resin, mica = lots_of(delivery)
    door.use(resin, "333")
    door.use(mica, "1")
    before = [(on_shelf(lot), used_money(lot)) for lot in (resin, mica)]

    correct(door, delivery, "717 ml", "71 g")
    assert [on_shelf(lot)[1] + used_money(lot) for lot in (resin, mica)] == [10, Decimal("0.0001")]
    correct(door, delivery, "1000 ml", "70 g")

    assert [(on_shelf(lot), used_money(lot)) for lot in (resin, mica)] == before


def test_what_was_typed_and_the_change_log_tell_the_correction(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1 gal", "90"))

    correct(door, delivery, "2 gal")

    line = delivery.lines.get()
    assert (line.typed_amount, line.typed_unit, line.quantity) == ("2", "gal", Decimal("7570.823568"))
    change = Change.objects.get(noun="deliveryline", record=line.pk)
    assert (change.field, change.before, change.after) == (
        "quantity",
        "1 gal of Table resin A",
        "2 gal of Table resin A",
    )


def test_a_correction_to_the_same_quantity_writes_nothing(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1 gal", "90"))
    before = Movement.objects.count()

    correct(door, delivery, "4 qt")

    assert Movement.objects.count() == before


def test_a_later_charge_is_spread_over_the_corrected_quantity(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1000 ml", "90"))
    [lot] = lots_of(delivery)
    door.use(lot, "500")
    correct(door, delivery, "2000 ml")

    freight = ChargeGiven("freight", Decimal(10))
    add_charge(delivery=delivery, charge=freight, charged_on=delivery.received_on, by=door.by)

    assert (on_shelf(lot), used_money(lot)) == ((1500, 75), 25)


def test_an_untouched_delivery_is_undone_and_nothing_of_it_is_left(door: Door) -> None:
    delivery = door.deliver(
        door.line(door.resin, "1000 ml", "90"),
        door.line(door.mica, "5 g"),
        charges=(ChargeGiven("freight", Decimal(6)),),
    )
    add_charge(delivery=delivery, charge=ChargeGiven("duty", Decimal(3)), charged_on=delivery.received_on, by=door.by)
    correct(door, delivery, "900 ml")

    undone = reverse_delivery(delivery=delivery, reason="Booked twice.", by=door.by)

    assert undone.is_undone
    assert {(row.quantity, row.value) for row in Balance.objects.all()} == {(0, 0)}
    assert sum(movement.value for movement in Movement.objects.all()) == 0
    assert not any(lot.is_provisional for lot in lots_of(delivery))


def test_a_delivery_that_was_used_from_is_undone_only_after_that(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1000 ml", "90"), door.line(door.mica, "5 g", "4"))
    resin, _ = lots_of(delivery)
    poured = door.use(resin, "250", cause=7)

    with pytest.raises(NotWhole) as refusal:
        reverse_delivery(delivery=delivery, reason="Booked twice.", by=door.by)
    [first] = refusal.value.extra["first"]
    assert (first["posting"], first["kind"], first["lot"], first["cause"]) == (poured.id, "used", resin.pk, 7)
    assert on_shelf(resin) == (750, Decimal("67.5"))

    door.undo(poured)
    reverse_delivery(delivery=delivery, reason="Booked twice.", by=door.by)
    assert on_shelf(resin) == (0, 0)


def test_what_was_undone_is_neither_undone_nor_changed_again(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1000 ml", "90"))
    line = delivery.lines.get().pk
    reverse_delivery(delivery=delivery, reason="Booked twice.", by=door.by)
    freight = ChargeGiven("freight", Decimal(1))

    for act in (
        lambda: reverse_delivery(delivery=delivery, reason="Again.", by=door.by),
        lambda: correct(door, delivery, "2000 ml"),
        lambda: set_prices(delivery=delivery, prices=[PriceGiven(Decimal(5), line=line)], by=door.by),
        lambda: add_charge(delivery=delivery, charge=freight, charged_on=delivery.received_on, by=door.by),
    ):
        with pytest.raises(AlreadyUndone):
            act()


def test_a_correction_names_each_line_once_and_only_its_own(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1000 ml", "90"))
    other = door.deliver(door.line(door.resin, "1000 ml", "90")).lines.get().pk
    own = delivery.lines.get().pk
    said = parse_quantity("900 ml")

    with pytest.raises(BadBody) as refusal:
        correct_quantities(
            delivery=delivery,
            quantities=[QuantityGiven(own, said), QuantityGiven(other, said), QuantityGiven(own, said)],
            reason="Counted again.",
            by=door.by,
        )

    assert [error["pointer"] for error in refusal.value.errors] == ["/lines/1/line", "/lines/2/line"]


def test_the_correction_happened_when_the_goods_came(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1000 ml", "90"))
    [lot] = lots_of(delivery)

    correct(door, delivery, "800 ml")

    first, second = Movement.objects.filter(lot=lot, kind="received").order_by("id")
    assert second.corrects_id == first.pk
    assert first.happened_at == second.happened_at == datetime(2026, 2, 2, 6, tzinfo=UTC)


def test_a_correction_goes_on_into_what_was_blended(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1000 ml", "90"))
    [lot] = lots_of(delivery)
    jug = blend(
        material=door.resin, inputs=[Input(lot, Decimal(500))], made_at=datetime(2026, 2, 9, tzinfo=UTC), by=door.by
    ).lot
    door.use(jug, "250")
    assert (on_shelf(lot), on_shelf(jug), used_money(jug)) == ((500, 45), (250, Decimal("22.5")), Decimal("22.5"))

    correct(door, delivery, "1500 ml")

    assert (on_shelf(lot), on_shelf(jug), used_money(jug)) == ((1000, 60), (250, 15), 15)


def test_the_number_of_containers_can_be_corrected_with_the_quantity(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "2 gal", "90", containers=2))
    line = delivery.lines.get().pk
    opened = open_container(lot=lots_of(delivery)[0], opened_on=date(2026, 2, 9), by=door.by)
    assert on_shelf(opened)[0] == Decimal("3785.411784")

    def say(quantity: str, containers: int) -> Delivery:
        given = [QuantityGiven(line, parse_quantity(quantity), containers)]
        return correct_quantities(delivery=delivery, quantities=given, reason="Counted the pails.", by=door.by)

    with pytest.raises(TooFewContainers):
        say("1 gal", 1)
    say("3 gal", 3)

    assert delivery.lines.get().containers == 3
    assert lots_of(delivery)[0].containers == 2  # one is open
    assert Change.objects.filter(record=line, field="containers", before="2", after="3").exists()


def counted(door: Door, delivery: Delivery, quantity: str) -> StockCount:
    at = datetime(2026, 2, 20, 18, tzinfo=UTC)
    lines = [Counted(lot, Decimal(quantity)) for lot in lots_of(delivery)]
    return count_place(place=door.place, counted_at=at, lines=lines, by=door.by)


def test_a_count_stays_true_when_an_earlier_receipt_is_corrected(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1000 ml", "90"))
    [lot] = lots_of(delivery)
    door.use(lot, "400")
    counted(door, delivery, "600")

    correct(door, delivery, "1200 ml")

    assert (on_shelf(lot), used_money(lot)) == ((600, 45), 30)  # the 200 that were not there at the count took 15
    correct(door, delivery, "1000 ml")
    assert on_shelf(lot)[0] == 600


def test_a_counted_delivery_is_undone_only_after_the_count(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1000 ml", "90"))
    count = counted(door, delivery, "1000")

    with pytest.raises(NotWhole) as refusal:
        reverse_delivery(delivery=delivery, reason="Booked twice.", by=door.by)
    assert [step["count"] for step in refusal.value.extra["first"]] == [count.pk]

    undo_count(count=count, reason="Wrong shelf.", by=door.by)
    reverse_delivery(delivery=delivery, reason="Booked twice.", by=door.by)


def test_a_delivery_that_was_carried_away_is_undone_only_after_it_was_carried_back(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1000 ml", "90"))
    van = Place.objects.create(number=90, name="Van")
    at = datetime(2026, 2, 9, tzinfo=UTC)
    moved = move(lot=lots_of(delivery)[0], to=van, quantity=Decimal(400), happened_at=at, by=door.by)

    with pytest.raises(NotWhole) as refusal:
        reverse_delivery(delivery=delivery, reason="Booked twice.", by=door.by)
    assert [step["kind"] for step in refusal.value.extra["first"]] == ["moved"]

    reverse_posting(posting=Posting.objects.get(pk=moved.id), reason="Stayed here.", by=door.by)
    reverse_delivery(delivery=delivery, reason="Booked twice.", by=door.by)
    assert not Balance.objects.filter(quantity__gt=0).exists()


def test_what_lay_elsewhere_for_a_while_is_undone_only_after_both_moves(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1000 ml", "90"))
    [lot] = lots_of(delivery)
    van = Place.objects.create(number=90, name="Van")
    away = move(lot=lot, to=van, quantity=Decimal(400), happened_at=datetime(2026, 2, 9, tzinfo=UTC), by=door.by)
    at = datetime(2026, 2, 11, tzinfo=UTC)
    back = move(lot=lot, to=door.place, origin=van, quantity=None, happened_at=at, by=door.by)

    with pytest.raises(NotWhole) as refusal:
        reverse_delivery(delivery=delivery, reason="Booked twice.", by=door.by)
    assert [step["posting"] for step in refusal.value.extra["first"]] == [back.id, away.id]

    for moved in (back, away):
        reverse_posting(posting=Posting.objects.get(pk=moved.id), reason="Stayed here.", by=door.by)
    reverse_delivery(delivery=delivery, reason="Booked twice.", by=door.by)
    assert not Balance.objects.filter(quantity__gt=0).exists()


def test_a_count_that_met_a_late_entry_does_not_stand_in_the_way_once_both_are_undone(door: Door) -> None:
    delivery = door.deliver(door.line(door.resin, "1000 ml", "90"))
    [lot] = lots_of(delivery)
    count = counted(door, delivery, "1000")
    poured = door.use(lot, "100")  # before the count, which is met by a counted gain
    door.undo(poured)
    undo_count(count=count, reason="Wrong shelf.", by=door.by)

    reverse_delivery(delivery=delivery, reason="Booked twice.", by=door.by)

    assert not Balance.objects.filter(quantity__gt=0).exists()
