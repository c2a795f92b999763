"""What was promised beside the lines: guards, counts, how lots stand."""

from collections.abc import Iterator

from django.db import connection

from inventory.calc.allocation import use_by
from inventory.stock.bars import bars_among, status_of
from inventory.stock.models import Lot, StatusEvent
from inventory.stock.triggers import missing_triggers
from inventory.stock.verification.findings import ask, quantity


def guards() -> Iterator[str]:
    for name in missing_triggers(connection):
        yield f"the database lacks {name}: run migrate"


def counts() -> Iterator[str]:
    """What was counted at a moment is what the movements up to that moment say."""
    rows = ask(
        "SELECT count_id, lot_id, counted, book FROM (SELECT l.count_id, l.lot_id, l.counted, "
        "(SELECT COALESCE(SUM(m.quantity), 0) FROM stock_movement m WHERE m.lot_id = l.lot_id "
        "AND m.place_id = l.place_id AND m.happened_at <= l.counted_at) AS book "
        "FROM stock_stockcountline l WHERE l.is_asserted) lines WHERE counted <> book ORDER BY 1, 2"
    )
    for count, lot, counted, book in rows:
        yield f"count {count} found {quantity(counted)} of lot {lot}, the book says {quantity(book)} of that moment"


def lots() -> Iterator[str]:
    """A lot's status is that of the worst bar on it; its use-by the earlier of its expiry and its opened life."""
    events: dict[int, list[StatusEvent]] = {}
    for event in StatusEvent.objects.order_by("since", "id").iterator():
        events.setdefault(event.lot_id, []).append(event)
    for lot in Lot.objects.order_by("id").iterator():
        told = status_of(bars_among(events.get(lot.pk, ())).values())
        if lot.status != told:
            yield f"lot {lot.pk} is marked {lot.status}, its bars say {told}"
        good_until = use_by(expires_on=lot.expires_on, opened_on=lot.opened_on, open_life_days=lot.open_life_days)
        if lot.use_by != good_until:
            yield f"lot {lot.pk} is marked good until {lot.use_by}, its dates say {good_until}"
