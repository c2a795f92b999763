"""From which lots a pour takes what was entered, by what the opened book says.

Nothing is written here and nothing read: a book, what is wanted, and out come the takings and what is short.
"""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime

from inventory.calc.allocation import Candidate, choose_lots, is_enough, is_usable_on, taken_from
from inventory.pours.materials import Stuff, Wanted
from inventory.pours.problems import WrongLot
from inventory.shop.problems import bad_field
from inventory.stock.book import Book, LotFacts
from inventory.stock.models import LotStatus
from inventory.stock.problems import LotRejected, UsedBeforeReceived


@dataclass(frozen=True, slots=True)
class Taking:
    """So much of an entered amount from this lot, and how the lot stood at the time of the pour.

    quantity: millionths of the stock unit, > 0. given_to: the pour that gets it as left-over; None is this pour.
    """

    wanted: Wanted
    lot: int
    place: int
    quantity: int
    lot_status: str
    was_expired: bool
    is_waste: bool
    reason: str
    given_to: int | None = None

    @property
    def is_out_of_the_ordinary(self) -> bool:
        return self.was_expired or self.lot_status != LotStatus.USABLE


@dataclass(frozen=True, slots=True)
class Short:
    """What an entered amount lacks: in millionths of the stock unit."""

    wanted: Wanted
    there: int

    @property
    def missing(self) -> int:
        return self.wanted.quantity - self.there


@dataclass(slots=True)
class Shelf:
    """The lots as this pour finds them.

    moment, day: when the pour was, and the shop's day of it. place: the pour's place.
    status_then: lot -> status at that moment.
    job_lots: lots that the pour's jobs used before. job_needs: material -> what those jobs have set aside beyond this.
    """

    book: Book
    moment: datetime
    day: date
    place: int
    stuff: Mapping[int, Stuff]
    status_then: Mapping[int, str] = field(default_factory=dict)
    job_lots: Collection[int] = ()
    job_needs: Mapping[int, int] = field(default_factory=dict)
    taken: dict[tuple[int, int], int] = field(default_factory=dict)

    def left(self, lot: int, place: int) -> int:
        """What can still leave the lot at this place at that moment, after what this pour has taken so far."""
        return self.book.takeable(lot, place, self.moment) - self.taken.get((lot, place), 0)

    def status(self, facts: LotFacts) -> str:
        """How the lot stood at the moment of the pour."""
        return self.status_then.get(facts.id, facts.status)

    def is_offered(self, facts: LotFacts) -> bool:
        """Whether the tool may choose it: usable then and now, not expired on the day, there at the moment."""
        return (
            facts.is_usable
            and self.status(facts) == LotStatus.USABLE
            and is_usable_on(facts.use_by, self.day)
            and facts.received_at <= self.moment
        )

    def take(self, wanted: Wanted, lot: int, place: int, quantity: int) -> Taking:
        self.taken[lot, place] = self.taken.get((lot, place), 0) + quantity
        facts = self.book.lots[lot]
        return Taking(
            wanted=wanted,
            lot=lot,
            place=place,
            quantity=quantity,
            lot_status=self.status(facts),
            was_expired=not is_usable_on(facts.use_by, self.day),
            is_waste=wanted.is_waste,
            reason=wanted.reason,
        )


def choose(wanted: Sequence[Wanted], shelf: Shelf) -> tuple[list[Taking], list[Short]]:
    """The takings, in the order in which the amounts were entered, and every amount that is short.

    Named lots are honoured first, so that the tool does not choose away what somebody named.
    Raises WrongLot, LotRejected, UsedBeforeReceived, BadBody for a lot that is none.
    """
    takings: dict[int, list[Taking]] = {}
    short: list[Short] = []
    for line in wanted:
        if line.lot is not None:
            found = take_named(line, shelf)
            takings[line.position], lacking = found
            short += lacking
    for line in wanted:
        if line.lot is None:
            takings[line.position], lacking = take_chosen(line, wanted, shelf)
            short += lacking
    return [taking for line in wanted for taking in takings[line.position]], short


def take_named(line: Wanted, shelf: Shelf) -> tuple[list[Taking], list[Short]]:
    assert line.lot is not None
    facts = named_lot(line, shelf)
    place = line.place or shelf.place
    there = shelf.left(facts.id, place)
    short = [] if is_enough(there, wanted=line.quantity) else [Short(line, max(there, 0))]
    quantity = taken_from(there, wanted=line.quantity)
    return ([shelf.take(line, facts.id, place, quantity)] if quantity > 0 else []), short


