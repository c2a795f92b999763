"""Two people at once cannot take, or plan with, the same gram."""

from collections import Counter
from collections.abc import Callable
from decimal import Decimal
from threading import Barrier, Thread
from typing import Any

import pytest
from django.db import connection
from django.db.models import Sum

from inventory.calc.quantities import parse_quantity
from inventory.pours.actions import complete_pour, log_pour, plan_pour, reverse_pour
from inventory.pours.entered import Account, Entered, PieceShare, Plan
from inventory.pours.models import Pour, Usage
from inventory.rest.problems import Problem
from inventory.stock.models import Balance, Movement, Reservation
from tests.pours.conftest import Workshop

pytestmark = pytest.mark.django_db(transaction=True)


def at_once(*acts: Callable[[], object]) -> Counter[str]:
    """Do all of these at the same moment, each over a connection of its own; "done", or the slug of the refusal."""
    met: list[str] = []
    start = Barrier(len(acts))

    def run(act: Callable[[], object]) -> None:
        start.wait()
        try:
            act()
            met.append("done")
        except Problem as problem:
            met.append(problem.slug)
        finally:
            connection.close()

    threads = [Thread(target=run, args=[act]) for act in acts]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    return Counter(met)


def account(workshop: Workshop, quantity: str) -> Account:
    return Account(usages=[Entered(material=workshop.resin.pk, quantity=parse_quantity(quantity))])


def plan(workshop: Workshop, *usages: Entered) -> Plan:
    return Plan(pieces=[PieceShare(workshop.tops()[0])], layer="flood_coat", usages=usages)


def test_of_eight_who_take_a_quarter_of_a_lot_at_once_four_get_it(workshop: Workshop) -> None:
    lot = workshop.lot(workshop.resin, "1 l", "9.9999")
    pours = [plan_pour(plan=plan(workshop), by=workshop.owner) for _ in range(8)]

    def take(pour: Pour) -> Callable[[], object]:
        return lambda: complete_pour(pour=pour, account=account(workshop, "250 ml"), by=workshop.owner)

    met = at_once(*[take(pour) for pour in pours])

    assert met == {"done": 4, "not-enough-stock": 4}
    assert (workshop.on_hand(lot), workshop.worth(lot)) == ("0", "0.0000")
    assert Usage.objects.aggregate(whole=Sum("quantity"))["whole"] == Decimal(1000)
    assert Movement.objects.aggregate(whole=Sum("value"))["whole"] == Decimal(0)


def test_one_pour_completed_by_two_at_once_is_posted_once(workshop: Workshop) -> None:
    lot = workshop.lot(workshop.resin, "1 l")
    pour = plan_pour(plan=plan(workshop), by=workshop.owner)

    met = at_once(*[lambda: complete_pour(pour=pour, account=account(workshop, "10 ml"), by=workshop.owner)] * 3)

    assert met == {"done": 1, "pour-not-planned": 2}
    assert workshop.on_hand(lot) == "990"


def test_pours_over_several_materials_in_any_order_do_not_block_each_other(workshop: Workshop) -> None:
    materials = [workshop.resin, workshop.hardener, workshop.mica]
    lots = [workshop.lot(material, "80 g" if material.stock_unit == "g" else "80 ml") for material in materials]

    def pour(turn: int) -> Callable[[], object]:
        order = materials[turn % 3 :] + materials[: turn % 3]
        lines = [
            Entered(material=one.pk, quantity=parse_quantity("10 g" if one.stock_unit == "g" else "10 ml"))
            for one in order
        ]
        return lambda: log_pour(plan=plan(workshop), account=Account(usages=lines), by=workshop.owner)

    met = at_once(*[pour(turn) for turn in range(8)])

    assert met == {"done": 8}
    assert [workshop.on_hand(lot) for lot in lots] == ["0", "0", "0"]
    assert len(set(Pour.objects.values_list("number", flat=True))) == 8


def test_undone_by_two_at_once_it_goes_back_once(workshop: Workshop) -> None:
    lot = workshop.lot(workshop.resin, "1 l")
    pour = log_pour(plan=plan(workshop), account=account(workshop, "400 ml"), by=workshop.owner)

    met = at_once(*[lambda: reverse_pour(pour=pour, reason="Mistake", by=workshop.owner)] * 3)

    assert met == {"done": 1, "pour-not-completed": 2}
    assert workshop.on_hand(lot) == "1000"
    assert Balance.objects.get(lot=lot).value == Decimal(100)


def test_two_who_plan_at_once_do_not_set_the_same_aside(workshop: Workshop) -> None:
    workshop.lot(workshop.resin, "1 l")
    line = Entered(material=workshop.resin.pk, quantity=parse_quantity("400 ml"))
    wanted: Any = [lambda: plan_pour(plan=plan(workshop, line), by=workshop.owner)] * 5

    met = at_once(*wanted)

    assert met == {"done": 2, "not-enough-stock": 3}
    assert Reservation.objects.aggregate(whole=Sum("quantity"))["whole"] == Decimal(800)
