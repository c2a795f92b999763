"""A lot's price is known at last: what was waiting for it waits no longer."""

from collections.abc import Collection, Mapping

from django.db import transaction

from inventory.stock.bars import by_depth, made_of
from inventory.stock.models import Basis, Lot, Origin


@transaction.atomic
def settle_prices(*, bases: Mapping[int, Basis], reached: Collection[int]) -> None:
    """Mark delivered lots as priced, on what basis, and everything made from them, unless it waits for another price.

    bases: lot -> what its money rests on from now on; what was opened from it rests on the same.
    reached: these lots and all that anything of them went into (`corrections.lots_made_from`), locked.
    Four SQL statements.
    """
    lots = {lot.pk: lot for lot in Lot.objects.filter(pk__in=reached)}
    parents = made_of(set(reached) - set(bases))
    outside = {parent for those in parents.values() for parent in those} - set(lots)
    waiting = set(Lot.objects.filter(pk__in=outside, is_provisional=True).values_list("pk", flat=True))
    for pk in by_depth(parents, lots):
        lot = lots[pk]
        if pk in bases:
            lot.is_provisional, lot.basis = False, bases[pk]
            continue
        lot.is_provisional = bool(waiting & parents.get(pk, set()))
        if lot.is_provisional:
            waiting.add(pk)
        if lot.origin == Origin.OPENED and lot.opened_from_id in lots:
            lot.basis = lots[lot.opened_from_id].basis
    Lot.objects.bulk_update(lots.values(), ["is_provisional", "basis"])
