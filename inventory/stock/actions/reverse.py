"""Undone, entry mistake: a posting of the shelf is taken back."""

from typing import Any

from django.db import transaction

from inventory.calc.bookkeeping import Entry, Worth
from inventory.shop.clock import shop_zone
from inventory.shop.models import Person
from inventory.stock import ledger
from inventory.stock.actions.blends import undo_blend
from inventory.stock.actions.counts import undo_count
from inventory.stock.actions.openings import undo_opening
from inventory.stock.book import Book, open_book
from inventory.stock.corrections import Standing, standing, take_back
from inventory.stock.models import Blend, Emptied, Kind, Lot, Movement, Place, Posting, StockCount
from inventory.stock.problems import AlreadyUndone, NotEnoughStock, NotUndoneHere, NotWhole

TAKEN_BACK = {Kind.WRITTEN_OFF.value, Kind.RETURNED.value, Kind.GIVEN.value}
ELSEWHERE = {
    Kind.RECEIVED.value: "Undo the delivery that it belongs to.",
    Kind.CHARGED.value: "Book the opposite charge or price with the delivery.",
    Kind.USED.value: "Undo or correct the pour that it belongs to.",
    Kind.WASTED.value: "Undo or correct the pour that it belongs to.",
    Kind.REVERSED.value: "What was undone is entered anew.",
}


@transaction.atomic
def reverse_posting(*, posting: Posting, reason: str, by: Person) -> int:
    """Take back what the shelf posted: a write-off, return, gift, empty pail, move, opening, mix or count.

    What left comes back with its money as it stands now; a move goes back at what it is worth now. Returns the new
    posting's id. Raises AlreadyUndone, NotWhole with what to undo first, NotUndoneHere for what belongs elsewhere.
    """
    is_empty_pail = posting.kind in (Kind.WASTED, Kind.WRITTEN_OFF) and Emptied.objects.filter(posting=posting).exists()
    if posting.kind in TAKEN_BACK or is_empty_pail:
        return _take_back(posting, reason=reason, by=by)
    if posting.kind == Kind.MOVED:
        return _move_back(posting, reason=reason, by=by)
    if posting.kind == Kind.COUNTED:
        count = StockCount.objects.filter(posting=posting).first()
        if count is None:
            raise NotUndoneHere("This count belongs to a pour. Undo or correct the pour.", posting=posting.pk)
        return undo_count(count=count, reason=reason, by=by).undone_by_id or 0
    if posting.kind == Kind.BLENDED:
        return undo_blend(blend=Blend.objects.get(posting=posting), reason=reason, by=by).undone_by_id or 0
    if posting.kind == Kind.OPENED:
        opened = Movement.objects.filter(posting=posting, into_lot__isnull=False).values_list("into_lot", flat=True)
        undo_opening(lot=Lot.objects.get(pk=opened[0]), reason=reason, by=by)
        undone = Movement.objects.filter(into_lot=opened[0], corrects__isnull=False, quantity__gt=0)
        return undone.values_list("posting_id", flat=True).order_by("-id")[0]
    raise NotUndoneHere(ELSEWHERE[posting.kind], posting=posting.pk, kind=posting.kind)


def _issues_of(posting: Posting) -> tuple[list[Standing], Book]:
    """What the posting's own lines still stand for, in order, with the book open over their lots.

    Counted lines beside them only keep a count true; they get their opposite when these are taken back.
    """
    rows = list(Movement.objects.filter(posting=posting, kind=posting.kind).order_by("id"))
    book = open_book(earliest=min(row.happened_at for row in rows), lots={row.lot_id for row in rows})
    issues = standing([row.pk for row in rows])
    if not any(issue.quantity for issue in issues.values()):
        raise AlreadyUndone("This was undone before; nothing of it stands any more.", posting=posting.pk)
    return [issues[key] for key in sorted(issues)], book


def _take_back(posting: Posting, *, reason: str, by: Person) -> int:
    issues, book = _issues_of(posting)
    entries = take_back([issue for issue in issues if issue.quantity])
    return ledger.post(Kind.REVERSED, entries, book=book, by=by, zone=shop_zone(), reason=reason).id


def _move_back(posting: Posting, *, reason: str, by: Person) -> int:
    issues, book = _issues_of(posting)
    entries = []
    for bundle, (out, into) in enumerate(zip(issues[::2], issues[1::2], strict=True)):
        entries += [_back(into, Worth.IN_PROPORTION, bundle), _back(out, Worth.CARRIED, bundle)]
    try:
        return ledger.post(Kind.REVERSED, entries, book=book, by=by, zone=shop_zone(), reason=reason).id
    except NotEnoughStock as short:
        lot, place = book.lots[short.extra["lot"]], Place.objects.get(pk=short.extra["place"])
        since = Movement.objects.filter(lot=lot.id, place=place, quantity__lt=0, posting__gt=posting.pk)
        first = [step_of(row) for row in since.order_by("-id")[:50]]
        raise NotWhole(
            f"Some of what was moved has left {place} since: {short.extra['missing']} of lot {lot.number} are gone.",
            first=first,
            missing=short.extra["missing"],
            remedies=[{"kind": "undo_first", "text": "Undo what took it, or move back what is left."}],
        ) from short


def step_of(row: Movement) -> dict[str, Any]:
    at = row.happened_at.isoformat()
    return {"posting": row.posting_id, "kind": row.kind, "cause": row.cause, "happened_at": at}


def _back(moved: Standing, worth: Worth, bundle: int) -> Entry:
    return Entry(
        kind=Kind.MOVED,
        lot=moved.lot,
        place=moved.place,
        quantity=-moved.quantity,
        happened_at=moved.happened_at,
        value=worth,
        bundle=bundle,
        corrects=moved.movement,
    )
