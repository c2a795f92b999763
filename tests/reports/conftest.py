"""A shop whose lots, jobs and pours are made through the real actions, so that the reports have something to say."""

from collections.abc import Callable, Iterator
from datetime import date, datetime
from decimal import Decimal
from typing import Any
from urllib.parse import urlencode

import pytest
import time_machine
from rest_framework.test import APIClient

from inventory.calc.quantities import parse_quantity
from inventory.catalog.actions import add_material, add_supplier
from inventory.catalog.models import Material
from inventory.jobs.actions import finish_job, make_job
from inventory.jobs.models import Customer, Job, Piece
from inventory.jobs.shapes import PieceDraft
from inventory.pours.actions import log_pour, reverse_pour
from inventory.pours.entered import Account, Entered, PieceShare, Plan
from inventory.pours.models import Pour
from inventory.purchasing.actions import MaterialLine, receive_delivery
from inventory.shop.models import Person
from inventory.stock.models import Lot, Place
from inventory.stock.queries import default_place

NOW = "2026-06-15T15:00:00Z"  # ten in the morning in Chicago, the shop's zone


class Works:
    """Receives, makes jobs, pours and finishes."""

    def __init__(self, owner: Person) -> None:
        self.owner = owner
        self.supplier = add_supplier(name="Harbour Resin Supply", lead_time_days=6, by=owner)
        self.place: Place = default_place()
        self.resin = self.material("R-1", "Table resin A", "resin", "ml", density_g_per_ml=Decimal("1.13"))
        self.hardener = self.material("H-1", "Table hardener B", "hardener", "ml", density_g_per_ml=Decimal("0.96"))
        self.mica = self.material("M-1", "Pearl mica", "powder", "g")

    def material(self, code: str, name: str, kind: str, unit: str, **fields: Any) -> Material:
        return add_material(code=code, name=name, kind=kind, stock_unit=unit, by=self.owner, **fields)

    def lot(
        self, material: Material, quantity: str, cost: str | None = "100", *, on: str = "2026-05-04", **fields: Any
    ) -> Lot:
        """cost: None is a price to follow."""
        money = None if cost is None else Decimal(cost)
        line = MaterialLine(material.pk, parse_quantity(quantity), cost=money, **fields)
        delivery = receive_delivery(
            supplier=self.supplier, received_on=date.fromisoformat(on), lines=[line], place=self.place, by=self.owner
        )
        return Lot.objects.get(delivery_line__delivery=delivery)

    def job(self, title: str, *areas: str, customer: str = "Wren Okafor", purpose: str = "customer") -> Job:
        """A job whose tops have these areas, in square feet."""
        drafts = [PieceDraft(name=f"Top {at}", measures={"area_sqft": Decimal(area)}) for at, area in enumerate(areas)]
        known = Customer.objects.filter(name=customer).first()
        return make_job(
            customer=known or {"name": customer}, title=title, purpose=purpose, pieces=drafts, by=self.owner
        )

    def finish(self, job: Job, on: str) -> Job:
        return finish_job(job=job, finished_on=date.fromisoformat(on), by=self.owner)

    def pour(
        self,
        tops: list[Piece] | Job,
        *usages: tuple[Lot, str] | tuple[Lot, str, str],
        at: str = "2026-05-20T15:00:00Z",
        layer: str = "flood_coat",
        is_redo: bool = False,
        shares: list[str] | None = None,
    ) -> Pour:
        """usages: (lot, quantity), or (lot, quantity, "waste")."""
        pieces = list(tops.pieces.all()) if isinstance(tops, Job) else tops
        percents = [Decimal(share) for share in shares] if shares else [None] * len(pieces)
        under = [PieceShare(piece.pk, percent) for piece, percent in zip(pieces, percents, strict=True)]
        went_in = [
            Entered(
                material=lot.material_id,
                quantity=parse_quantity(quantity),
                lot=lot.pk,
                is_waste=bool(waste),
                reason="set in the bucket" if waste else "",
            )
            for lot, quantity, *waste in usages
        ]
        return log_pour(
            plan=Plan(pieces=under, layer=layer, is_redo=is_redo),
            account=Account(usages=went_in, poured_at=datetime.fromisoformat(at)),
            by=self.owner,
        )

    def undo(self, pour: Pour) -> None:
        reverse_pour(pour=pour, reason="never happened", by=self.owner)


def tops_of(*jobs: Job) -> list[Piece]:
    return [piece for job in jobs for piece in job.pieces.order_by("id")]


@pytest.fixture(autouse=True)
def june() -> Iterator[None]:
    with time_machine.travel(NOW, tick=False):
        yield


@pytest.fixture
def works(owner: Person) -> Works:
    return Works(owner)


@pytest.fixture
def office(api: Callable[[Person], APIClient], owner: Person) -> APIClient:
    return api(owner)


@pytest.fixture
def bench(api: Callable[[Person], APIClient], crew: Person) -> APIClient:
    return api(crew)


def read(client: APIClient, address: str, **query: Any) -> Any:
    """The JSON behind an address that must answer 200."""
    joined = "&" if "?" in address else "?"
    answer = client.get(f"{address}{joined}{urlencode(query)}" if query else address)
    assert answer.status_code == 200, answer.json()
    return answer.json()
