"""From what happened to the ledger: lots are locked, chosen and posted, and what went in is kept beside the pour."""

from collections.abc import Collection, Mapping, Sequence
from copy import deepcopy
from dataclasses import dataclass, replace
from datetime import datetime

from inventory.calc.bookkeeping import Entry, Worth, settle
from inventory.pours.choosing import Shelf, Taking, choose, split_leftover
from inventory.pours.entered import Found, Leftover
from inventory.pours.leftovers import parts_left
from inventory.pours.materials import Stuff, Wanted, in_stock_unit, read_stuff
from inventory.pours.models import Pour, Usage
from inventory.pours.reading import LOT, Held, used_by_jobs
from inventory.pours.shortages import not_enough
from inventory.rest.problems import Role
from inventory.shop.fields import to_decimal
from inventory.shop.models import Person
from inventory.shop.problems import bad_field
from inventory.shop.rows import Columns, insert_records
from inventory.stock import ledger
from inventory.stock.bars import status_at
from inventory.stock.book import Book, open_book
from inventory.stock.models import Kind, LotStatus, Movement, Place

MOVEMENT = Columns(Movement, "m", "id", "value")


@dataclass(frozen=True, slots=True, kw_only=True)
class Happening:
    """What is to be booked for a pour at one moment.

    jobs: of its pieces. take_back: entries that undo what was booked before, posted first in the same act.
    """

    held: Held
    moment: datetime
    jobs: Collection[int]
    wanted: Sequence[Wanted]
    stuff: Mapping[int, Stuff]
    leftover: Leftover | None = None
    found: Sequence[Found] = ()
    take_back: Sequence[Entry] = ()
    reason: str = ""

    @property
    def why(self) -> str:
        """The reasons that go with the posting: of the act, and of what was found."""
        return " ".join(dict.fromkeys(part for part in (self.reason, *(find.reason for find in self.found)) if part))


def book(happening: Happening, *, by: Person) -> list[Usage]:
    """Post it and keep what went in: everything or nothing. Returns the new usages, this pour's own first.

    The lots are locked here. Raises NotEnoughStock with every amount that is short, WrongLot, LotRejected,
    UsedBeforeReceived, LeftoverTooLarge, UnitMismatch, BadBody.
    """
    pour = happening.held.pour
    opened = open_for(happening)
    finds = found_entries(happening, opened)
    before = [*happening.take_back, *finds]
    shelf = shelf_for(happening, after(opened, before))
    takings, short = choose(happening.wanted, shelf)
    if short:
        raise not_enough(short, shelf)
    if happening.leftover is not None and happening.leftover.quantity.amount:
        parts = parts_left(happening.leftover, takings, happening.stuff)
        takings = split_leftover(takings, parts, given_to=happening.leftover.went_to)
    entries = [*before, *(entry_of(taking, pour, happening.moment) for taking in takings)]
    if not entries:
        return []
    posted = ledger.post(Kind.USED, entries, book=opened, by=by, zone=happening.held.zone, reason=happening.why)
    return keep_usages(happening, takings, posted, shelf, first=len(before))


def open_for(happening: Happening) -> Book:
    """The book over every lot that is named, undone or found, and all that the tool may choose from at the place."""
    lots = {line.lot for line in happening.wanted if line.lot is not None}
    lots |= {find.lot for find in happening.found} | {entry.lot for entry in happening.take_back}
    materials = {line.material for line in happening.wanted if line.lot is None}
    earliest = min([happening.moment, *(entry.happened_at for entry in happening.take_back)])
    return open_book(earliest=earliest, lots=lots, materials=materials, place=happening.held.pour.place_id)


def found_entries(happening: Happening, opened: Book) -> list[Entry]:
    """Counts up, at the moment of the pour and at its place, worth the lot's unit cost."""
    entries = []
    missing = {opened.lots[find.lot].material for find in happening.found if find.lot in opened.lots}
    stuff = {**happening.stuff, **read_stuff(missing - set(happening.stuff))} if missing else happening.stuff
    for index, find in enumerate(happening.found):
        facts = opened.lots.get(find.lot)
        if facts is None:
            raise bad_field(f"/found/{index}/lot", "There is no lot with this id.")
        if facts.received_at > happening.moment:
            raise bad_field(f"/found/{index}/lot", f"This lot came in on {facts.received_on}, after the pour.")
        entries.append(
            Entry(
                kind=Kind.COUNTED,
                lot=find.lot,
                place=happening.held.pour.place_id,
                quantity=in_stock_unit(find.quantity, stuff[facts.material], pointer=f"/found/{index}/quantity"),
                happened_at=happening.moment,
                value=Worth.UNIT_COST,
                cause=happening.held.pour.pk,
            )
        )
    return entries


