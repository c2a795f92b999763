"""Cost of what was used, against printed series: bought by deliveries and used by pours, all through the API."""

from collections.abc import Callable
from datetime import UTC, date, datetime
from decimal import Decimal
from typing import Any, NamedTuple

import pytest
from beancount import loader
from beancount.core import inventory as beancount_inventory
from beancount.core.data import Transaction
from rest_framework.test import APIClient

from inventory.shop.models import Person


class Bought(NamedTuple):
    on: date
    quantity: int
    price: int


class Used(NamedTuple):
    """lots: (which purchase, counted from 0; quantity) where lots are named; empty where the tool chooses."""

    on: date
    quantity: int
    lots: tuple[tuple[int, int], ...] = ()


class Workshop:
    """A shop that buys one material and pours it, over HTTP alone."""

    def __init__(self, client: APIClient) -> None:
        self.client = client
        self.supplier = self.post("suppliers", {"name": "Harbour Resin Supply", "lead_time_days": 5})["id"]
        material = {"code": "BOX", "name": "Boxed set", "kind": "consumable", "stock_unit": "each"}
        self.material = self.post("materials", material)["id"]
        top = {"name": "Island", "area_sqft": "30"}
        job = {"customer": {"name": "Wren Okafor"}, "title": "Kitchen", "pieces": [top]}
        self.piece = self.post("jobs", job)["pieces"][0]["id"]
        self.lots: list[int] = []
        self.used_cost = Decimal(0)

    def post(self, nouns: str, body: dict[str, Any]) -> dict[str, Any]:
        answer = self.client.post(f"/api/{nouns}/", body, format="json")
        assert answer.status_code == 201, answer.content
        found: dict[str, Any] = answer.json()
        return found

    def buy(self, bought: Bought) -> None:
        line = {
            "material": self.material,
            "quantity": {"amount": str(bought.quantity), "unit": "each"},
            "cost": str(bought.quantity * bought.price),
        }
        body = {"supplier": self.supplier, "received_on": bought.on.isoformat(), "lines": [line]}
        self.lots.append(self.post("deliveries", body)["lines"][0]["lot"]["id"])

    def use(self, used: Used) -> None:
        usages: list[dict[str, Any]] = [
            {"material": self.material, "lot": self.lots[lot], "quantity": {"amount": str(quantity), "unit": "each"}}
            for lot, quantity in used.lots
        ] or [{"material": self.material, "quantity": {"amount": str(used.quantity), "unit": "each"}}]
        at = datetime(used.on.year, used.on.month, used.on.day, 18, tzinfo=UTC)
        body = {
            "pieces": [self.piece],
            "layer": "flood_coat",
            "usages": usages,
            "poured_at": at.isoformat(),
            "complete": True,
        }
        pour = self.post("pours", body)
        assert sum(Decimal(usage["quantity"]["amount"]) for usage in pour["usages"]) == used.quantity
        self.used_cost += sum((Decimal(usage["value"]) for usage in pour["usages"]), Decimal(0))

    def left(self) -> tuple[Decimal, Decimal]:
        """(quantity, money) of all lots."""
        lots = self.client.get(f"/api/lots/?material={self.material}").json()["results"]
        return (
            sum((Decimal(lot["on_hand"]["amount"]) for lot in lots), Decimal(0)),
            sum((Decimal(lot["value"]) for lot in lots), Decimal(0)),
        )

    def live(self, *events: Bought | Used) -> None:
        for event in events:
            if isinstance(event, Bought):
                self.buy(event)
            else:
                self.use(event)


@pytest.fixture
def workshop(api: Callable[[Person], APIClient], owner: Person) -> Workshop:
    return Workshop(api(owner))


FIRST, SECOND, THIRD = (
    Bought(date(2026, 1, 2), 150, 21),
    Bought(date(2026, 2, 2), 225, 27),
    Bought(date(2026, 3, 2), 210, 33),
)
AVAILABLE = Decimal(16_155)


def test_specific_lots(workshop: Workshop) -> None:
    """OpenStax, Principles of Accounting vol. 1, 10.1-10.3: 120 of lot 1; 20 of lot 1 and 160 of lot 2."""
    workshop.live(
        FIRST,
        Used(date(2026, 1, 20), 120, ((0, 120),)),
        SECOND,
        Used(date(2026, 2, 20), 180, ((0, 20), (1, 160))),
        THIRD,
    )

    assert workshop.used_cost == 7_260
    assert workshop.left() == (285, 8_895)
    assert workshop.used_cost + workshop.left()[1] == AVAILABLE


def test_the_tools_own_choice_without_a_use_by_is_first_in_first_out(workshop: Workshop) -> None:
    """OpenStax, Principles of Accounting vol. 1, 10.1-10.3, first in, first out."""
    workshop.live(FIRST, Used(date(2026, 1, 20), 120), SECOND, Used(date(2026, 2, 20), 180), THIRD)

    assert workshop.used_cost == 7_200
    assert workshop.left() == (285, 8_955)
    assert workshop.used_cost + workshop.left()[1] == AVAILABLE


EXERCISE_A = (
    Bought(date(2026, 1, 2), 240, 100),
    Used(date(2026, 1, 20), 160),
    Bought(date(2026, 2, 2), 520, 103),
    Used(date(2026, 2, 20), 400),
    Bought(date(2026, 3, 2), 400, 110),
    Used(date(2026, 3, 20), 370),
)


def test_exercise_a_of_the_same_chapter_and_by_another_ledger(workshop: Workshop) -> None:
    """OpenStax, Principles of Accounting vol. 1, ch. 10, exercise set A; the same events booked by beancount."""
    workshop.live(*EXERCISE_A)

    assert workshop.used_cost == 96_260
    assert workshop.left() == (230, 25_300)
    assert (workshop.used_cost, workshop.left()[1]) == by_beancount(EXERCISE_A)


def by_beancount(events: tuple[Bought | Used, ...]) -> tuple[Decimal, Decimal]:
    """(cost of what was used, cost of what is left), first in, first out, by beancount's own booking."""
    booked = [
        'option "booking_method" "FIFO"',
        "2025-01-01 open Assets:Shelf",
        "2025-01-01 open Assets:Cash USD",
        "2025-01-01 open Expenses:Used USD",
    ]
    for event in events:
        booked.append(f'{event.on} * "an act of the shop"')
        if isinstance(event, Bought):
            booked += [f"  Assets:Shelf  {event.quantity} BOX {{{event.price} USD}}", "  Assets:Cash"]
        else:
            booked += [f"  Assets:Shelf  -{event.quantity} BOX {{}}", "  Expenses:Used"]
    entries, errors, _ = loader.load_string("\n".join(booked))
    assert not errors
    used, shelf = Decimal(0), beancount_inventory.Inventory()
    for entry in entries:
        for posting in entry.postings if isinstance(entry, Transaction) else ():
            if posting.account == "Expenses:Used":
                used += posting.units.number
            elif posting.account == "Assets:Shelf":
                shelf.add_position(posting)
    return used, sum((position.units.number * position.cost.number for position in shelf), Decimal(0))
