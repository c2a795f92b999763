"""What completing a planned pour as planned would take, and what it lacks: for the screen that asks to confirm it."""

from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal
from typing import Any

from django.db.models import Q
from django.utils import timezone

from inventory.calc.bookkeeping import Holding
from inventory.pours.choosing import Shelf, Taking, choose
from inventory.pours.materials import planned_again, read_stuff
from inventory.pours.models import Pour
from inventory.pours.reading import jobs_of, pieces_under, planned_of, used_by_jobs
from inventory.pours.shortages import row_of
from inventory.rest.problems import Problem
from inventory.shop.clock import shop_day
from inventory.shop.fields import to_decimal, to_whole
from inventory.stock.bars import status_at
from inventory.stock.book import Book, LotFacts
from inventory.stock.models import Balance

FACTS = (
    "lot_id",
    "lot__number",
    "lot__lot_number",
    "lot__material_id",
    "lot__status",
    "lot__use_by",
    "lot__received_on",
    "lot__received_at",
    "lot__opened_on",
    "lot__origin",
)


@dataclass(frozen=True, slots=True)
class Proposed:
    """One lot that would be taken from. quantity: in the material's stock unit."""

    position: int
    material: int
    material_name: str
    lot: int
    number: int
    lot_number: str
    use_by: date | None
    place: int
    quantity: Decimal
    unit: str
    lot_status: str
    was_expired: bool


@dataclass(frozen=True, slots=True)
class Proposal:
    """takings: from which lots. shortages: what is not there. problem: why a named lot cannot go in, or empty."""

    takings: list[Proposed]
    shortages: list[dict[str, Any]]
    problem: str = ""


def propose(pour: Pour) -> Proposal:
    """What a planned pour would take at its time, or now where that has passed. Locks nothing. Seven SQL statements."""
    now = timezone.now()
    moment = pour.planned_for if pour.planned_for is not None and pour.planned_for > now else now
    shelf = shelf_seen(pour, moment)
    try:
        takings, short = choose(planned_again(planned_of(pour)), shelf)
    except Problem as refusal:
        return Proposal([], [], refusal.detail)
    return Proposal(
        [proposed(taking, shelf) for taking in takings],
        [row_of(lack, shelf.stuff[lack.wanted.material]) for lack in short],
    )


def proposed(taking: Taking, shelf: Shelf) -> Proposed:
    facts, material = shelf.book.lots[taking.lot], shelf.stuff[taking.wanted.material].record
    return Proposed(
        position=taking.wanted.position,
        material=material.pk,
        material_name=material.name,
        lot=facts.id,
        number=facts.number,
        lot_number=facts.lot_number,
        use_by=facts.use_by,
        place=taking.place,
        quantity=to_decimal(taking.quantity, 6),
        unit=material.stock_unit,
        lot_status=taking.lot_status,
        was_expired=taking.was_expired,
    )


def shelf_seen(pour: Pour, moment: datetime) -> Shelf:
    """The lots as they lie now, without a lock."""
    planned = planned_of(pour)
    stuff = read_stuff([line.material_id for line in planned])
    named = [line.lot_id for line in planned if line.lot_id is not None]
    book = Book(earliest=moment)
    at_place = Q(place=pour.place_id, lot__material__in=list(stuff), quantity__gt=0)
    for place, quantity, *facts in (
        Balance.objects.filter(at_place | Q(lot__in=named)).order_by("lot").values_list("place_id", "quantity", *FACTS)
    ):
        lot = LotFacts._make(facts)
        book.lots[lot.id] = lot
        book.holdings[lot.id, place] = Holding(quantity=to_whole(quantity, 6))
    one_lot = {key for key, material in stuff.items() if material.record.single_lot_per_job}
    lots, needs = used_by_jobs(jobs_of(pieces_under(pour)), one_lot, but=pour.pk)
    return Shelf(
        book=book,
        moment=moment,
        day=shop_day(moment),
        place=pour.place_id,
        stuff=stuff,
        status_then=status_at(book.lots, moment),
        job_lots=lots,
        job_needs=needs,
    )