def named_lot(line: Wanted, shelf: Shelf) -> LotFacts:
    """The lot that the line names, where it may be recorded that it was used then."""
    facts = lot_of(line, shelf)
    where = f"{line.pointer}/lot"
    if facts.received_at > shelf.moment:
        raise used_too_early(facts, where)
    if shelf.status(facts) == LotStatus.REJECTED:
        raise rejected(facts, where)
    return facts


def lot_of(line: Wanted, shelf: Shelf) -> LotFacts:
    """The lot that the line names. Raises BadBody where there is none, WrongLot where it is of another material."""
    facts = shelf.book.lots.get(line.lot or 0)
    where = f"{line.pointer}/lot"
    if facts is None:
        raise bad_field(where, "There is no lot with this id.")
    if facts.material != line.material:
        name = shelf.stuff[line.material].record.name
        raise WrongLot(
            f"Lot {facts.number} ({facts.lot_number}) is not {name}. Name one of its own lots, or none.",
            errors=[{"pointer": where, "detail": f"This lot is not {name}."}],
        )
    return facts


def take_chosen(line: Wanted, all_wanted: Sequence[Wanted], shelf: Shelf) -> tuple[list[Taking], list[Short]]:
    material = shelf.stuff[line.material].record
    earlier_here = {lot for lot, _ in shelf.taken}
    candidates = [
        Candidate(
            lot=facts.id,
            takeable=shelf.left(facts.id, shelf.place),
            use_by=facts.use_by,
            received_on=facts.received_on,
            is_open=facts.opened_on is not None,
            is_used_by_job=facts.id in shelf.job_lots or facts.id in earlier_here,
        )
        for facts in shelf.book.lots.values()
        if facts.material == line.material and shelf.is_offered(facts)
    ]
    this_and_later = sum(
        other.quantity
        for other in all_wanted
        if other.material == line.material and other.lot is None and other.position >= line.position
    )
    choice = choose_lots(
        candidates,
        wanted=line.quantity,
        keeps_to_one_lot=material.single_lot_per_job,
        whole_job_needs=this_and_later + shelf.job_needs.get(line.material, 0),
    )
    takings = [shelf.take(line, pick.lot, shelf.place, pick.quantity) for pick in choice.picks]
    return takings, [Short(line, line.quantity - choice.missing)] if choice.missing else []


def split_leftover(takings: Sequence[Taking], parts: Mapping[int, int], *, given_to: int | None) -> list[Taking]:
    """The takings with what was left over split off as rows of their own.

    parts: index of a taking -> what is left of it, in millionths. given_to: the pour that got it; None is the bin.
    """
    rows: list[Taking] = []
    for index, taking in enumerate(takings):
        left = parts.get(index, 0)
        if left < taking.quantity:
            rows.append(replace(taking, quantity=taking.quantity - left))
        if left:
            is_binned = given_to is None
            reason = "Left over" if is_binned else taking.reason
            rows.append(replace(taking, quantity=left, given_to=given_to, is_waste=is_binned, reason=reason))
    return rows


def used_too_early(facts: LotFacts, pointer: str) -> UsedBeforeReceived:
    detail = f"Lot {facts.number} ({facts.lot_number}) came in on {facts.received_on}, after the pour."
    return UsedBeforeReceived(
        f"{detail} Mend the time of the pour, or name another lot.",
        errors=[{"pointer": pointer, "detail": detail}],
        lot=facts.id,
        received_on=facts.received_on.isoformat(),
        remedies=[
            {"kind": "other_lot", "text": "Name a lot that was there, or none."},
            {"kind": "change_time", "text": "Mend the time of the pour, if it is wrong.", "field": "poured_at"},
        ],
    )


def rejected(facts: LotFacts, pointer: str) -> LotRejected:
    detail = f"Lot {facts.number} ({facts.lot_number}) was rejected before the pour."
    return LotRejected(
        f"{detail} Name another lot, or let the owner say that it is OK again.",
        errors=[{"pointer": pointer, "detail": detail}],
        lot=facts.id,
        remedies=[
            {"kind": "other_lot", "text": "Name the lot that really went in, or none."},
            {
                "kind": "release",
                "text": "The owner says that it is OK again.",
                "call": f"/api/lots/{facts.id}/release/",
            },
            {"kind": "change_time", "text": "Mend the time of the pour, if it is wrong.", "field": "poured_at"},
        ],
    )
