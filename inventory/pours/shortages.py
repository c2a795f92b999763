"""What to say where a pour lacks something: what is short, by how much, and what would help."""

from collections.abc import Sequence
from typing import Any

from django.db.models import F

from inventory.calc.allocation import is_usable_on
from inventory.pours.choosing import Shelf, Short
from inventory.pours.materials import Stuff
from inventory.rest.quantities import quantity_json
from inventory.shop.fields import to_decimal
from inventory.stock.models import Balance, Lot, LotStatus
from inventory.stock.problems import NotEnoughStock

DELIVERIES = "/api/deliveries/"
MOST_LOTS = 20


def not_enough(short: Sequence[Short], shelf: Shelf) -> NotEnoughStock:
    """The refusal of a pour that lacks something, with the lots that might help. Two SQL statements."""
    rows = [row_of(lack, shelf.stuff[lack.wanted.material]) for lack in short]
    sentences = [sentence_of(row) for row in rows]
    return NotEnoughStock(
        " ".join(sentences),
        errors=[
            {"pointer": lack.wanted.pointer, "detail": sentence}
            for lack, sentence in zip(short, sentences, strict=True)
        ],
        remedies=[*lots_that_help(short, shelf), *always_helps(short, shelf)],
        shortages=rows,
    )


def row_of(short: Short, stuff: Stuff) -> dict[str, Any]:
    unit = stuff.record.stock_unit
    return {
        "material": stuff.record.pk,
        "name": stuff.record.name,
        "lot": short.wanted.lot,
        "wanted": shown(short.wanted.quantity, unit),
        "there": shown(short.there, unit),
        "missing": shown(short.missing, unit),
    }


def sentence_of(row: dict[str, Any]) -> str:
    wanted, there, missing = (f"{row[key]['amount']} {row[key]['unit']}" for key in ("wanted", "there", "missing"))
    return f"{row['name']}: {missing} short; {wanted} wanted, {there} there."


def lots_that_help(short: Sequence[Short], shelf: Shelf) -> list[dict[str, Any]]:
    """Every lot of what is short that has something, and why the tool did not take it."""
    materials = {lack.wanted.material for lack in short}
    rows = (
        Balance.objects.filter(lot__material__in=materials, quantity__gt=0)
        .order_by("lot__material", "lot__use_by", "lot")
        .values_list(
            "lot_id",
            "place_id",
            "place__name",
            "quantity",
            "lot__number",
            "lot__lot_number",
            "lot__material_id",
            "lot__status",
            "lot__use_by",
            "lot__received_at",
            "lot__received_on",
        )
    )
    remedies = []
    for (
        lot,
        place,
        place_name,
        quantity,
        number,
        lot_number,
        material,
        status,
        use_by,
        received_at,
        received_on,
    ) in rows:
        record = shelf.stuff[material].record
        free = quantity - to_decimal(shelf.taken.get((lot, place), 0), 6)
        if free <= 0:
            continue
        name = f"{record.name} lot {number} ({lot_number})"
        remedy: dict[str, Any] = {
            "kind": "other_lot",
            "material": material,
            "lot": lot,
            "number": number,
            "lot_number": lot_number,
            "place": place,
            "place_name": place_name,
            "quantity": quantity_json(free, record.stock_unit),
        }
        if received_at > shelf.moment:
            remedy |= {"kind": "change_time", "field": "poured_at"}
            remedy["text"] = f"{name} came in on {received_on}, after this pour: mend the time if that is wrong."
        elif status == LotStatus.REJECTED:
            continue
        elif place != shelf.place:
            remedy |= {"kind": "other_place", "call": f"/api/lots/{lot}/move/"}
            remedy["text"] = f"{name} lies at {place_name}: name it with its place, or move it here."
        elif status == LotStatus.ON_HOLD:
            remedy["text"] = f"{name} is on hold: name it if it went in; the owner is asked why."
        elif not is_usable_on(use_by, shelf.day):
            remedy["text"] = f"{name} was past its use-by of {use_by}: name it if it went in; the owner is asked why."
        else:
            remedy["text"] = f"{name} has some: name it if it went in."
        remedies.append(remedy)
    return remedies


def always_helps(short: Sequence[Short], shelf: Shelf) -> list[dict[str, Any]]:
    """What is true of any pour that happened although the book is short."""
    materials = sorted({lack.wanted.material for lack in short})
    return [
        {
            "kind": "found_more",
            "text": "There was more than the book said: say of which lot, how much, and why.",
            "field": "found",
            "materials": materials,
            "lots": lots_that_may_hold_more(materials, shelf),
        },
        {
            "kind": "receive_first",
            "text": f"It is here and not booked yet: book the delivery, {shelf.day} or before; the price may follow.",
            "call": DELIVERIES,
            "received_on": shelf.day.isoformat(),
            "materials": materials,
        },
    ]


def lots_that_may_hold_more(materials: Sequence[int], shelf: Shelf) -> list[dict[str, Any]]:
    """The lots of these materials that came in last before the pour, also those that the book calls empty."""
    rows = (
        Lot.objects.filter(material__in=materials, received_at__lte=shelf.moment)
        .exclude(status=LotStatus.REJECTED)
        .order_by("-received_at", "-pk")
        .values("material", "number", "lot_number", lot=F("pk"))
    )
    return [dict(row) for row in rows[:MOST_LOTS]]


def shown(millionths: int, unit: str) -> dict[str, str]:
    return quantity_json(to_decimal(millionths, 6), unit)