def after(opened: Book, entries: Sequence[Entry]) -> Book:
    """The book as it will stand once these entries are posted; the opened one is left as it is."""
    if not entries:
        return opened
    seen = replace(opened, holdings=deepcopy(opened.holdings))
    for entry in entries:
        seen.holding(entry.lot, entry.place)
    settle(entries, seen.holdings, lot_cost=lambda _lot: (0, 0))  # only quantities are looked at
    return seen


def shelf_for(happening: Happening, seen: Book) -> Shelf:
    pour = happening.held.pour
    one_lot = {key for key, stuff in happening.stuff.items() if stuff.record.single_lot_per_job}
    lots, needs = used_by_jobs(happening.jobs, one_lot, but=pour.pk)
    return Shelf(
        book=seen,
        moment=happening.moment,
        day=happening.held.day_of(happening.moment),
        place=pour.place_id,
        stuff=happening.stuff,
        status_then=status_at(seen.lots, happening.moment),
        job_lots=lots,
        job_needs=needs,
    )


def entry_of(taking: Taking, pour: Pour, moment: datetime) -> Entry:
    return Entry(
        kind=Kind.WASTED if taking.is_waste else Kind.USED,
        lot=taking.lot,
        place=taking.place,
        quantity=-taking.quantity,
        happened_at=moment,
        cause=taking.given_to or pour.pk,
    )


def keep_usages(
    happening: Happening, takings: Sequence[Taking], posted: ledger.Posted, shelf: Shelf, *, first: int
) -> list[Usage]:
    """Write what went in, each row beside its movement, in one statement. Returns this pour's own rows."""
    pour = happening.held.pour
    lines = {
        line.entry: (movement, line)
        for movement, line in zip(posted.movements, posted.lines, strict=True)
        if not line.keeps_count
    }
    places = {pour.place_id: pour.place}
    elsewhere = {taking.place for taking in takings} - set(places)
    if elsewhere:
        places |= Place.objects.in_bulk(elsewhere)
    rows = []
    for index, taking in enumerate(takings, start=first):
        movement, line = lines[index]
        facts = shelf.book.lots[taking.lot]
        stuff = happening.stuff[taking.wanted.material]
        rows.append(
            Usage(
                pour_id=taking.given_to or pour.pk,
                given_by=pour if taking.given_to else None,
                position=taking.wanted.position,
                material=stuff.record,
                lot=LOT.record([facts.id, facts.number, facts.lot_number]),
                place=places[taking.place],
                movement=MOVEMENT.record([movement, line.value]),
                quantity=to_decimal(taking.quantity, 6),
                typed_amount=taking.wanted.typed_amount,
                typed_unit=taking.wanted.typed_unit,
                weighed_before=taking.wanted.weighed_before,
                weighed_after=taking.wanted.weighed_after,
                density_g_per_ml=stuff.record.density_g_per_ml,
                grams_per_tsp=stuff.record.grams_per_tsp,
                bucket=taking.wanted.bucket,
                is_waste=taking.is_waste,
                reason=taking.reason,
                provenance=taking.wanted.provenance,
                lot_provenance=taking.wanted.lot_provenance,
                lot_status=taking.lot_status,
                was_expired=taking.was_expired,
            )
        )
    insert_records(rows)
    return [row for row in rows if row.given_by is None]


def waits_for_owner(usages: Sequence[Usage], *, by: Person) -> bool:
    """Whether something expired or on hold went in without the owner's own reason beside it."""
    return any(
        (row.was_expired or row.lot_status != LotStatus.USABLE) and not (by.role == Role.OWNER and row.reason)
        for row in usages
    )


def owners_words(usages: Sequence[Usage], *, by: Person) -> str:
    """What the owner said, on the rows themselves, of what was out of the ordinary."""
    if by.role != Role.OWNER:
        return ""
    said = [row.reason for row in usages if (row.was_expired or row.lot_status != LotStatus.USABLE) and row.reason]
    return " ".join(dict.fromkeys(said))
