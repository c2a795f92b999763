"""A pour is planned, its plan changed, or called off."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from django.db import transaction
from django.utils import timezone

from inventory.pours.actions.marking import save_next_version
from inventory.pours.availability import check_amounts, check_named, set_aside, shelf_on
from inventory.pours.entered import Entered, PieceShare, Plan
from inventory.pours.materials import Stuff, Wanted, planned_again, read_stuff, wanted_of
from inventory.pours.models import PlannedUsage, Pour, PourPiece, PourStatus, Provenance
from inventory.pours.problems import not_planned
from inventory.pours.reading import Held, hold, jobs_of, pieces_under, planned_of, read_people, read_pieces
from inventory.pours.remarks import kept
from inventory.shop.change_log import log_changes
from inventory.shop.fields import to_decimal
from inventory.shop.models import Person
from inventory.shop.numbers import next_number
from inventory.shop.problems import bad_field
from inventory.stock.models import Place
from inventory.stock.queries import default_place
from inventory.stock.reservations import release


@transaction.atomic
def plan_pour(*, plan: Plan, allow_short: bool = False, by: Person) -> Pour:
    """Plan a pour and set its materials aside.

    What cannot be had is refused: a named lot that is rejected, expired or on hold (the owner may name the latter two
    with a reason), and more than is usable at the place and not set aside for others.
    allow_short: plan it all the same; the whole amount is set aside, so that what comes in next is spoken for.
    A plan whose time has passed is refused for neither: it is put down after the fact, and completing it will ask.
    Raises NotEnoughStock, LotOnHold, LotExpired, LotRejected, WrongLot, UnitMismatch, BadBody.
    """
    pour = put_down(plan, by=by)
    stuff = read_stuff([line.material for line in plan.usages])
    wanted = wanted_of(plan.usages, stuff, usual=Provenance.ASSUMED)
    write_planned(pour, wanted)
    held, _ = hold(pour)
    reserve(held, wanted, stuff, pour.shown_pieces, allow_short=allow_short, by=by)
    return pour


def put_down(plan: Plan, *, by: Person) -> Pour:
    """The pour with its pieces and people, nothing set aside."""
    pieces = read_pieces(plan.pieces)
    people = read_people(plan.people)
    pour = Pour.objects.create(
        number=next_number("pour"),
        layer=plan.layer,
        place=place_of(plan.place),
        planned_for=plan.planned_for,
        is_redo=plan.is_redo,
        conditions=kept(plan.conditions),
        ticks=kept(plan.ticks),
        note=plan.note,
        by=by,
    )
    write_pieces(pour, pieces)
    if people:
        pour.people.set(people)
    return pour


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanChange:
    """What is to differ. fields: name -> value of layer, is_redo, planned_for, note, conditions, ticks.

    pieces, usages, people, place: None leaves them.
    """

    fields: dict[str, Any]
    pieces: Sequence[PieceShare] | None = None
    usages: Sequence[Entered] | None = None
    people: Sequence[int] | None = None
    place: int | None = None

    @property
    def moves_stock(self) -> bool:
        """Whether something else has to be set aside."""
        others = (self.pieces, self.usages, self.place)
        return "planned_for" in self.fields or any(other is not None for other in others)


@transaction.atomic
def change_pour(*, pour: Pour, change: PlanChange, allow_short: bool = False, by: Person) -> Pour:
    """Change a planned pour, and set aside what it now needs.

    Of a completed pour only the people, conditions, ticks, note and whether it is a redo can be changed; the log keeps
    what was there before. Raises PourNotPlanned and what `plan_pour` raises.
    """
    held, _ = hold(pour)
    pour = held.pour
    is_about_plan = change.moves_stock or "layer" in change.fields
    if pour.status != PourStatus.PLANNED and (is_about_plan or pour.status != PourStatus.COMPLETED):
        raise not_planned(pour)
    fields = {name: kept(value) if name in ("conditions", "ticks") else value for name, value in change.fields.items()}
    log_changes(record=pour, changes={name: (getattr(pour, name), after) for name, after in fields.items()}, by=by)
    for name, after in fields.items():
        setattr(pour, name, after)
    if change.people is not None:
        pour.people.set(read_people(change.people))
    if change.moves_stock:
        change_needs(held, change, allow_short=allow_short, by=by)
    save_next_version(pour)
    return pour


def change_needs(held: Held, change: PlanChange, *, allow_short: bool, by: Person) -> None:
    pour = held.pour
    if change.place is not None:
        pour.place = place_of(change.place)
    if change.pieces is not None:
        pieces = read_pieces(change.pieces)
        pour.pour_pieces.all().delete()
        write_pieces(pour, pieces)
    if change.usages is not None:
        stuff = read_stuff([line.material for line in change.usages])
        wanted = wanted_of(change.usages, stuff, usual=Provenance.ASSUMED)
        pour.planned_usages.all().delete()
        write_planned(pour, wanted)
    else:
        planned = planned_of(pour)
        wanted, stuff = planned_again(planned), read_stuff([line.material_id for line in planned])
    release(cause=pour.pk)
    reserve(held, wanted, stuff, pieces_under(pour), allow_short=allow_short, by=by)


@transaction.atomic
def cancel_pour(*, pour: Pour, reason: str = "", by: Person) -> Pour:
    """Call a planned pour off; what was set aside for it is free again. Raises PourNotPlanned."""
    held, _ = hold(pour)
    pour = held.pour
    if pour.status != PourStatus.PLANNED:
        raise not_planned(pour)
    log_changes(record=pour, changes={"status": (pour.status, PourStatus.CANCELLED)}, by=by)
    pour.status = PourStatus.CANCELLED
    pour.reason = reason
    save_next_version(pour)
    release(cause=pour.pk)
    return pour


def reserve(
    held: Held,
    wanted: Sequence[Wanted],
    stuff: dict[int, Stuff],
    pieces: Sequence[PourPiece],
    *,
    allow_short: bool,
    by: Person,
) -> None:
    """Check that the plan can be had, and set it aside."""
    pour = held.pour
    now = timezone.now()
    is_after_the_fact = pour.planned_for is not None and pour.planned_for <= now
    when: datetime = now if pour.planned_for is None or is_after_the_fact else pour.planned_for
    shelf = shelf_on(held, wanted, stuff, when=when)
    if not is_after_the_fact:
        check_named(wanted, shelf, by=by)
        if not allow_short:
            check_amounts(wanted, shelf, but=pour.pk)
    jobs = jobs_of(pieces)
    needed_on = held.day_of(pour.planned_for) if pour.planned_for else None
    set_aside(pour, wanted, job=jobs.pop() if len(jobs) == 1 else None, needed_on=needed_on)


def write_pieces(pour: Pour, pieces: list[PourPiece]) -> None:
    for row in pieces:
        row.pour = pour
    PourPiece.objects.bulk_create(pieces)
    pour.shown_pieces = pieces


def write_planned(pour: Pour, wanted: Sequence[Wanted]) -> None:
    PlannedUsage.objects.bulk_create(
        PlannedUsage(
            pour=pour,
            position=line.position,
            material_id=line.material,
            lot_id=line.lot,
            place_id=line.place,
            quantity=to_decimal(line.quantity, 6),
            typed_amount=line.typed_amount,
            typed_unit=line.typed_unit,
            weighed_before=line.weighed_before,
            weighed_after=line.weighed_after,
            bucket=line.bucket,
            is_waste=line.is_waste,
            reason=line.reason,
            provenance=line.provenance,
            lot_provenance=line.lot_provenance,
        )
        for line in wanted
    )


def place_of(place: int | None) -> Place:
    """The place by its id, or the shop's own. Raises BadBody."""
    if place is None:
        return default_place()
    found = Place.objects.filter(pk=place).first()
    if found is None:
        raise bad_field("/place", "There is no place with this id.")
    return found
