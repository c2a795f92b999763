"""Later news of a delivery: what it changes on the lots themselves, beside the ledger."""

from collections.abc import Collection, Mapping, Sequence

from django.db import transaction

from inventory.stock.bars import by_depth, made_of
from inventory.stock.models import Basis, Lot
from inventory.stock.problems import TooFewContainers


@transaction.atomic
def settle_prices(*, bases: Mapping[int, Basis], reached: Collection[int]) -> None:
    """Mark delivered lots as priced, on what basis, and everything made from them, unless it waits for another price.

    bases: lot -> what its money rests on from now on; what was made from it takes that over.
    reached: these lots and all that anything of them went into (`corrections.lots_made_from`), locked.
    Two SQL statements where nothing was made from them, four otherwise.
    """
    lots = {lot.pk: lot for lot in Lot.objects.filter(pk__in=reached)}
    made = set(reached) - set(bases)
    parents = made_of(made) if made else {}
    outside = {parent for those in parents.values() for parent in those} - set(lots)
    known = lots | Lot.objects.in_bulk(outside)
    for pk in by_depth(parents, lots):
        lot = lots[pk]
        if pk in bases:
            lot.is_provisional, lot.basis = False, bases[pk]
        else:
            _take_over(lot, [known[parent] for parent in sorted(parents.get(pk, ()))])
    Lot.objects.bulk_update(lots.values(), ["is_provisional", "basis"])


@transaction.atomic
def change_containers(*, changes: Mapping[int, int]) -> None:
    """So many more (or, below zero, fewer) containers came in than was written; at least one stays of each lot.

    changes: lot -> difference. Two SQL statements. Raises TooFewContainers.
    """
    lots = list(Lot.objects.select_for_update(no_key=True).filter(pk__in=changes).order_by("pk"))
    for lot in lots:
        lot.containers += changes[lot.pk]
        if lot.containers < 1:
            raise TooFewContainers(
                f"Of lot {lot.number} more containers have been opened than that leaves. Give at least "
                f"{1 - lot.containers} more.",
                lot=lot.pk,
            )
    Lot.objects.bulk_update(lots, ["containers"])


@transaction.atomic
def wait_no_longer(*, lots: Collection[int]) -> None:
    """Lots whose delivery was undone wait for no price. One SQL statement."""
    Lot.objects.filter(pk__in=lots, is_provisional=True).update(is_provisional=False)


def _take_over(lot: Lot, sources: Sequence[Lot]) -> None:
    """A lot made from others waits for a price while one of them does, and is free in part where one of them is."""
    lot.is_provisional = any(source.is_provisional for source in sources)
    not_paid = [source.basis for source in sources if source.basis != Basis.PAID]
    if lot.basis not in not_paid:
        lot.basis = not_paid[0] if not_paid else Basis.PAID
