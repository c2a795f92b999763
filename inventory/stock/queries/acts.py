"""Counts, house mixes and returns, as they were made."""

from collections.abc import Collection

from django.db.models import Prefetch, QuerySet

from inventory.stock.models import Blend, Movement, Return, StockCount, StockCountLine
from inventory.stock.queries.lots import whole_lots


def counts() -> QuerySet[StockCount]:
    """Counts with their place and lines, those with their lots. Two SQL statements."""
    lines = StockCountLine.objects.select_related("lot__material").order_by("id")
    return StockCount.objects.select_related("place", "by", "undone_by").prefetch_related(Prefetch("lines", lines))


def blends() -> QuerySet[Blend]:
    """House mixes with their lot, as `whole_lots` has it, and what went in, as `posting.went_in`: the lines out of the
    inputs. Eleven SQL statements."""
    lines = Movement.objects.filter(into_lot__isnull=False).order_by("id").prefetch_related("lot", "material", "place")
    return Blend.objects.select_related("posting", "by", "undone_by").prefetch_related(
        Prefetch("lot", whole_lots()), Prefetch("posting__movements", lines, to_attr="went_in")
    )


def returns_of(lots: Collection[int]) -> QuerySet[Return]:
    """What was sent back of these lots, and what came back for it."""
    return Return.objects.filter(lot__in=lots).select_related("posting").order_by("id")
