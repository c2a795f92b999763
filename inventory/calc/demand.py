"""How fast a material is used, and how much of it goes while an order is on its way."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from decimal import Decimal, localcontext

WINDOW_DAYS = 90
_EXACT = 80  # digits: sums of squares of the largest movements stay exact


@dataclass(frozen=True, slots=True)
class DailyUse:
    """Use per shop day, in the stock unit: its mean, its standard deviation (n − 1), and over how many days.

    A single day shows no spread: its sd is 0. Over no days at all everything is 0.
    """

    mean: Decimal
    sd: Decimal
    days: int


@dataclass(frozen=True, slots=True)
class LeadTimeDemand:
    """What is used from ordering to arrival, in the stock unit: mean and standard deviation."""

    mean: Decimal
    sd: Decimal


NO_USE = DailyUse(Decimal(0), Decimal(0), 0)


def daily_use(
    used_by_day: Mapping[date, Decimal],
    *,
    today: date,
    first_received_on: date | None,
    window_days: int = WINDOW_DAYS,
) -> DailyUse:
    """Mean and spread of what was used and wasted per day, over the last days or since the material first came.

    The window ends today, today included, and is `window_days` long, or shorter where the material first came later.
    A day without use counts as 0; what lies outside the window is left out.

    used_by_day: net use by the shop's day, in the stock unit; days without use need not be there.
    first_received_on: the day of the first receipt; None: never received, so no use.
    Source: sample mean and sample variance, Σ(x − mean)² / (n − 1).
    """
    if window_days < 1:
        raise ValueError(f"a window of {window_days} days holds no day; give 1 or more")
    if first_received_on is None or first_received_on > today:
        return NO_USE
    days = min(window_days, (today - first_received_on).days + 1)
    used = [quantity for day, quantity in used_by_day.items() if 0 <= (today - day).days < days]
    with localcontext(prec=_EXACT):
        total = sum(used, Decimal(0))
        squares = sum((quantity * quantity for quantity in used), Decimal(0))
        mean = total / days
        sd = ((days * squares - total * total) / (days * (days - 1))).sqrt() if days > 1 else Decimal(0)
    return DailyUse(mean=+mean, sd=+sd, days=days)


def lead_time_demand(
    mean: Decimal, sd: Decimal, lead_time_mean: Decimal, lead_time_sd: Decimal = Decimal(0)
) -> LeadTimeDemand:
    """Mean and spread of what is used during the lead time, where day does not depend on day.

    The spread is √(L·σd² + d²·σL²), with d, σd the use per day and L, σL the lead time in days (any one time unit).
    Raises ValueError for a negative spread or lead time.
    Source: variance of a random sum, as in Heizer & Render, Operations Management, ch. 12.

    >>> lead_time_demand(Decimal(150), Decimal(16), Decimal(5), Decimal(1)).mean
    Decimal('750')
    """
    if sd < 0 or lead_time_mean < 0 or lead_time_sd < 0:
        raise ValueError("a lead time and a standard deviation are 0 or more")
    variance = lead_time_mean * sd * sd + mean * mean * lead_time_sd * lead_time_sd
    return LeadTimeDemand(mean=lead_time_mean * mean, sd=variance.sqrt())
