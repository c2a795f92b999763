"""A receiving door: suppliers, materials and packs on the list, deliveries through the real action."""

from datetime import UTC, date, datetime
from decimal import Decimal
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from django.db import transaction

from inventory.calc.bookkeeping import Entry
from inventory.calc.quantities import parse_quantity
from inventory.catalog.actions import ContentGiven, add_material, add_pack, add_supplier
from inventory.catalog.models import Material, Pack
from inventory.purchasing.actions import ChargeGiven, MaterialLine, PackLine, receive_delivery
from inventory.purchasing.models import Delivery
from inventory.shop.fields import to_whole
from inventory.shop.models import Person
from inventory.stock import ledger
from inventory.stock.book import open_book
from inventory.stock.corrections import standing, take_back
from inventory.stock.models import Balance, Kind, Lot, Movement
from inventory.stock.queries import default_place

ZONE = ZoneInfo("America/Chicago")
ARRIVED = date(2026, 2, 2)


class Door:
    """What comes through the door, and what is taken off the shelf behind it."""

    def __init__(self, by: Person) -> None:
        self.by = by
        self.supplier = add_supplier(name="Harbour Resin Supply", lead_time_days=6, by=by)
        self.place = default_place()
        self.resin = self.material("R-1", "Table resin A", "resin", "ml", density_g_per_ml=Decimal("1.13"))
        self.hardener = self.material("H-1", "Table hardener B", "hardener", "ml", density_g_per_ml=Decimal("0.96"))
        self.mica = self.material("M-1", "Pearl mica", "powder", "g")
        self.tape = self.material("T-1", "Edge tape", "consumable", "each")

    def material(self, code: str, name: str, kind: str, stock_unit: str, **fields: Any) -> Material:
        return add_material(code=code, name=name, kind=kind, stock_unit=stock_unit, by=self.by, **fields)

    def kit(self, name: str = "House kit", shares: tuple[str, str] | None = None, times: int = 1) -> Pack:
        a, b = (Decimal(share) for share in shares) if shares else (None, None)
        contents = [
            ContentGiven(self.resin, parse_quantity(f"{1000 * times} ml"), a),
            ContentGiven(self.hardener, parse_quantity(f"{500 * times} ml"), b),
        ]
        return add_pack(supplier=self.supplier, name=name, contents=contents, by=self.by)

    def line(self, material: Material, quantity: str, cost: str | None = None, **fields: Any) -> MaterialLine:
        money = None if cost is None else Decimal(cost)
        return MaterialLine(material.pk, parse_quantity(quantity), cost=money, **fields)

    def deliver(
        self,
        *lines: MaterialLine | PackLine,
        on: date = ARRIVED,
        charges: tuple[ChargeGiven, ...] = (),
        **fields: Any,
    ) -> Delivery:
        given = {"supplier": self.supplier} | fields
        return receive_delivery(received_on=on, lines=lines, charges=charges, by=self.by, **given)

    def use(self, lot: Lot, quantity: str, *, day: int = 10, cause: int | None = None) -> ledger.Posted:
        at = datetime(2026, 2, day, 18, tzinfo=UTC)
        entry = Entry(
            kind=Kind.USED,
            lot=lot.pk,
            place=self.place.pk,
            quantity=-to_whole(Decimal(quantity), 6),
            happened_at=at,
            cause=cause,
        )
        with transaction.atomic():
            book = open_book(earliest=at, lots=[lot.pk])
            return ledger.post(Kind.USED, [entry], book=book, by=self.by, zone=ZONE)

    def undo(self, posted: ledger.Posted) -> None:
        with transaction.atomic():
            issues = [issue for issue in standing(posted.movements).values() if issue.kind == Kind.USED]
            book = open_book(earliest=min(issue.happened_at for issue in issues), lots={issue.lot for issue in issues})
            ledger.post(Kind.REVERSED, take_back(issues), book=book, by=self.by, zone=ZONE)


@pytest.fixture
def door(owner: Person) -> Door:
    return Door(owner)


def lots_of(delivery: Delivery) -> list[Lot]:
    return [line.lot for line in delivery.lines.select_related("lot").order_by("position")]


def on_shelf(lot: Lot) -> tuple[Decimal, Decimal]:
    """(quantity, money) of a lot that lies in one place."""
    balance = Balance.objects.get(lot=lot)
    return balance.quantity, balance.value


def costs(delivery: Delivery) -> list[Decimal]:
    return [line.landed_cost for line in delivery.lines.order_by("position")]


def used_money(lot: Lot) -> Decimal:
    return -sum((movement.value for movement in Movement.objects.filter(lot=lot, kind=Kind.USED)), Decimal(0))
