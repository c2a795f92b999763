"""Whether what is planned can be had: usable at the place on the day, and not set aside for others."""

from collections.abc import Collection, Mapping, Sequence
from datetime import date, datetime

from django.db.models import Sum

from inventory.calc.allocation import is_enough, is_usable_on
from inventory.pours.choosing import Shelf, Short, lot_of, rejected
from inventory.pours.materials import Stuff, Wanted
from inventory.pours.models import Pour
from inventory.pours.reading import Held
from inventory.pours.shortages import not_enough
from inventory.rest.problems import Role
from inventory.shop.fields import to_decimal, to_whole
from inventory.shop.models import Person
from inventory.stock.book import LotFacts, open_book
from inventory.stock.models import LotStatus, Place, Reservation
from inventory.stock.problems import LotExpired, LotOnHold
from inventory.stock.reservations import SetAside, reserve

PLAN_SHORT = {
    "kind": "plan_short",
    "text": "Plan it all the same: what comes in is then kept for it.",
    "field": "allow_short",
}

OfOthers = Mapping[tuple[int, int | None], int]
"""(material, lot) -> millionths that others have set aside; lot None: of any lot."""


def shelf_on(held: Held, wanted: Sequence[Wanted], stuff: Mapping[int, Stuff], *, when: datetime) -> Shelf:
    """The lots that a plan may look to, locked, so that two who plan at once do not both set the same stock aside."""
    place = held.pour.place_id
    lots = {line.lot for line in wanted if line.lot is not None}
    book = open_book(earliest=when, lots=lots, materials={line.material for line in wanted}, place=place)
    shelf = Shelf(book=book, moment=when, day=held.day_of(when), place=place, stuff=stuff)
    for line in wanted:
        if line.lot is not None:
            lot_of(line, shelf)
    return shelf


def check_named(wanted: Sequence[Wanted], shelf: Shelf, *, by: Person) -> None:
    """Raise LotRejected, LotOnHold or LotExpired for a named lot that cannot be planned with.

    The owner may plan with a lot that is on hold or past its use-by, with a reason on the line.
    """
    for line in wanted:
        if line.lot is None:
            continue
        facts = lot_of(line, shelf)
        is_owners_word = by.role == Role.OWNER and bool(line.reason)
        if facts.status == LotStatus.REJECTED:
            raise rejected(facts, f"{line.pointer}/lot")
        if facts.status == LotStatus.ON_HOLD and not is_owners_word:
            raise unplannable(LotOnHold, facts, line, "is on hold")
        if not is_usable_on(facts.use_by, shelf.day) and not is_owners_word:
            raise unplannable(LotExpired, facts, line, f"is past its use-by of {facts.use_by} on {shelf.day}")


def unplannable(
    kind: type[LotOnHold] | type[LotExpired], facts: LotFacts, line: Wanted, why: str
) -> LotOnHold | LotExpired:
    detail = f"Lot {facts.number} ({facts.lot_number}) {why}."
    return kind(
        f"{detail} Name another lot, or none; the owner may plan with it and say why.",
        errors=[{"pointer": f"{line.pointer}/lot", "detail": detail}],
        lot=facts.id,
        remedies=[
            {"kind": "other_lot", "text": "Name another lot, or none: then one is chosen."},
            {"kind": "owner_reason", "text": "The owner plans with it, with a reason beside it.", "field": "reason"},
        ],
    )


def check_amounts(wanted: Sequence[Wanted], shelf: Shelf, *, but: int) -> None:
    """Raise NotEnoughStock for what is neither usable at the place nor free of what others have set aside.

    but: the pour that is planned. Two SQL statements at most.
    """
    others = set_aside_by_others({line.material for line in wanted}, place=shelf.place, but=but)
    short = lacking(wanted, shelf, others)
    if short:
        refusal = not_enough(short, shelf)
        refusal.remedies = [*refusal.remedies, dict(PLAN_SHORT)]
        raise refusal


def lacking(wanted: Sequence[Wanted], shelf: Shelf, others: OfOthers) -> list[Short]:
    """Every amount that is short, named lots first."""
    free = Free(shelf, others)
    named_first = sorted(wanted, key=lambda line: (line.lot is None, line.position))
    short = []
    for line in named_first:
        there = free.named(line) if line.lot is not None else free.of_any(line)
        if not is_enough(there, wanted=line.quantity):
            short.append(Short(line, max(there, 0)))
    return short


class Free:
    """What a plan may still set aside, line by line, in millionths."""

    def __init__(self, shelf: Shelf, others: OfOthers) -> None:
        self.shelf, self.others = shelf, others
        self.usable = {key for key, facts in shelf.book.lots.items() if shelf.is_offered(facts)}
        self.lots = {key: here(shelf, key, shelf.place) for key in shelf.book.lots}
        self.materials: dict[int, int] = {}
        for key in self.usable:
            self.add(shelf.book.lots[key].material, self.lots[key])
        for (material, lot), quantity in others.items():
            if lot is None or lot in self.usable:
                self.add(material, -quantity)

    def add(self, material: int, quantity: int) -> None:
        self.materials[material] = self.materials.get(material, 0) + quantity

    def named(self, line: Wanted) -> int:
        """What the named lot can give this line, which then has it."""
        assert line.lot is not None
        if line.place not in (None, self.shelf.place):
            return here(self.shelf, line.lot, line.place)
        there = self.lots[line.lot] - self.others.get((line.material, line.lot), 0)
        self.lots[line.lot] -= line.quantity
        if line.lot in self.usable:
            self.add(line.material, -line.quantity)
        return there

    def of_any(self, line: Wanted) -> int:
        """What the usable lots together can give this line, which then has it."""
        there = self.materials.get(line.material, 0)
        self.add(line.material, -line.quantity)
        return there


def here(shelf: Shelf, lot: int, place: int | None) -> int:
    """What lies at a place of a lot now, in millionths."""
    holding = shelf.book.holdings.get((lot, place or shelf.place))
    return holding.quantity if holding else 0


def set_aside_by_others(materials: Collection[int], *, place: int, but: int) -> dict[tuple[int, int | None], int]:
    """What pours other than this one have set aside at a place. One SQL statement."""
    rows = (
        Reservation.objects.filter(material__in=materials, place=place)
        .exclude(cause=but)
        .order_by()
        .values_list("material_id", "lot_id")
        .annotate(whole=Sum("quantity"))
    )
    return {(material, lot): to_whole(whole, 6) for material, lot, whole in rows}


def set_aside(pour: Pour, wanted: Sequence[Wanted], *, job: int | None, needed_on: date | None) -> None:
    """Reserve what is wanted, summed by material, lot and place; what lacks too."""
    sums: dict[int, dict[tuple[int, int | None], int]] = {}
    for line in wanted:
        at_place = sums.setdefault(line.place or pour.place_id, {})
        key = line.material, line.lot
        at_place[key] = at_place.get(key, 0) + line.quantity
    places = {pour.place_id: pour.place, **Place.objects.in_bulk(set(sums) - {pour.place_id})}
    for place, of_place in sums.items():
        wants = [SetAside(material, to_decimal(quantity, 6), lot) for (material, lot), quantity in of_place.items()]
        reserve(wants=wants, place=places[place], cause=pour.pk, needed_on=needed_on, job_key=job)
