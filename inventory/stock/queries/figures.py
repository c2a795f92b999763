"""Stock figures of materials: on hand, usable, reserved, available, value. The one owner of these numbers."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import Any

from django.db.models import Case, Count, F, Max, Min, Q, QuerySet, Sum, When
from django.db.models.functions import Coalesce

from inventory.stock.models import Balance, LotStatus, Place, Reservation

NOTHING = Decimal(0)


@dataclass(frozen=True, slots=True)
class StockFigures:
    """What the shelf holds of one material, in its stock unit.

    on_hand: all of it. usable: in lots that are OK and not past their use-by on the day asked for.
    reserved: set aside for plans. available: usable - reserved; below zero where more is set aside than is there.
    value: what is on hand cost. next_use_by: the earliest among the usable lots. lots: how many have something left.
    """

    on_hand: Decimal = NOTHING
    usable: Decimal = NOTHING
    reserved: Decimal = NOTHING
    value: Decimal = NOTHING
    lots: int = 0
    next_use_by: date | None = None
    is_provisional: bool = False

    @property
    def available(self) -> Decimal:
        return self.usable - self.reserved


def stock_figures(
    *, on: date, materials: Collection[int] | None = None, place: Place | None = None
) -> dict[int, StockFigures]:
    """Figures by material, of these materials or of all; of one place or of all. Two SQL statements.

    on: the shop's day on which lots are to be usable. A material that nothing lies of or is set aside of may be absent
    unless it was named.
    """
    balances = Balance.objects.filter(quantity__gt=0)
    reservations = Reservation.objects.order_by()
    if materials is not None:
        balances = balances.filter(lot__material__in=materials)
        reservations = reservations.filter(material__in=materials)
    if place is not None:
        balances, reservations = balances.filter(place=place), reservations.filter(place=place)
    reserved = dict(reservations.values_list("material").annotate(Sum("quantity")))
    found = {row["material"]: _figures(row, reserved) for row in _sums(balances, on)}
    for material in {*reserved, *(materials or ())} - set(found):
        found[material] = StockFigures(reserved=reserved.get(material, NOTHING))
    return found


def available(*, materials: Collection[int], on: date, place: Place | None = None) -> dict[int, Decimal]:
    """What is usable on a day and not set aside, by material, in its stock unit; below zero where plans exceed it."""
    figures = stock_figures(on=on, materials=materials, place=place)
    return {material: figures[material].available for material in materials}


def _sums(balances: QuerySet[Balance], on: date) -> Iterable[Any]:
    is_usable = Q(lot__status=LotStatus.USABLE) & (Q(lot__use_by__isnull=True) | Q(lot__use_by__gte=on))
    return (
        balances.order_by()
        .values(material=F("lot__material_id"))
        .annotate(
            on_hand=Sum("quantity"),
            usable=Sum("quantity", filter=is_usable),
            value=Sum("value"),
            lots=Count("lot", distinct=True),
            next_use_by=Min("lot__use_by", filter=is_usable),
            waits=Coalesce(Max(Case(When(lot__is_provisional=True, then=1), default=0)), 0),
        )
    )


def _figures(row: dict[str, Any], reserved: dict[int, Decimal]) -> StockFigures:
    return StockFigures(
        on_hand=row["on_hand"],
        usable=row["usable"] or NOTHING,
        reserved=reserved.get(row["material"], NOTHING),
        value=row["value"],
        lots=row["lots"],
        next_use_by=row["next_use_by"],
        is_provisional=bool(row["waits"]),
    )
