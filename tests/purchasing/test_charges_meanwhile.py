"""Bills that arrive while the goods are being used: no money lost, none twice."""

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, date, datetime
from decimal import Decimal

import pytest
from django.db import connection

from inventory.purchasing.actions import ChargeGiven, PriceGiven, add_charge, set_prices
from inventory.rest.problems import Role
from inventory.shop.models import Shop
from inventory.stock.actions import Input, blend
from inventory.stock.models import Balance, Kind, Movement
from tests.conftest import person
from tests.purchasing.conftest import Door, lots_of

WORKERS, ROUNDS = 4, 10


@pytest.mark.django_db(transaction=True)
def test_charges_prices_blends_and_uses_at_once_lose_no_money() -> None:
    Shop.objects.create(pk=1, name="Kelp Lane Tops", currency="USD", time_zone="America/Chicago")
    door = Door(person(Role.OWNER))
    delivery = door.deliver(door.line(door.resin, "4000 ml", "100"))
    [lot] = lots_of(delivery)
    line = delivery.lines.get().pk

    def use(turn: int) -> None:
        door.use(lot, "7", day=10 + turn % 5)

    def mix(turn: int) -> None:
        at = datetime(2026, 2, 10 + turn % 5, 20, tzinfo=UTC)
        blend(material=door.resin, inputs=[Input(lot, Decimal(11))], made_at=at, by=door.by)

    def charge(turn: int) -> None:
        given = ChargeGiven("freight", Decimal(3) if turn % 2 else Decimal(-1))
        add_charge(delivery=delivery, charge=given, charged_on=date(2026, 3, 1), by=door.by)

    def price(turn: int) -> None:
        set_prices(delivery=delivery, prices=[PriceGiven(Decimal(100 + turn), line=line)], by=door.by)

    def work(act: Callable[[int], None]) -> None:
        try:
            for turn in range(ROUNDS):
                act(turn)
        finally:
            connection.close()

    with ThreadPoolExecutor(WORKERS) as pool:
        for done in [pool.submit(work, act) for act in (use, mix, charge, price)]:
            done.result()

    after = delivery.lines.get()
    shelf = sum((balance.value for balance in Balance.objects.all()), Decimal(0))
    used = -sum((movement.value for movement in Movement.objects.filter(kind=Kind.USED)), Decimal(0))
    assert after.landed_cost == Decimal(100 + ROUNDS - 1) + ROUNDS // 2 * (3 - 1)
    assert shelf + used == after.landed_cost
    assert sum(balance.quantity for balance in Balance.objects.all()) == 4000 - 7 * ROUNDS
