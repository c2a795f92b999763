"""What is read of deliveries: whole, in lists, and what they say of a material's price and supplier."""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction

from django.db.models import Count, Exists, F, Min, OuterRef, Prefetch, QuerySet, Subquery, Sum, Window
from django.db.models.functions import RowNumber

from inventory.catalog.models import Material
from inventory.purchasing.models import Delivery, DeliveryLine
from inventory.shop.fields import MoneyField
from inventory.stock.models import Basis


def deliveries() -> QuerySet[Delivery]:
    """Deliveries with what a list shows of each: `line_count`, `waits_for_price`, `landed_cost` of all lines."""
    lines = DeliveryLine.objects.filter(delivery=OuterRef("pk"))
    totals = lines.order_by().values("delivery")
    money: MoneyField[Decimal, Decimal] = MoneyField()
    return Delivery.objects.select_related("supplier", "place", "by").annotate(
        line_count=Subquery(totals.annotate(total=Count("pk")).values("total")),
        waits_for_price=Exists(lines.filter(cost=None, delivery__undone_by=None)),
        landed_cost=Subquery(
            totals.annotate(total=Sum(F("booked_cost") + F("charges"), output_field=money)).values("total")
        ),
    )


def whole_deliveries() -> QuerySet[Delivery]:
    """Deliveries with their lines, lots and charges. Three SQL statements."""
    lines = DeliveryLine.objects.select_related("material", "lot", "pack")
    return deliveries().prefetch_related(Prefetch("lines", lines), "charges")


@dataclass(frozen=True, slots=True)
class LastPrice:
    """What a material cost when it was last bought, before charges.

    cost: money for `quantity` stock units. price: currency per stock unit, exactly.
    """

    material: int
    cost: Decimal
    quantity: Decimal
    received_on: date
    supplier: int
    delivery: int

    @property
    def price(self) -> Fraction:
        return Fraction(self.cost) / Fraction(self.quantity)


def priced_lines() -> QuerySet[DeliveryLine]:
    """Lines that say what a material costs: paid, priced, in deliveries that stand."""
    return DeliveryLine.objects.filter(cost__isnull=False, basis=Basis.PAID, delivery__undone_by=None)


def last_prices(materials: Collection[int]) -> dict[int, LastPrice]:
    """The last price of each material that was ever bought at one, by material. One SQL statement."""
    return {row.material: row for row in _prices(materials, each=1)}


def price_history(material: int) -> list[LastPrice]:
    """Every price that a material was bought at, the newest first. One SQL statement."""
    return _prices([material], each=None)


def _prices(materials: Collection[int], *, each: int | None) -> list[LastPrice]:
    newest = [F("delivery__received_on").desc(), F("pk").desc()]
    rows = priced_lines().filter(material__in=materials)
    rows = rows.annotate(rank=Window(RowNumber(), partition_by="material", order_by=newest))
    if each is not None:
        rows = rows.filter(rank__lte=each)
    columns = ("material", "cost", "quantity", "delivery__received_on", "delivery__supplier", "delivery")
    return [LastPrice(*row) for row in rows.order_by("material", "rank").values_list(*columns)]


@dataclass(frozen=True, slots=True)
class MainSupplier:
    """Where a material is bought: the supplier the shop named for it, else who delivered it last."""

    supplier: int
    name: str
    lead_time_days: int
    is_named: bool


def main_suppliers(materials: Collection[int]) -> dict[int, MainSupplier]:
    """The supplier of each material that has one, by material. Two SQL statements, one where all are named."""
    rows = Material.objects.filter(pk__in=materials, main_supplier__isnull=False).values_list(
        "pk", "main_supplier", "main_supplier__name", "main_supplier__lead_time_days"
    )
    found = {material: MainSupplier(supplier, name, days, True) for material, supplier, name, days in rows}
    others = set(materials) - set(found)
    return found | _latest_suppliers(others) if others else found


def _latest_suppliers(materials: Collection[int]) -> dict[int, MainSupplier]:
    newest = [F("delivery__received_on").desc(), F("pk").desc()]
    rows = (
        DeliveryLine.objects.filter(material__in=materials, delivery__undone_by=None)
        .annotate(rank=Window(RowNumber(), partition_by="material", order_by=newest))
        .filter(rank=1)
        .values_list(
            "material",
            "delivery__supplier",
            "delivery__supplier__name",
            "delivery__supplier__lead_time_days",
        )
    )
    return {material: MainSupplier(supplier, name, days, False) for material, supplier, name, days in rows}


def first_receipts(materials: Collection[int]) -> dict[int, date]:
    """The day on which each material first came in, of deliveries that stand, by material. One SQL statement."""
    rows = (
        DeliveryLine.objects.filter(material__in=materials, delivery__undone_by=None)
        .order_by()
        .values_list("material")
        .annotate(first=Min("delivery__received_on"))
    )
    return dict(rows)
