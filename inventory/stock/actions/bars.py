"""Hold, reject, OK again: on a lot or on its supplier's number, and on everything made of it."""

from collections.abc import Collection
from datetime import datetime

from django.db import transaction
from django.utils import timezone

from inventory.shop.models import Person
from inventory.stock.bars import Bar, InForce, bars_on, events_for, lifted, made_of, status_of
from inventory.stock.book import open_book
from inventory.stock.corrections import lots_made_from
from inventory.stock.models import Lot, LotStatus, StatusEvent
from inventory.stock.problems import NotOnHold
from inventory.stock.taking import moment_of


@transaction.atomic
def hold(*, lot: Lot, reason: str, all_of_this_number: bool = True, since: datetime | None = None, by: Person) -> Lot:
    """Put a lot on hold, with all of its supplier number unless only this one is meant, and all that was made of them.

    Lots of that number that come in later come in on hold. Undone by `release`. Raises InTheFuture.
    """
    return _bar(LotStatus.ON_HOLD, lot, reason, all_of_this_number, since, by)


@transaction.atomic
def reject(*, lot: Lot, reason: str, all_of_this_number: bool = True, since: datetime | None = None, by: Person) -> Lot:
    """Reject a lot, as `hold` does; a hold becomes a rejection. Undone by `release`. Raises InTheFuture."""
    return _bar(LotStatus.REJECTED, lot, reason, all_of_this_number, since, by)


@transaction.atomic
def release(*, lot: Lot, reason: str, all_of_this_number: bool = True, by: Person) -> Lot:
    """Say that a lot is OK again, with all of its number unless only this one is meant, and what was made of them.

    What was also made from another lot that stays on hold or rejected stays so too. Raises NotOnHold.
    """
    now = timezone.now()
    scope = _scope(lot, all_of_this_number)
    reached = lots_made_from(scope)
    open_book(earliest=now, lots=reached)
    parents = {parent for of_lot in made_of(reached).values() for parent in of_lot}
    bars = bars_on(reached | parents)
    if not any(bars[one] for one in scope):
        raise NotOnHold(f"Lot {lot.number} is neither on hold nor rejected.", lot=lot.pk)
    gone = lifted(scope, reached, bars)
    StatusEvent.objects.bulk_create(
        event
        for row in Lot.objects.filter(pk__in=[one for one in gone if gone[one]])
        for event in events_for(row, _usable(gone[row.pk], now, reason), by=by)
    )
    keep_statuses(reached)
    return Lot.objects.get(pk=lot.pk)


def _usable(bars: Collection[Bar], since: datetime, reason: str) -> list[InForce]:
    return [InForce(bar, LotStatus.USABLE, since, reason) for bar in sorted(bars)]


def _bar(status: LotStatus, lot: Lot, reason: str, all_of_this_number: bool, since: datetime | None, by: Person) -> Lot:
    at = moment_of(since)
    scope = _scope(lot, all_of_this_number)
    reached = lots_made_from(scope)
    open_book(earliest=at, lots=reached)
    whole_number = all_of_this_number and not lot.is_own_number
    bar = (min(scope) if whole_number else lot.pk, whole_number)
    StatusEvent.objects.bulk_create(
        event
        for row in Lot.objects.filter(pk__in=reached)
        for event in events_for(row, [InForce(bar, status, max(at, row.received_at), reason)], by=by)
    )
    keep_statuses(reached)
    return Lot.objects.get(pk=lot.pk)


def _scope(lot: Lot, all_of_this_number: bool) -> set[int]:
    """The lots that somebody speaks of: this one, or all of its supplier's number."""
    if not all_of_this_number or lot.is_own_number:
        return {lot.pk}
    same = Lot.objects.filter(material=lot.material_id, lot_number=lot.lot_number, is_own_number=False)
    return set(same.values_list("pk", flat=True))


def keep_statuses(lots: Collection[int]) -> None:
    """Write on each lot the status that its bars give it. Four SQL statements at most."""
    by_status: dict[str, list[int]] = {}
    for lot, bars in bars_on(lots).items():
        by_status.setdefault(status_of(bars.values()), []).append(lot)
    for status, these in by_status.items():
        Lot.objects.filter(pk__in=these).exclude(status=status).update(status=status)
