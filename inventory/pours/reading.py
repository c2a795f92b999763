"""What an action on a pour reads and locks before it writes."""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal
from typing import Any
from zoneinfo import ZoneInfo

from django.db import connection
from django.db.models import Prefetch
from django.utils import timezone

from inventory.jobs.models import Customer, Job, Piece
from inventory.pours.entered import Leftover, PieceShare
from inventory.pours.materials import MATERIAL
from inventory.pours.models import PlannedUsage, Pour, PourPiece, PourStatus
from inventory.pours.problems import not_completed
from inventory.shop.clock import refuse_future, shop_day, zone_named
from inventory.shop.models import Person
from inventory.shop.problems import bad_field, bad_fields
from inventory.shop.rows import Columns, keep_beside, records
from inventory.stock.book import marks
from inventory.stock.models import Lot, Place

WHOLE = 100

POUR = Columns(Pour, "o")
PLACE = Columns(Place, "s")
UNDER = Columns(PourPiece, "pp")
PIECE = Columns(Piece, "p", "id", "number", "name", "job_id", "area_sqft", "is_scrapped")
JOB = Columns(Job, "j", "id", "number", "title", "customer_id")
CUSTOMER = Columns(Customer, "c", "id", "name")
PLANNED = Columns(PlannedUsage, "u")
LOT = Columns(Lot, "l", "id", "number", "lot_number")


@dataclass(frozen=True, slots=True)
class Held:
    """A pour under lock, and the shop's zone."""

    pour: Pour
    zone: ZoneInfo

    def day_of(self, moment: datetime) -> date:
        return shop_day(moment, self.zone)


def hold(pour: Pour, *others: int) -> tuple[Held, dict[int, Pour]]:
    """The pour as it stands, locked until the transaction ends, and other pours by id; locked in order of their ids.

    Only the pour's key is read. One SQL statement. Raises Pour.DoesNotExist; others that are none are left out.
    """
    ids = sorted({pour.pk, *others})
    lock = " FOR NO KEY UPDATE OF o" if connection.features.has_select_for_update else ""
    with connection.cursor() as cursor:
        cursor.execute(
            f"SELECT {POUR.sql}, {PLACE.sql}, (SELECT time_zone FROM shop_shop LIMIT 1) FROM pours_pour o "
            f"JOIN stock_place s ON s.id = o.place_id WHERE o.id IN ({marks(ids)}) ORDER BY o.id{lock}",
            ids,
        )
        rows = cursor.fetchall()
    found: dict[int, Pour] = {}
    for row in rows:
        held, place = records(row, POUR, PLACE)
        keep_beside(held, "place", place)
        found[held.pk] = held
    if pour.pk not in found:
        raise Pour.DoesNotExist(f"There is no pour {pour.pk}.")
    return Held(found.pop(pour.pk), zone_named(rows[0][-1] or "UTC")), found


def moment_of(pour: Pour, poured_at: datetime | None) -> datetime:
    """When it was poured: as said; else as planned, where that had passed when it was put down; else now.

    Raises InTheFuture.
    """
    if poured_at is not None:
        return refuse_future(poured_at)
    if pour.planned_for is not None and pour.planned_for <= pour.made_at:
        return pour.planned_for
    return timezone.now()


def pieces_under(pour: Pour) -> list[PourPiece]:
    """The pieces with their jobs, as `queries.shown` shows them. One SQL statement at first."""
    if not hasattr(pour, "shown_pieces"):
        with connection.cursor() as cursor:
            cursor.execute(
                f"SELECT {', '.join(of.sql for of in (UNDER, PIECE, JOB, CUSTOMER))} FROM pours_pourpiece pp "
                "JOIN jobs_piece p ON p.id = pp.piece_id JOIN jobs_job j ON j.id = p.job_id "
                "JOIN jobs_customer c ON c.id = j.customer_id WHERE pp.pour_id = %s ORDER BY pp.id",
                [pour.pk],
            )
            pour.shown_pieces = [_piece_under(row) for row in cursor.fetchall()]
    return pour.shown_pieces


def _piece_under(row: Sequence[Any]) -> PourPiece:
    under: PourPiece
    under, piece, job, customer = records(row, UNDER, PIECE, JOB, CUSTOMER)
    keep_beside(job, "customer", customer)
    keep_beside(piece, "job", job)
    keep_beside(under, "piece", piece)
    return under


def shown_pieces() -> Prefetch[str]:
    rows = PourPiece.objects.select_related("piece__job__customer").order_by("id")
    return Prefetch("pour_pieces", rows, to_attr="shown_pieces")


def jobs_of(pieces: Iterable[PourPiece]) -> set[int]:
    return {row.piece.job_id for row in pieces}


