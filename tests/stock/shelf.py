"""A shelf for tests: puts lots on it and takes from it, through the real doors."""

from collections.abc import Collection
from datetime import UTC, date, datetime
from decimal import Decimal
from typing import Any
from zoneinfo import ZoneInfo

from django.db import transaction

from inventory.calc.bookkeeping import Entry
from inventory.catalog.models import Material
from inventory.shop.fields import to_whole
from inventory.shop.models import Person
from inventory.stock import ledger
from inventory.stock.actions import Arrival, receive
from inventory.stock.book import open_book
from inventory.stock.corrections import lots_made_from, revaluation_entries, standing, take_back
from inventory.stock.models import Balance, Kind, Lot, Movement, Place
from inventory.stock.queries import default_place

ZONE = ZoneInfo("America/Chicago")


class Shelf:
    """by: who acts. place: the shop. material: clear resin, in mL."""

    def __init__(self, by: Person) -> None:
        self.by = by
        self.place: Place = default_place()
        self.van = Place.objects.create(number=900, name="Van")
        self.material = self.stuff("RES", "Clear resin A", "resin", density="1.13", open_life_days=180)

    def stuff(
        self, code: str, name: str, kind: str, unit: str = "ml", *, density: str | None = None, **more: Any
    ) -> Material:
        return Material.objects.create(
            number=Material.objects.count() + 1,
            code=code,
            name=name,
            kind=kind,
            stock_unit=unit,
            density_g_per_ml=Decimal(density) if density else None,
            **more,
        )

    def lot(
        self,
        quantity: str,
        value: str,
        *,
        on: date = date(2026, 1, 5),
        number: str | None = None,
        material: Material | None = None,
        place: Place | None = None,
        **more: Any,
    ) -> Lot:
        arrival = Arrival(material or self.material, Decimal(quantity), Decimal(value), lot_number=number, **more)
        return receive(arrivals=[arrival], place=place or self.place, received_on=on, zone=ZONE, by=self.by).lots[0]

    def use(
        self,
        lot: Lot,
        quantity: str,
        *,
        at: datetime,
        kind: Kind = Kind.USED,
        place: Place | None = None,
        cause: int | None = None,
    ) -> ledger.Posted:
        with transaction.atomic():
            book = open_book(earliest=at, lots=[lot.pk])
            entry = Entry(
                kind=kind,
                lot=lot.pk,
                place=(place or self.place).pk,
                quantity=-to_whole(Decimal(quantity), 6),
                happened_at=at,
                cause=cause,
            )
            return ledger.post(kind, [entry], book=book, by=self.by, zone=ZONE)

    def take_back(self, posted: ledger.Posted) -> ledger.Posted:
        with transaction.atomic():
            issues = list(standing(posted.movements).values())
            book = open_book(earliest=min(issue.happened_at for issue in issues), lots={issue.lot for issue in issues})
            return ledger.post(Kind.REVERSED, take_back(issues), book=book, by=self.by, zone=ZONE)

    def take_back_posting(self, posting: int) -> ledger.Posted:
        with transaction.atomic():
            issues = standing(
                Movement.objects.filter(posting=posting).exclude(kind=Kind.COUNTED).values_list("pk", flat=True)
            )
            book = open_book(
                earliest=min(issue.happened_at for issue in issues.values()),
                lots={issue.lot for issue in issues.values()},
            )
            return ledger.post(Kind.REVERSED, take_back(list(issues.values())), book=book, by=self.by, zone=ZONE)

    def charge(self, lot: Lot, amount: str) -> ledger.Posted:
        with transaction.atomic():
            made = lots_made_from([lot.pk])
            book = open_book(earliest=self._first_moment(made), lots=made)
            entries = revaluation_entries(book, {lot.pk: to_whole(Decimal(amount), 4)})
            return ledger.post(Kind.CHARGED, entries, book=book, by=self.by, zone=ZONE)

    def _first_moment(self, lots: Collection[int]) -> datetime:
        return min(Lot.objects.filter(pk__in=lots).values_list("received_at", flat=True))

    def balance(self, lot: Lot, place: Place | None = None) -> tuple[Decimal, Decimal]:
        row = Balance.objects.filter(lot=lot, place=place or self.place).first()
        return (row.quantity, row.value) if row else (Decimal(0), Decimal(0))

    def kinds(self, lot: Lot) -> list[str]:
        return list(Movement.objects.filter(lot=lot).order_by("id").values_list("kind", flat=True))


def day(number: int, hour: int = 12) -> datetime:
    """A moment in February 2026, UTC."""
    return datetime(2026, 2, number, hour, tzinfo=UTC)
