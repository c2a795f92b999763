"""Lots with what lies where, what they cost and how they stand."""

from typing import Any

from django.db.models import OuterRef, Prefetch, QuerySet, Subquery, Sum
from django.db.models.expressions import RawSQL

from inventory.shop.fields import FixedField, MoneyField, QuantityField
from inventory.stock.lines import IS_INFLOW, MAY_BE_INFLOW
from inventory.stock.models import Balance, Lot, LotNote, Reservation, StatusEvent


def lots() -> QuerySet[Lot]:
    """Lots with their material, balances and status events, and annotated, in four SQL statements:

    stock_on_hand, stock_value: over all places. set_aside: reserved of this very lot.
    came_in, came_in_value: all that ever came into it, net. Empty where there is nothing.
    """
    return (
        Lot.objects.select_related("material", "blend")
        .prefetch_related(
            Prefetch("balances", Balance.objects.filter(quantity__gt=0).select_related("place").order_by("place_id")),
            Prefetch("status_events", StatusEvent.objects.select_related("by").order_by("since", "id")),
        )
        .annotate(
            stock_on_hand=_summed(Balance, "quantity", QuantityField()),
            stock_value=_summed(Balance, "value", MoneyField()),
            set_aside=_summed(Reservation, "quantity", QuantityField()),
            came_in=_inflow("quantity", QuantityField()),
            came_in_value=_inflow("value", MoneyField()),
        )
    )


def whole_lots() -> QuerySet[Lot]:
    """As `lots`, with their notes and the lots that were opened from them; two SQL statements more."""
    return lots().prefetch_related(
        Prefetch("notes", LotNote.objects.select_related("by")),
        Prefetch("opened_lots", Lot.objects.annotate(stock_on_hand=_summed(Balance, "quantity", QuantityField()))),
    )


def _summed(
    rows: type[Balance] | type[Reservation],
    field: str,
    output: FixedField[Any, Any],
) -> Subquery:
    of_lot = rows._default_manager.filter(lot=OuterRef("pk")).order_by().values("lot").annotate(total=Sum(field))
    return Subquery(of_lot.values("total"), output_field=output)


def _inflow(column: str, output: FixedField[Any, Any]) -> RawSQL:
    return RawSQL(
        f"(SELECT SUM({column}) FROM stock_movement WHERE lot_id = stock_lot.id AND {MAY_BE_INFLOW} AND {IS_INFLOW})",
        [],
        output_field=output,
    )
