"""What is said of a completed pour afterwards: more went in, it was otherwise, it never was, why it was right."""

from collections.abc import Sequence
from datetime import datetime

from django.db import transaction
from django.db.models import Q

from inventory.calc.bookkeeping import Entry
from inventory.pours.actions.marking import add_owner_reason, mark_waiting, note_seen, save_next_version
from inventory.pours.booking import Happening, book
from inventory.pours.entered import Account, Entered, Found
from inventory.pours.materials import read_stuff, wanted_of
from inventory.pours.models import Pour, PourStatus, Provenance, Usage
from inventory.pours.problems import NothingToExplain, TookLeftover, not_completed
from inventory.pours.reading import Held, hold, hold_with_target, jobs_of, pieces_under
from inventory.shop.change_log import log_changes
from inventory.shop.clock import refuse_future
from inventory.shop.models import Person
from inventory.stock import ledger
from inventory.stock.book import open_book
from inventory.stock.corrections import Standing, standing, take_back
from inventory.stock.models import Kind, Movement


@transaction.atomic
def add_to_pour(
    *, pour: Pour, usages: Sequence[Entered], poured_at: datetime, found: Sequence[Found] = (), by: Person
) -> Pour:
    """More went into a completed pour: a top-up, another kit. What was booked before stays as it is.

    Raises PourNotCompleted and what `complete_pour` raises of amounts and lots.
    """
    held, _ = hold(pour)
    pour = held.pour
    if pour.status != PourStatus.COMPLETED:
        raise not_completed(pour)
    stuff = read_stuff([line.material for line in usages])
    last = pour.usages.order_by("-position").values_list("position", flat=True).first()
    wanted = wanted_of(usages, stuff, usual=Provenance.TYPED, first=0 if last is None else last + 1)
    added = book(
        Happening(
            held=held,
            moment=refuse_future(poured_at),
            jobs=jobs_of(pieces_under(pour)),
            wanted=wanted,
            stuff=stuff,
            found=found,
        ),
        by=by,
    )
    mark_waiting(pour, added, by=by)
    save_next_version(pour)
    return pour


@transaction.atomic
def correct_pour(*, pour: Pour, account: Account, reason: str, by: Person) -> Pour:
    """What went in was otherwise: all of it is taken back and booked anew, in one act.

    account.usages, account.leftover: what really went in, whole; other parts of the account change only what they give.
    What came from another pour's left-over stays. Finds stay, and further ones may be added.
    Raises PourNotCompleted and what `complete_pour` raises.
    """
    held = hold_with_target(pour, account.leftover)
    pour = held.pour
    if pour.status != PourStatus.COMPLETED:
        raise not_completed(pour)
    usages = account.usages or ()
    stuff = read_stuff([line.material for line in usages])
    wanted = wanted_of(usages, stuff, usual=Provenance.TYPED)
    live = live_usages(pour)
    moment = refuse_future(account.poured_at) if account.poured_at else pour.poured_at
    assert moment is not None
    fresh = book(
        Happening(
            held=held,
            moment=moment,
            jobs=jobs_of(pieces_under(pour)),
            wanted=wanted,
            stuff=stuff,
            leftover=account.leftover,
            found=account.found,
            take_back=take_back(in_order(standing([row.movement_id for row in live]))),
            reason=reason,
        ),
        by=by,
    )
    Usage.objects.filter(pk__in=[row.pk for row in live]).update(is_taken_back=True)
    log_changes(record=pour, changes={"poured_at": (pour.poured_at, moment)}, by=by)
    pour.poured_at = moment
    note_seen(pour, account)
    pour.needs_owner_reason = False
    mark_waiting(pour, fresh, by=by)
    save_next_version(pour)
    return pour


@transaction.atomic
def reverse_pour(*, pour: Pour, reason: str, by: Person) -> Pour:
    """The pour never was, an entry mistake: everything goes back, with every later change of its cost, once only.

    What was found for it goes out again; what it gave to another pour as left-over is taken back there too.
    Raises PourNotCompleted, TookLeftover where another pour's left-over went into it, NotEnoughStock where what was
    found has gone elsewhere since.
    """
    held, _ = hold(pour)
    pour = held.pour
    if pour.status != PourStatus.COMPLETED:
        raise not_completed(pour)
    refuse_taker(pour)
    live = live_usages(pour)
    issues = in_order(standing([row.movement_id for row in live]))
    finds = [find for find in in_order(standing(finds_of(pour))) if find.quantity]
    undo(held, [*take_back(issues), *(lost_again(find) for find in finds)], reason=reason, by=by)
    Usage.objects.filter(pk__in=[row.pk for row in live]).update(is_taken_back=True)
    log_changes(record=pour, changes={"status": (pour.status, PourStatus.REVERSED)}, by=by)
    pour.status = PourStatus.REVERSED
    pour.reason = reason
    pour.needs_owner_reason = False
    save_next_version(pour)
    return pour


@transaction.atomic
def explain_pour(*, pour: Pour, reason: str, by: Person) -> Pour:
    """The owner says why what was out of the ordinary was right. Raises NothingToExplain."""
    held, _ = hold(pour)
    pour = held.pour
    if not pour.needs_owner_reason:
        raise NothingToExplain(f"Nothing that went into pour {pour.number} waits for the owner's reason.")
    before = pour.owner_reason
    add_owner_reason(pour, reason)
    pour.needs_owner_reason = False
    log_changes(record=pour, changes={"owner_reason": (before, pour.owner_reason)}, by=by)
    save_next_version(pour)
    return pour


def live_usages(pour: Pour) -> list[Usage]:
    """What this pour took and was not taken back, its left-over on other pours included. One SQL statement."""
    own = Q(pour=pour, given_by=None) | Q(given_by=pour)
    return list(Usage.objects.filter(own, is_taken_back=False).order_by("id"))


def finds_of(pour: Pour) -> list[int]:
    """The movements by which something was found for this pour."""
    finds = Movement.objects.filter(cause=pour.pk, kind=Kind.COUNTED, corrects=None)
    return list(finds.values_list("pk", flat=True))


def in_order(movements: dict[int, Standing]) -> list[Standing]:
    return [movements[key] for key in sorted(movements)]


def lost_again(find: Standing) -> Entry:
    """The count down that undoes a find."""
    return Entry(
        kind=Kind.COUNTED,
        lot=find.lot,
        place=find.place,
        quantity=-find.quantity,
        happened_at=find.happened_at,
        corrects=find.movement,
        cause=find.cause,
    )


def undo(held: Held, entries: Sequence[Entry], *, reason: str, by: Person) -> None:
    if not entries:
        return
    earliest = min(entry.happened_at for entry in entries)
    opened = open_book(earliest=earliest, lots={entry.lot for entry in entries})
    ledger.post(Kind.REVERSED, entries, book=opened, by=by, zone=held.zone, reason=reason)


def refuse_taker(pour: Pour) -> None:
    """Raise TookLeftover where what another pour had left over went into this one."""
    givers = pour.usages.filter(is_taken_back=False, given_by__isnull=False).values_list(
        "given_by_id", "given_by__number"
    )
    named = sorted(set(givers))
    if named:
        numbers = ", ".join(str(number) for _, number in named)
        raise TookLeftover(
            f"Left-over of pour {numbers} went into pour {pour.number}. Correct that pour first: say where it went.",
            remedies=[
                {"kind": "correct", "text": f"Correct pour {number}.", "call": f"/api/pours/{key}/correct/"}
                for key, number in named
            ],
        )
