"""The shop's day: which date a moment falls on, and when a date begins, in the shop's time zone."""

from datetime import date, datetime, time, timedelta
from functools import lru_cache
from zoneinfo import ZoneInfo

from django.utils import timezone

from inventory.rest.problems import Unprocessable
from inventory.shop.models import Shop

AHEAD_ALLOWED = timedelta(minutes=5)


class InTheFuture(Unprocessable):
    slug = "in-the-future"
    title = "That lies in the future"


@lru_cache(maxsize=64)
def zone_named(name: str) -> ZoneInfo:
    return ZoneInfo(name)


def shop_zone() -> ZoneInfo:
    """The shop's time zone, UTC before the shop is set up. One SQL statement."""
    return zone_named(Shop.objects.values_list("time_zone", flat=True).first() or "UTC")


def shop_day(moment: datetime, zone: ZoneInfo | None = None) -> date:
    """The date that a moment falls on in the shop."""
    return moment.astimezone(zone or shop_zone()).date()


def start_of_day(day: date, zone: ZoneInfo | None = None) -> datetime:
    """The moment at which a date begins in the shop."""
    return datetime.combine(day, time.min, tzinfo=zone or shop_zone())


def today(zone: ZoneInfo | None = None) -> date:
    return shop_day(timezone.now(), zone)


def refuse_future(moment: datetime) -> datetime:
    """The moment itself; raises InTheFuture where it lies more than five minutes ahead."""
    if moment > timezone.now() + AHEAD_ALLOWED:
        raise InTheFuture(f"{moment.isoformat()} has not happened yet. Record what happened, at the time it did.")
    return moment
