"""A pour happened: as it was planned, otherwise, or without any plan."""

from django.db import transaction

from inventory.pours.actions.marking import mark_waiting, note_seen, save_next_version
from inventory.pours.actions.plan import put_down
from inventory.pours.booking import Happening, book
from inventory.pours.entered import Account, Plan
from inventory.pours.materials import Stuff, Wanted, planned_again, read_stuff, stuff_of, wanted_of
from inventory.pours.models import Pour, PourStatus, Provenance
from inventory.pours.problems import not_planned
from inventory.pours.reading import Held, hold_with_target, jobs_of, moment_of, pieces_under, planned_of
from inventory.shop.models import Person
from inventory.stock.reservations import release


@transaction.atomic
def complete_pour(*, pour: Pour, account: Account, by: Person) -> Pour:
    """Post what a planned pour really used and mark it completed: everything or nothing.

    pour: only its key is read. Amounts that are given replace the plan whole; without them it went as planned.
    Lots that nobody named are chosen; expired ones and ones on hold never are, but may be named, and then wait for the
    owner's reason. What was set aside for the pour is free again.
    Raises PourNotPlanned, NotEnoughStock, UsedBeforeReceived, LotRejected, WrongLot, UnitMismatch, LeftoverTooLarge,
    PourNotCompleted (of the pour that got the left-over), InTheFuture, BadBody; Pour.DoesNotExist.
    """
    held = hold_with_target(pour, account.leftover)
    if held.pour.status != PourStatus.PLANNED:
        raise not_planned(held.pour)
    completed(held, account, by=by)
    release(cause=held.pour.pk)
    return held.pour


@transaction.atomic
def log_pour(*, plan: Plan, account: Account, by: Person) -> Pour:
    """Record a pour that nobody had planned, in one act. account.usages: what went in.

    Raises what `complete_pour` raises; what others have set aside does not stand in its way.
    """
    held = hold_with_target(put_down(plan, by=by), account.leftover)
    completed(held, account, by=by)
    return held.pour


def completed(held: Held, account: Account, *, by: Person) -> None:
    pour = held.pour
    moment = moment_of(pour, account.poured_at)
    pieces = pieces_under(pour)
    wanted, stuff = what_went_in(pour, account)
    usages = book(
        Happening(
            held=held,
            moment=moment,
            jobs=jobs_of(pieces),
            wanted=wanted,
            stuff=stuff,
            leftover=account.leftover,
            found=account.found,
        ),
        by=by,
    )
    pour.status = PourStatus.COMPLETED
    pour.poured_at = moment
    note_seen(pour, account)
    mark_waiting(pour, usages, by=by)
    save_next_version(pour)
    pour.shown_usages = usages


def what_went_in(pour: Pour, account: Account) -> tuple[list[Wanted], dict[int, Stuff]]:
    """The amounts that were given, or the plan's. Two SQL statements; one where all went as planned."""
    planned = planned_of(pour)
    if account.usages is None:
        is_as_planned = account.leftover is None and not account.found
        stuff = stuff_of(planned) if is_as_planned else read_stuff([line.material_id for line in planned])
        return planned_again(planned), stuff
    stuff = read_stuff([line.material for line in account.usages])
    return wanted_of(account.usages, stuff, usual=Provenance.TYPED), stuff
