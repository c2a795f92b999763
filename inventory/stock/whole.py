"""Whether a lot is still as it came in, and what to undo first where it is not."""

from collections.abc import Collection
from typing import Any

from django.db import connection

from inventory.shop.fields import to_decimal
from inventory.stock.book import Book, as_moment, marks
from inventory.stock.lines import IS_GAIN, IS_ISSUE
from inventory.stock.models import StockCount
from inventory.stock.problems import NotWhole

WORDS = {
    "used": "was used",
    "wasted": "was wasted",
    "counted": "was counted",
    "opened": "was opened into another lot",
    "blended": "went into a house mix",
    "written_off": "was written off",
    "returned": "was returned",
    "given": "was sold or given away",
    "moved": "was moved to another place",
}

# What a count brought about at its moment, where it comes to nothing: a late entry that it met, undone like the count.
CANCEL_OUT = (
    "(kind = 'counted' AND (SELECT SUM(c.quantity) FROM stock_movement c WHERE c.lot_id = stock_movement.lot_id "
    "AND c.place_id = stock_movement.place_id AND c.kind = 'counted' "
    "AND c.happened_at = stock_movement.happened_at) = 0)"
)


def refuse_unless_whole(lots: Collection[int], *, book: Book) -> dict[int, tuple[int, int]]:
    """Where each of these lots lies and how much of it, in millionths; all of it is still in the one place it came to.

    book: opened over the lots. Two SQL statements. Raises NotWhole, whose `first` lists what to undo before.
    """
    first = [*_left(lots), *_counts(lots)]
    if first:
        sentences = list(dict.fromkeys(str(step["text"]) for step in first))
        raise NotWhole(
            f"{' '.join(sentences)} Undo that first.",
            first=first,
            remedies=[{"kind": "undo_first", "text": "Undo what is listed, the latest first, and then this."}],
        )
    return {
        lot: (place, holding.quantity)
        for (lot, place), holding in book.holdings.items()
        if lot in lots and holding.quantity
    }


def _left(lots: Collection[int]) -> list[dict[str, Any]]:
    """Everything that left the lots or their place and still stands, counted losses included, and what was found."""
    with connection.cursor() as cursor:
        cursor.execute(
            "SELECT m.posting_id, m.kind, l.id, l.number, m.happened_at, m.happened_on, m.cause, standing.quantity "
            "FROM (SELECT COALESCE(corrects_id, id) AS movement, SUM(quantity) AS quantity FROM stock_movement "
            f"WHERE lot_id IN ({marks(lots)}) AND ({IS_ISSUE} OR {IS_GAIN} OR kind = 'moved') AND NOT {CANCEL_OUT} "
            "GROUP BY COALESCE(corrects_id, id) HAVING SUM(quantity) <> 0) standing "
            "JOIN stock_movement m ON m.id = standing.movement JOIN stock_lot l ON l.id = m.lot_id "
            "WHERE m.kind <> 'moved' OR m.quantity < 0 ORDER BY m.id DESC",
            list(lots),
        )
        rows = cursor.fetchall()
    return [
        {
            "posting": posting,
            "kind": kind,
            "lot": lot,
            "cause": cause,
            "happened_at": as_moment(moment).isoformat(),
            "quantity": str(to_decimal(abs(int(quantity)), 6)),
            "text": f"Something of lot {number} {WORDS[kind]} on {str(day)[:10]}.",
        }
        for posting, kind, lot, number, moment, day, cause, quantity in rows
    ]


def _counts(lots: Collection[int]) -> list[dict[str, Any]]:
    counts = StockCount.objects.filter(lines__lot__in=lots, lines__is_asserted=True).distinct()
    return [
        {
            "posting": count.posting_id,
            "kind": "counted",
            "count": count.pk,
            "happened_at": count.counted_at.isoformat(),
            "text": f"Count {count.number} on {count.counted_at:%Y-%m-%d} says how much of it was there.",
        }
        for count in counts
    ]
