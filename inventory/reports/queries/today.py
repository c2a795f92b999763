"""What needs a hand today, the most pressing first; each row says which act settles it."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from decimal import Decimal
from zoneinfo import ZoneInfo

from django.db.models import Count, Q, QuerySet, TextChoices
from django.utils import timezone

from inventory.pours.models import Pour, PourStatus
from inventory.purchasing.models import DeliveryLine
from inventory.reports.queries.expiring import ExpiringLot, expiring
from inventory.reports.queries.reorder import Standing, below_reorder_point
from inventory.reports.queries.sql import fetch
from inventory.shop.clock import shop_day, shop_zone, start_of_day
from inventory.shop.reading import PreferredUnits, as_read, preferred_units
from inventory.stock.models import LotStatus

DAYS_OF_PLANS = 7
DAYS_BEFORE_USE_BY = 14


class Need(TextChoices):
    """What needs a hand, in the order of the page."""

    POUR_OVERDUE = "pour_overdue", "Planned before today, not logged"
    POUR_UNLOGGED = "pour_unlogged", "Today's pour whose time has passed, not logged"
    POUR_TODAY = "pour_today", "Pour planned for later today"
    POUR_UNDATED = "pour_undated", "Pour planned for no certain day"
    POUR_NEEDS_REASON = "pour_needs_reason", "Pour that waits for the owner's reason"
    LOT_EXPIRED = "lot_expired", "Past its use-by, still on the shelf"
    LOT_ON_HOLD = "lot_on_hold", "Lot on hold"
    MATERIAL_BELOW = "material_below", "Material below its reorder point"
    DELIVERY_WITHOUT_PRICE = "delivery_without_price", "Delivery whose price is to follow"
    LOT_EXPIRING = "lot_expiring", "Lot about to pass its use-by"
    POUR_COMING = "pour_coming", "Pour planned for the next days"


class Act(TextChoices):
    """What settles a row."""

    COMPLETE = "complete", "Complete the pour"
    EXPLAIN = "explain", "Say why that was right"
    WRITE_OFF = "write_off", "Write it off, or use it with a reason"
    RELEASE_OR_REJECT = "release_or_reject", "OK again, or reject it"
    ORDER = "order", "Order it"
    PRICE = "price", "Enter the price"
    USE_FIRST = "use_first", "Use it first"
    PREPARE = "prepare", "See that all is there"


ACTS = {
    Need.POUR_OVERDUE: Act.COMPLETE,
    Need.POUR_UNLOGGED: Act.COMPLETE,
    Need.POUR_TODAY: Act.COMPLETE,
    Need.POUR_UNDATED: Act.COMPLETE,
    Need.POUR_NEEDS_REASON: Act.EXPLAIN,
    Need.LOT_EXPIRED: Act.WRITE_OFF,
    Need.LOT_ON_HOLD: Act.RELEASE_OR_REJECT,
    Need.MATERIAL_BELOW: Act.ORDER,
    Need.DELIVERY_WITHOUT_PRICE: Act.PRICE,
    Need.LOT_EXPIRING: Act.USE_FIRST,
    Need.POUR_COMING: Act.PREPARE,
}


@dataclass(frozen=True, slots=True)
class NeedsAHand:
    """on: the day it is about, if any. noun, id: the record that the act is on."""

    kind: Need
    title: str
    detail: str
    on: date | None
    noun: str
    id: int

    @property
    def act(self) -> Act:
        return ACTS[self.kind]


@dataclass(frozen=True, slots=True)
class Today:
    on: date
    rows: list[NeedsAHand]


def needs_a_hand(*, is_owner: bool) -> Today:
    """What needs a hand now. Seventeen SQL statements at most, however much there is.

    is_owner: deliveries without a price and pours that wait for a reason are the owner's to settle.
    """
    now, zone = timezone.now(), shop_zone()
    on, units = shop_day(now, zone), preferred_units()
    rows = [
        *_planned_pours(now, zone),
        *_lots_by_use_by(on, units),
        *_lots_on_hold(),
        *(_below(standing, units) for standing in below_reorder_point(on)),
    ]
    if is_owner:
        rows += [*_pours_without_reason(zone), *_deliveries_without_price()]
    order = list(Need)
    return Today(on, sorted(rows, key=lambda row: order.index(row.kind)))


def _planned_pours(now: datetime, zone: ZoneInfo) -> Iterator[NeedsAHand]:
    end = start_of_day(shop_day(now, zone) + timedelta(days=DAYS_OF_PLANS + 1), zone)
    soon = Q(planned_for__lt=end) | Q(planned_for=None)
    planned = Pour.objects.filter(soon, status=PourStatus.PLANNED).order_by("planned_for", "id")
    for pour in _with_tops(planned):
        yield _pour(_when(pour.planned_for, now, zone), pour, pour.planned_for, zone)


def _when(planned_for: datetime | None, now: datetime, zone: ZoneInfo) -> Need:
    if planned_for is None:
        return Need.POUR_UNDATED
    day, today = shop_day(planned_for, zone), shop_day(now, zone)
    if day < today:
        return Need.POUR_OVERDUE
    if day > today:
        return Need.POUR_COMING
    return Need.POUR_UNLOGGED if planned_for < now else Need.POUR_TODAY


def _pours_without_reason(zone: ZoneInfo) -> Iterator[NeedsAHand]:
    waiting = Pour.objects.filter(needs_owner_reason=True, status=PourStatus.COMPLETED).order_by("poured_at", "id")
    for pour in _with_tops(waiting):
        yield _pour(Need.POUR_NEEDS_REASON, pour, pour.poured_at, zone)


def _with_tops(pours: QuerySet[Pour]) -> QuerySet[Pour]:
    return pours.prefetch_related("pour_pieces__piece__job")


def _pour(kind: Need, pour: Pour, moment: datetime | None, zone: ZoneInfo) -> NeedsAHand:
    tops = [row.piece for row in pour.pour_pieces.all()]
    jobs = {top.job_id: top.job for top in tops}
    local = moment.astimezone(zone) if moment else None
    words = [f"Job {job.number}: {job.title}" for job in jobs.values()]
    return NeedsAHand(
        kind=kind,
        title=f"{pour.get_layer_display()} on {', '.join(top.name for top in tops) or 'no top yet'}",
        detail="; ".join([*words, f"{local:%H:%M}"] if local else words),
        on=local.date() if local else None,
        noun="pour",
        id=pour.pk,
    )


def _lots_by_use_by(on: date, units: PreferredUnits) -> Iterator[NeedsAHand]:
    for lot in expiring(days=DAYS_BEFORE_USE_BY, on=on).rows:
        yield NeedsAHand(
            kind=Need.LOT_EXPIRED if lot.is_expired else Need.LOT_EXPIRING,
            title=f"{lot.material_name}, lot {lot.lot_number}",
            detail=f"{as_read(lot.on_hand, lot.unit, units)} left; {_days_left(lot)}",
            on=lot.use_by,
            noun="lot",
            id=lot.lot,
        )


def _days_left(lot: ExpiringLot) -> str:
    if lot.days_left == 0:
        return "today is its last good day"
    days = "1 day" if abs(lot.days_left) == 1 else f"{abs(lot.days_left)} days"
    return f"{days} left" if lot.days_left > 0 else f"its last good day was {days} ago"


def _lots_on_hold() -> Iterator[NeedsAHand]:
    """Lots on hold of which something is left, with why."""
    rows = fetch(
        "SELECT l.id, l.lot_number, t.name, (SELECT e.reason FROM stock_statusevent e WHERE e.lot_id = l.id "
        "AND e.status = l.status ORDER BY e.since DESC, e.id DESC LIMIT 1) "
        "FROM stock_lot l JOIN catalog_material t ON t.id = l.material_id WHERE l.status = %s "
        "AND EXISTS (SELECT 1 FROM stock_balance b WHERE b.lot_id = l.id AND b.quantity > 0) ORDER BY l.id",
        [LotStatus.ON_HOLD.value],
    )
    for lot, lot_number, material, reason in rows:
        yield NeedsAHand(Need.LOT_ON_HOLD, f"{material}, lot {lot_number}", reason or "On hold", None, "lot", lot)


def _below(standing: Standing, units: PreferredUnits) -> NeedsAHand:
    material, available = standing.material, standing.figures.available
    amount, point = (
        as_read(figure, material.stock_unit, units) for figure in (abs(available), standing.point or Decimal(0))
    )
    there = f"{amount} to be had" if available >= 0 else f"{amount} more set aside than there is"
    return NeedsAHand(
        kind=Need.MATERIAL_BELOW,
        title=material.name,
        detail=f"{there}, reorder point {point}",
        on=None,
        noun="material",
        id=material.pk,
    )


def _deliveries_without_price() -> Iterator[NeedsAHand]:
    """Deliveries that stand, with lines whose price is to follow."""
    rows = (
        DeliveryLine.objects.filter(cost=None, delivery__undone_by=None)
        .order_by("delivery__received_on", "delivery")
        .values_list("delivery", "delivery__number", "delivery__supplier__name", "delivery__received_on")
        .annotate(lines=Count("id"))
    )
    for delivery, number, supplier, received_on, lines in rows:
        are = "line waits" if lines == 1 else "lines wait"
        yield NeedsAHand(
            kind=Need.DELIVERY_WITHOUT_PRICE,
            title=f"Delivery {number} from {supplier}",
            detail=f"{lines} {are} for the price",
            on=received_on,
            noun="delivery",
            id=delivery,
        )