def read_pieces(shares: Sequence[PieceShare]) -> list[PourPiece]:
    """Rows for a new pour, not saved. One SQL statement.

    Raises BadBody for a piece that is none or stands twice, and for typed shares that do not sum to 100.
    """
    if not shares:
        raise bad_field("/pieces", "Name at least one top.")
    asked = [share.piece for share in shares]
    found = {piece.pk: piece for piece in Piece.objects.filter(pk__in=asked).select_related("job__customer")}
    errors = [
        (f"/pieces/{index}", "There is no top with this id." if key not in found else "This top stands here twice.")
        for index, key in enumerate(asked)
        if key not in found or key in asked[:index]
    ]
    if errors:
        raise bad_fields(errors)
    check_shares(shares)
    return [PourPiece(piece=found[share.piece], share_percent=share.share_percent) for share in shares]


def check_shares(shares: Sequence[PieceShare]) -> None:
    typed = [share.share_percent for share in shares if share.share_percent is not None]
    if not typed:
        return
    if len(typed) < len(shares):
        raise bad_field("/pieces", "Give every top its share, or none: without shares the cost goes by area.")
    whole = sum(typed, Decimal(0))
    if whole != WHOLE:
        raise bad_field("/pieces", f"The shares sum to {whole.normalize():f} percent; they must sum to 100.")


def read_people(people: Collection[int]) -> list[Person]:
    """The people by their ids. One SQL statement. Raises BadBody for one that is none."""
    if not people:
        return []
    found = {person.pk: person for person in Person.objects.filter(pk__in=people)}
    unknown = [
        (f"/people/{index}", "There is nobody with this id.") for index, key in enumerate(people) if key not in found
    ]
    if unknown:
        raise bad_fields(unknown)
    return [found[key] for key in dict.fromkeys(people)]


def used_by_jobs(jobs: Collection[int], materials: Collection[int], *, but: int) -> tuple[set[int], dict[int, int]]:
    """The lots of these materials that the jobs have used, and what they have set aside of each, in millionths.

    but: the pour that is asking, which does not count. One SQL statement; none where there is nothing to ask. It goes
    from the jobs to their pours (CROSS JOIN keeps that order on SQLite), so that old pours of a material cost nothing.
    """
    if not jobs or not materials:
        return set(), {}
    of_jobs, of_materials = sorted(jobs), sorted(materials)
    with connection.cursor() as cursor:
        cursor.execute(
            "SELECT DISTINCT u.material_id, u.lot_id, 0 FROM jobs_piece p CROSS JOIN pours_pourpiece pp "
            f"CROSS JOIN pours_usage u WHERE p.job_id IN ({marks(of_jobs)}) AND pp.piece_id = p.id "
            f"AND u.pour_id = pp.pour_id AND +u.material_id IN ({marks(of_materials)}) AND NOT u.is_taken_back "
            "AND u.pour_id <> %s UNION ALL "
            "SELECT material_id, NULL, SUM(quantity) FROM stock_reservation "
            f"WHERE job_key IN ({marks(of_jobs)}) AND +material_id IN ({marks(of_materials)}) AND cause <> %s "
            "GROUP BY material_id",
            [*of_jobs, *of_materials, but, *of_jobs, *of_materials, but],
        )
        rows = cursor.fetchall()
    lots = {lot for _, lot, _ in rows if lot is not None}
    return lots, {material: int(quantity) for material, lot, quantity in rows if lot is None}


def planned_of(pour: Pour) -> list[PlannedUsage]:
    """What was planned, with the names to show. One SQL statement at first."""
    if not hasattr(pour, "shown_planned"):
        with connection.cursor() as cursor:
            cursor.execute(
                f"SELECT {', '.join(of.sql for of in (PLANNED, MATERIAL, LOT))} FROM pours_plannedusage u "
                "JOIN catalog_material m ON m.id = u.material_id LEFT JOIN stock_lot l ON l.id = u.lot_id "
                "WHERE u.pour_id = %s ORDER BY u.position",
                [pour.pk],
            )
            pour.shown_planned = [_planned(row) for row in cursor.fetchall()]
    return pour.shown_planned


def _planned(row: Sequence[Any]) -> PlannedUsage:
    planned: PlannedUsage
    planned, material = records(row, PLANNED, MATERIAL)
    keep_beside(planned, "material", material)
    lot = LOT.record(row[-len(LOT) :]) if planned.lot_id else None
    keep_beside(planned, "lot", lot)
    return planned


def shown_planned() -> Prefetch[str]:
    rows = PlannedUsage.objects.select_related("material", "lot", "place").order_by("position")
    return Prefetch("planned_usages", rows, to_attr="shown_planned")


def hold_with_target(pour: Pour, leftover: Leftover | None) -> Held:
    """The pour, and the pour that got its left-over, both locked. Raises PourNotCompleted, BadBody."""
    target = leftover.went_to if leftover else None
    held, others = hold(pour, *([target] if target else []))
    if target is not None:
        if target == pour.pk:
            raise bad_field("/leftover/went_to", "Name another pour: what stayed on this one is not left over.")
        if target not in others:
            raise bad_field("/leftover/went_to", "There is no pour with this id.")
        if others[target].status != PourStatus.COMPLETED:
            raise not_completed(others[target])
    return held
