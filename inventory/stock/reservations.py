"""Setting stock aside for what is planned, and letting go of it."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from django.db import connection, transaction
from django.utils import timezone

from inventory.stock.book import open_book
from inventory.stock.models import Place, Reservation


@dataclass(frozen=True, slots=True)
class SetAside:
    """So much of a material, in its stock unit, > 0; of one lot where it must be that one."""

    material: int
    quantity: Decimal
    lot: int | None = None


@transaction.atomic
def reserve(
    *,
    wants: Sequence[SetAside],
    place: Place,
    cause: int,
    needed_on: date | None = None,
    job_key: int | None = None,
) -> list[Reservation]:
    """Set stock aside, in five SQL statements however many there are. What lacks is set aside too: it shows as a lack.

    The materials' lots at the place are locked meanwhile, because what is available of them gets scarcer.
    cause, job_key: keys of the plan and the job, which stock does not know.
    """
    open_book(earliest=timezone.now(), lots=_named(wants), materials={want.material for want in wants}, place=place.pk)
    return Reservation.objects.bulk_create(
        Reservation(
            material_id=want.material,
            lot_id=want.lot,
            place=place,
            quantity=want.quantity,
            needed_on=needed_on,
            job_key=job_key,
            cause=cause,
        )
        for want in wants
    )


def release(*, cause: int) -> None:
    """Let go of everything that was set aside for this cause. One SQL statement."""
    with connection.cursor() as cursor:
        cursor.execute("DELETE FROM stock_reservation WHERE cause = %s", [cause])


def _named(wants: Sequence[SetAside]) -> Collection[int]:
    return {want.lot for want in wants if want.lot is not None}
