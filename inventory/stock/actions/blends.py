"""House mixes: a lot made from lots, a jug filled or topped up from a pail."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from django.db import connection, transaction

from inventory.calc.bookkeeping import Entry, Worth
from inventory.catalog.models import Material, MaterialKind
from inventory.rest.problems import Role
from inventory.shop.clock import shop_day, shop_zone
from inventory.shop.fields import to_whole
from inventory.shop.models import Person
from inventory.shop.numbers import next_number
from inventory.shop.problems import bad_field
from inventory.stock import ledger
from inventory.stock.actions.openings import take_out_whole
from inventory.stock.bars import InForce, bars_on, events_for, inherited, status_of
from inventory.stock.book import Book, marks, open_book
from inventory.stock.corrections import standing, take_back
from inventory.stock.models import Basis, Blend, Kind, Lot, LotStatus, Movement, Origin, Place, StatusEvent
from inventory.stock.places import refuse_archived_place
from inventory.stock.problems import AlreadyUndone, DoesNotMix, LotExpired, LotOnHold, LotRejected
from inventory.stock.queries import default_place
from inventory.stock.taking import Part, moment_of, parts_taken


@dataclass(frozen=True, slots=True)
class Input:
    """So much of a lot, in its material's stock unit; None for all that is left. place: the mix's own, where None."""

    lot: Lot
    quantity: Decimal | None
    place: Place | None = None


@transaction.atomic
def blend(
    *,
    material: Material,
    inputs: Sequence[Input],
    quantity: Decimal | None = None,
    lot_number: str | None = None,
    made_at: datetime | None = None,
    place: Place | None = None,
    reason: str = "",
    by: Person,
) -> Blend:
    """Make a lot from lots: a house colour, a bottle filled from a pail, a bottle topped up.

    quantity: what was made, in the material's stock unit; may be left out where all goes in by that unit: then the sum.
    The mix costs what went in, is good until the earliest use-by of its inputs, and takes over their bars. Resin with
    hardener is refused, at any depth. An expired, held or rejected input takes the owner, with a reason.
    Undone by `undo_blend` while whole.
    Raises DoesNotMix, LotExpired, LotOnHold, LotRejected, NotEnoughStock, UsedBeforeReceived, InTheFuture, BadBody.
    """
    place = place or default_place()
    refuse_archived_place(place)
    at = moment_of(made_at)
    names = [taken.lot.pk for taken in inputs]
    if len(set(names)) < len(names):
        raise bad_field("/inputs", "A lot stands there twice. Name it once, with all that went in.")
    book = open_book(earliest=at, lots=names)
    inputs = [Input(lot, taken.quantity, taken.place) for taken, lot in zip(inputs, _fresh(names), strict=True)]
    bars = bars_on(names)
    refuse_hardening(material, names)
    refuse_doubtful(inputs, bars, at=at, reason=reason, by=by)
    parts = [
        (taken.lot, part)
        for index, taken in enumerate(inputs)
        for part in parts_taken(
            book, taken.lot, quantity=taken.quantity, place=taken.place or place, at=at, pointer=f"/inputs/{index}/lot"
        )
    ]
    made = to_whole(quantity, 6) if quantity is not None else _sum_of(parts, material)
    lot = _new_lot(material, [taken.lot for taken in inputs], lot_number, at)
    _take_over(lot, bars, at=at, by=by)
    book.add_new([lot])
    entries = [
        Entry(
            kind=Kind.BLENDED,
            lot=source.pk,
            place=part.place,
            quantity=-part.quantity,
            happened_at=at,
            bundle=0,
            into_lot=lot.pk,
        )
        for source, part in parts
    ]
    entries.append(
        Entry(
            kind=Kind.BLENDED, lot=lot.pk, place=place.pk, quantity=made, happened_at=at, value=Worth.CARRIED, bundle=0
        )
    )
    posted = ledger.post(Kind.BLENDED, entries, book=book, by=by, zone=shop_zone(), reason=reason)
    return Blend.objects.create(number=next_number("blend"), lot=lot, made_at=at, posting_id=posted.id, by=by)


def _fresh(lots: Sequence[int]) -> list[Lot]:
    found = Lot.objects.select_related("material").in_bulk(lots)
    return [found[lot] for lot in lots]


def _sum_of(parts: Sequence[tuple[Lot, Part]], material: Material) -> int:
    if any(lot.material.stock_unit != material.stock_unit for lot, _ in parts):
        raise bad_field("/quantity", f"The parts are kept in different units. Say how much {material.name} it made.")
    return sum(part.quantity for _, part in parts)


def _new_lot(material: Material, sources: Sequence[Lot], lot_number: str | None, at: datetime) -> Lot:
    use_bys = [lot.use_by for lot in sources if lot.use_by is not None]
    number = next_number("lot")
    day = shop_day(at)
    not_paid = [lot.basis for lot in sources if lot.basis != Basis.PAID]
    lot = Lot.objects.create(
        number=number,
        material=material,
        lot_number=lot_number or f"own-{number}",
        is_own_number=not lot_number,
        origin=Origin.BLEND,
        received_on=day,
        received_at=at,
        made_on=day,
        expires_on=min(use_bys, default=None),
        use_by=min(use_bys, default=None),
        basis=not_paid[0] if not_paid else Basis.PAID,
        is_provisional=any(source.is_provisional for source in sources),
    )
    Material.objects.filter(pk=material.pk, is_in_use=False).update(is_in_use=True)
    return lot


def _take_over(lot: Lot, bars: dict[int, dict[tuple[int, bool], InForce]], *, at: datetime, by: Person) -> None:
    every = {bar: force for of_lot in bars.values() for bar, force in of_lot.items()}
    if not every:
        return
    StatusEvent.objects.bulk_create(events_for(lot, inherited(every.values(), since=at), by=by))
    lot.status = status_of(every.values())
    lot.save(update_fields=["status"])


def refuse_hardening(material: Material, lots: Collection[int]) -> None:
    """Raise DoesNotMix where resin would come together with hardener, through whatever was mixed before. One SQL."""
    with connection.cursor() as cursor:
        cursor.execute(
            f"WITH RECURSIVE behind (lot) AS (SELECT id FROM stock_lot WHERE id IN ({marks(lots)}) "
            "UNION SELECT m.lot_id FROM behind JOIN stock_movement m ON m.into_lot_id = behind.lot) "
            "SELECT DISTINCT c.kind FROM behind JOIN stock_lot l ON l.id = behind.lot "
            "JOIN catalog_material c ON c.id = l.material_id",
            list(lots),
        )
        kinds = {row[0] for row in cursor.fetchall()} | {material.kind}
    if {MaterialKind.RESIN, MaterialKind.HARDENER} <= kinds:
        raise DoesNotMix(
            "Resin and hardener would cure together: that is a pour, and no lot. Keep them apart until you pour."
        )


def refuse_doubtful(
    inputs: Sequence[Input],
    bars: dict[int, dict[tuple[int, bool], InForce]],
    *,
    at: datetime,
    reason: str,
    by: Person,
) -> None:
    """Raise for an expired, held or rejected input, unless the owner mixes it and says why."""
    if reason.strip() and Role(by.role).covers(Role.OWNER):
        return
    day = shop_day(at)
    for taken in inputs:
        lot = taken.lot
        status = status_of(bars[lot.pk].values())
        told = "Name another lot; or the owner mixes it, with a reason."
        remedies = [{"kind": "other_lot", "text": "Name another lot."}, {"kind": "owner_reason", "text": told}]
        if status == LotStatus.REJECTED:
            raise LotRejected(f"Lot {lot.number} was rejected. {told}", lot=lot.pk, remedies=remedies)
        if status == LotStatus.ON_HOLD:
            raise LotOnHold(f"Lot {lot.number} is on hold. {told}", lot=lot.pk, remedies=remedies)
        if lot.use_by is not None and lot.use_by < day:
            raise LotExpired(f"Lot {lot.number} was good until {lot.use_by}. {told}", lot=lot.pk, remedies=remedies)


@transaction.atomic
def undo_blend(*, blend: Blend, reason: str, by: Person) -> Blend:
    """Take a house mix apart again: an entry mistake. Everything goes back to where it was taken, with its money.

    Raises NotWhole once something has been taken from the mix, AlreadyUndone.
    """
    sources = set(Movement.objects.filter(into_lot=blend.lot_id).values_list("lot_id", flat=True))
    book: Book = open_book(earliest=blend.made_at, lots=sources | {blend.lot_id})
    blend = Blend.objects.select_related("lot__material").get(pk=blend.pk)
    if blend.undone_by_id is not None:
        raise AlreadyUndone(f"House mix {blend.number} was undone before.")
    moved = list(Movement.objects.filter(posting=blend.posting_id, kind=Kind.BLENDED).order_by("id"))
    came_in = next(line for line in moved if line.into_lot_id is None)
    gone_in = standing([line.pk for line in moved if line.into_lot_id is not None])
    entries = [take_out_whole(blend.lot, came_in, book=book), *take_back([gone_in[key] for key in sorted(gone_in)])]
    posted = ledger.post(Kind.REVERSED, entries, book=book, by=by, zone=shop_zone(), reason=reason)
    blend.undone_by_id = posted.id
    blend.save(update_fields=["undone_by"])
    return blend
