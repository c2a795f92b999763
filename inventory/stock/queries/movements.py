"""In and out: the ledger's lines and their postings, to be read.

What the lines refer to is read beside them, not joined: with a long history a database may otherwise begin at the small
tables, and sort all of the ledger for one page of it.
"""

from collections.abc import Iterator, Sequence
from typing import Any

from django.db.models import OuterRef, Prefetch, QuerySet, Subquery

from inventory.catalog.models import Material
from inventory.shop.models import Person
from inventory.stock.models import Lot, Movement, Place, Posting

ROWS_AT_ONCE = 2_000
COLUMNS = (
    "id",
    "posting_id",
    "kind",
    "lot_id",
    "material_id",
    "place_id",
    "quantity",
    "value",
    "happened_at",
    "happened_on",
)
ACT = Posting.objects.filter(pk=OuterRef("posting_id"))
TOLD = {f"told_{field}": Subquery(ACT.values(field)) for field in ("recorded_at", "by_id", "reason")}


def movements() -> QuerySet[Movement]:
    """Lines with their posting, who made it, lot, material and place. Six SQL statements."""
    return Movement.objects.prefetch_related("posting__by", "lot", "material", "place")


def postings() -> QuerySet[Posting]:
    """Postings with who made them and their lines. Six SQL statements."""
    lines = Movement.objects.order_by("id").prefetch_related("lot", "material", "place")
    return Posting.objects.prefetch_related("by", Prefetch("movements", lines))


def movement_rows(lines: QuerySet[Movement]) -> Iterator[Sequence[Any]]:
    """Lines for a table, any number of them in bounded memory: number, act, kind, lot, lot number, material, place,
    quantity, unit, value, happened at, day, recorded at, by, reason. Five SQL statements."""
    lots = {pk: (number, label) for pk, number, label in Lot.objects.values_list("pk", "number", "lot_number")}
    materials = {pk: (name, unit) for pk, name, unit in Material.objects.values_list("pk", "name", "stock_unit")}
    places = dict(Place.objects.values_list("pk", "name"))
    people = dict(Person.objects.values_list("pk", "name"))
    rows = lines.prefetch_related(None).annotate(**TOLD).values_list(*COLUMNS, *TOLD).iterator(chunk_size=ROWS_AT_ONCE)
    for pk, posting, kind, lot, material, place, quantity, value, at, on, recorded_at, by, reason in rows:
        name, unit = materials[material]
        yield (
            pk,
            posting,
            kind,
            *lots[lot],
            name,
            places[place],
            quantity,
            unit,
            value,
            at,
            on,
            recorded_at,
            people[by],
            reason,
        )
