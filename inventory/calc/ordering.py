"""When to order again, and how many packs."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from fractions import Fraction
from math import ceil, floor
from statistics import NormalDist

# A need of at most 0.001 of a stock unit is none: no pack is opened for what nobody can weigh.
TOLERANCE = Fraction(1, 1000)


@dataclass(frozen=True, slots=True)
class Offer:
    """A pack that can be ordered: for each material in it, how much of the stock unit one pack holds (> 0)."""

    pack: int
    contents: Mapping[int, Decimal]


def safety_stock(sd: Decimal, service_level: Decimal) -> Decimal:
    """What is kept beyond the mean use of the lead time, so as not to run out with the given probability.

    z·σ, with z the exact normal quantile (1.644854 at 95 %, not a printed 1.65); none below a level of one half.

    sd: standard deviation of use during the lead time, in the stock unit, >= 0.
    service_level: the probability of not running out in one lead time, 0 < level < 1.
    Raises ValueError outside these bounds.
    Source: Stevenson, Operations Management, reorder point with normal lead-time demand.
    """
    if not 0 < service_level < 1:
        raise ValueError(f"a service level lies between 0 and 1, such as 0.95 for 95 %, not {service_level}")
    if sd < 0:
        raise ValueError(f"a standard deviation is 0 or more, not {sd}")
    if service_level <= Decimal("0.5"):
        return Decimal(0)
    return Decimal(NormalDist().inv_cdf(float(service_level))) * sd


def reorder_point(mean: Decimal, safety: Decimal) -> Decimal:
    """The position below which to order: mean use of the lead time and the safety stock, in the stock unit."""
    return mean + safety


def shortfall(*, position: Decimal, reorder_point: Decimal) -> Decimal:
    """How far the position lies below the reorder point, in the stock unit; 0 where it does not.

    position: available + on order.
    """
    return max(reorder_point - position, Decimal(0))


def runs_out_on(available: Decimal, daily_use: Decimal, today: date) -> date | None:
    """The first day that what is available no longer serves, used up evenly from today on.

    available, daily_use: in the stock unit. None where nothing is used, or the calendar ends before the stock does.

    >>> runs_out_on(Decimal(10), Decimal(4), date(2026, 6, 1))
    datetime.date(2026, 6, 3)
    """
    if daily_use <= 0:
        return None
    days = max(floor(Fraction(available) / Fraction(daily_use)), 0)
    return today + timedelta(days=days) if days <= (date.max - today).days else None


def suggested_packs(needs: Mapping[int, Decimal], offers: Sequence[Offer]) -> dict[int, int]:
    """How many of each pack to order so that every need met by an offer is covered.

    A kit is taken as often as its scarcest content needs, never the sum over its contents; what it brings counts for
    all of them before the next offer is looked at. A need that no offer holds stays for the caller to see.

    needs: what is missing of each material, in its stock unit; 0 or less: nothing.
    offers: in the order in which the shop prefers them; each pack once.
    Returns the packs to order (a count >= 1 each), in the order of the offers.
    Raises ValueError for a pack that holds 0 or less of a content.
    """
    missing = {material: Fraction(quantity) for material, quantity in needs.items() if quantity > TOLERANCE}
    counts: dict[int, int] = {}
    for offer in offers:
        count = _packs_for(missing, offer)
        if count:
            counts[offer.pack] = count
            for material, quantity in offer.contents.items():
                if material in missing:
                    missing[material] -= count * Fraction(quantity)
    return counts


def _packs_for(missing: Mapping[int, Fraction], offer: Offer) -> int:
    """As many of this pack as its scarcest content needs."""
    if any(quantity <= 0 for quantity in offer.contents.values()):
        raise ValueError(f"pack {offer.pack} must hold more than 0 of each of its contents")
    return max(
        (
            ceil((missing[material] - TOLERANCE) / Fraction(quantity))
            for material, quantity in offer.contents.items()
            if missing.get(material, 0) > TOLERANCE
        ),
        default=0,
    )
