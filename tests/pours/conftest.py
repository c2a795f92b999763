"""A workshop with resin, hardener, colours and cans on the shelf, a job with two tops, and people who pour."""

from collections.abc import Callable, Iterator
from datetime import date
from decimal import Decimal
from typing import Any

import pytest
import time_machine
from rest_framework.test import APIClient

from inventory.calc.quantities import parse_quantity
from inventory.catalog.actions import MeasureGiven, add_material, add_supplier
from inventory.catalog.models import Material
from inventory.jobs.actions import make_job
from inventory.jobs.models import Job
from inventory.jobs.shapes import PieceDraft
from inventory.purchasing.actions import MaterialLine, receive_delivery
from inventory.shop.models import Person
from inventory.stock.models import Balance, Lot, Movement, Place
from inventory.stock.queries import default_place

NOW = "2026-06-15T15:00:00Z"  # ten in the morning in Chicago, the shop's zone


class Workshop:
    """Fills the shelf through the real doors and pours through the API."""

    def __init__(self, owner: Person, office: APIClient, bench: APIClient) -> None:
        self.owner, self.office, self.bench = owner, office, bench
        self.supplier = add_supplier(name="Harbour Resin Supply", lead_time_days=6, by=owner)
        self.place: Place = default_place()
        self.resin = self.material("R-1", "Table resin A", "resin", "ml", density_g_per_ml=Decimal("1.13"))
        self.hardener = self.material("H-1", "Table hardener B", "hardener", "ml", density_g_per_ml=Decimal("0.96"))
        self.mica = self.material(
            "M-1", "Pearl mica", "powder", "g", grams_per_tsp=Decimal("1.7"), single_lot_per_job=True
        )
        self.job = self.make_job("Kitchen run", "Run", "Island")

    def material(self, code: str, name: str, kind: str, unit: str, *, measures: str = "", **fields: Any) -> Material:
        """measures: "can = 340 g"."""
        given = [measure.split(" = ") for measure in measures.split(", ") if measure]
        return add_material(
            code=code,
            name=name,
            kind=kind,
            stock_unit=unit,
            measures=[MeasureGiven(name, parse_quantity(equals)) for name, equals in given],
            by=self.owner,
            **fields,
        )

    def make_job(self, title: str, *tops: str) -> Job:
        drafts = [PieceDraft(name=name, measures={"area_sqft": Decimal(20 + index)}) for index, name in enumerate(tops)]
        return make_job(customer={"name": "Wren Okafor"}, title=title, pieces=drafts, by=self.owner)

    def lot(
        self,
        material: Material,
        quantity: str,
        cost: str = "100",
        *,
        on: str = "2026-05-04",
        number: str = "",
        use_by: str | None = None,
        place: Place | None = None,
    ) -> Lot:
        line = MaterialLine(
            material.pk,
            parse_quantity(quantity),
            cost=Decimal(cost),
            lot_number=number,
            expires_on=date.fromisoformat(use_by) if use_by else None,
        )
        delivery = receive_delivery(
            supplier=self.supplier,
            received_on=date.fromisoformat(on),
            lines=[line],
            place=place or self.place,
            by=self.owner,
        )
        return Lot.objects.get(delivery_line__delivery=delivery)

    def tops(self, job: Job | None = None) -> list[int]:
        return [top.pk for top in (job or self.job).pieces.all()]

    def plan(self, *usages: dict[str, Any], client: APIClient | None = None, **fields: Any) -> Any:
        """The answer to planning a flood coat on the job's tops."""
        body = {"pieces": self.tops(), "layer": "flood_coat", "usages": list(usages), **fields}
        return (client or self.bench).post("/api/pours/", body)

    def planned(self, *usages: dict[str, Any], **fields: Any) -> dict[str, Any]:
        answer = self.plan(*usages, **fields)
        assert answer.status_code == 201, answer.json()
        made: dict[str, Any] = answer.json()
        return made

    def act(self, pour: dict[str, Any], verb: str, client: APIClient | None = None, **body: Any) -> Any:
        return (client or self.bench).post(f"/api/pours/{pour['id']}/{verb}/", body)

    def poured(self, *usages: dict[str, Any], client: APIClient | None = None, **body: Any) -> dict[str, Any]:
        """A pour that happened, planned with nothing and completed with what went in."""
        answer = self.act(self.planned(), "complete", client=client, usages=list(usages), **body)
        assert answer.status_code == 200, answer.json()
        made: dict[str, Any] = answer.json()
        return made

    def on_hand(self, lot: Lot, place: Place | None = None) -> str:
        balance = Balance.objects.filter(lot=lot, place=place or self.place).first()
        return f"{balance.quantity.normalize():f}" if balance else "0"

    def worth(self, lot: Lot) -> str:
        return str(sum((balance.value for balance in Balance.objects.filter(lot=lot)), Decimal(0)))


def usage(material: Material, quantity: str, **fields: Any) -> dict[str, Any]:
    return {"material": material.pk, "quantity": quantity, **fields}


def taken(pour: dict[str, Any]) -> list[tuple[int, str]]:
    """(lot, quantity) of what went in."""
    return [(row["lot"], row["quantity"]["amount"]) for row in pour["usages"]]


def money_and_quantity_by_kind(pour: dict[str, Any]) -> dict[str, Decimal]:
    sums: dict[str, Decimal] = {}
    for kind, value in Movement.objects.filter(cause=pour["id"]).values_list("kind", "value"):
        sums[kind] = sums.get(kind, Decimal(0)) - value
    return sums


@pytest.fixture(autouse=True)
def june() -> Iterator[None]:
    with time_machine.travel(NOW, tick=False):
        yield


@pytest.fixture
def bench(api: Callable[[Person], APIClient], crew: Person) -> APIClient:
    return api(crew)


@pytest.fixture
def office(api: Callable[[Person], APIClient], owner: Person) -> APIClient:
    return api(owner)


@pytest.fixture
def workshop(owner: Person, office: APIClient, bench: APIClient) -> Workshop:
    return Workshop(owner, office, bench)
