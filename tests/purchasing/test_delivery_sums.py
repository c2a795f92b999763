"""Whatever happens to a delivery, its money is where its quantity is: against an oracle in exact fractions."""

from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from django.db import transaction
from hypothesis import given, settings
from hypothesis import strategies as st

from inventory.calc.quantities import Typed
from inventory.purchasing.actions import (
    ChargeGiven,
    PriceGiven,
    QuantityGiven,
    add_charge,
    correct_quantities,
    set_prices,
)
from inventory.purchasing.models import Delivery, DeliveryLine
from inventory.stock import ledger
from inventory.stock.corrections import standing
from inventory.stock.models import Balance
from inventory.stock.problems import CreditTooLarge, NotEnoughStock
from tests.purchasing.conftest import Door, lots_of

CENT = Decimal("0.0001")
ROUNDING = Fraction(1, 1000)  # an issue rounds once; each issue before it may have pushed the rest by as much

money = st.integers(0, 500_000).map(lambda whole: Decimal(whole) * CENT)
amounts = st.integers(1, 2_000).map(lambda whole: Decimal(whole) / 8)
acts = st.one_of(
    st.tuples(st.just("use"), st.integers(0, 1), amounts),
    st.tuples(st.just("undo"), st.integers(0, 20), st.none()),
    st.tuples(st.just("charge"), st.integers(0, 1), st.integers(-200_000, 200_000).map(lambda n: Decimal(n) * CENT)),
    st.tuples(st.just("price"), st.integers(0, 1), money),
    st.tuples(st.just("correct"), st.integers(0, 1), amounts),
)


@dataclass
class Told:
    """What should be true of one line: quantity and cost, and what was used."""

    quantity: Fraction
    used: dict[int, tuple[ledger.Posted, Fraction]] = field(default_factory=dict)

    @property
    def left(self) -> Fraction:
        return self.quantity - sum((quantity for _, quantity in self.used.values()), Fraction(0))


def carry_out(door: Door, delivery: Delivery, told: list[Told], act: tuple[str, int, Any]) -> None:
    verb, which, amount = act
    lines = list(DeliveryLine.objects.filter(delivery=delivery).order_by("position"))
    line, one = lines[which % 2], told[which % 2]
    if verb == "use":
        posted = door.use(line.lot, str(amount))
        one.used[posted.id] = posted, Fraction(amount)
    elif verb == "undo":
        spent = [(each, key) for each in told for key in each.used]
        if spent:
            each, key = spent[which % len(spent)]
            door.undo(each.used.pop(key)[0])
    elif verb == "charge" and amount:
        add_charge(delivery=delivery, charge=ChargeGiven("freight", amount), charged_on=date(2026, 3, 1), by=door.by)
    elif verb == "price" and amount:
        set_prices(delivery=delivery, prices=[PriceGiven(amount, line=line.pk)], by=door.by)
    elif verb == "correct":
        given = [QuantityGiven(line.pk, Typed(Fraction(amount), "ml"))]
        correct_quantities(delivery=delivery, quantities=given, reason="Counted again.", by=door.by)
        one.quantity = Fraction(amount)


def check(delivery: Delivery, told: list[Told]) -> None:
    for line, lot, one in zip(delivery.lines.order_by("position"), lots_of(delivery), told, strict=True):
        balance = Balance.objects.get(lot=lot)
        used = standing([posted.movements[0] for posted, _ in one.used.values()]).values()
        assert Fraction(balance.quantity) == one.left
        assert Fraction(line.quantity) == one.quantity
        assert balance.value + sum(Decimal(-issue.value) * CENT for issue in used) == line.landed_cost
        assert balance.value >= 0
        for issue in used:
            exact = Fraction(line.landed_cost) * Fraction(-issue.quantity, 10**6) / one.quantity
            assert abs(Fraction(-issue.value, 10**4) - exact) <= ROUNDING
        exact = Fraction(line.landed_cost) * one.left / one.quantity
        assert abs(Fraction(balance.value) - exact) <= ROUNDING


@settings(max_examples=60)
@given(cost=money, quantity=amounts, doing=st.lists(acts, max_size=14))
def test_money_stays_with_quantity_through_every_act(
    door: Door, cost: Decimal, quantity: Decimal, doing: list[tuple[str, int, Any]]
) -> None:
    with transaction.atomic():
        resin = door.line(door.resin, f"{quantity} ml", str(cost) if cost else None)
        delivery = door.deliver(resin, door.line(door.hardener, "200 ml", "20"))
        told = [Told(Fraction(quantity)), Told(Fraction(200))]
        for act in doing:
            try:
                with transaction.atomic():
                    carry_out(door, delivery, told, act)
            except (NotEnoughStock, CreditTooLarge):
                pass
            except Exception as error:
                pytest.fail(f"{act}: {error!r}")
            check(delivery, told)
        transaction.set_rollback(True)
