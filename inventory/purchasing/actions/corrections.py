"""A delivery was written down wrongly: another quantity, or it never came."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from django.db import transaction

from inventory.calc.bookkeeping import Entry, Worth
from inventory.calc.quantities import Typed, format_quantity
from inventory.catalog.quantities import figures_of, stock_quantity
from inventory.purchasing.actions.lines import typed_columns
from inventory.purchasing.actions.records import (
    Receipt,
    lines_of,
    lock_delivery,
    open_with_all_made_from,
    receipts_of,
    revalue_lots,
)
from inventory.purchasing.models import Delivery, DeliveryLine
from inventory.shop.change_log import log_changes_of
from inventory.shop.clock import shop_zone
from inventory.shop.fields import to_whole
from inventory.shop.models import Person
from inventory.shop.problems import bad_fields
from inventory.stock import ledger
from inventory.stock.actions.delivered import change_containers, wait_no_longer
from inventory.stock.book import open_book
from inventory.stock.models import Kind
from inventory.stock.problems import NotEnoughStock
from inventory.stock.whole import refuse_unless_whole


@dataclass(frozen=True, slots=True)
class QuantityGiven:
    """How much a line (its id) really brought, more than nothing, and in how many containers, where that differs."""

    line: int
    quantity: Typed
    containers: int | None = None


@dataclass(frozen=True, slots=True)
class _Corrected:
    """A line and what it really brought, in the stock unit and as typed."""

    line: DeliveryLine
    quantity: Decimal
    typed: Typed
    containers: int

    @property
    def change(self) -> int:
        """Millionths of the stock unit."""
        return to_whole(self.quantity - self.line.quantity, 6)

    @property
    def more_containers(self) -> int:
        return self.containers - self.line.containers


@transaction.atomic
def correct_quantities(*, delivery: Delivery, quantities: Sequence[QuantityGiven], reason: str, by: Person) -> Delivery:
    """Say how much of a line really came in.

    What was paid stays; every part of the lot, on the shelf or gone, takes its share of it anew. What was used since
    must have been there: a smaller quantity is refused where it was not.
    Raises BadBody, UnitMismatch, NotEnoughStock, AlreadyUndone.
    """
    delivery = lock_delivery(delivery)
    corrected = _corrected(delivery, quantities)
    _correct_ledger([change for change in corrected if change.change], reason=reason, by=by)
    more = {change.line.lot_id: change.more_containers for change in corrected if change.more_containers}
    if more:
        change_containers(changes=more)
    _keep(corrected, by=by)
    return delivery


def _correct_ledger(corrected: Sequence[_Corrected], *, reason: str, by: Person) -> None:
    """The receipts made larger or smaller, and then every part of their lots set to its share of the same money."""
    if not corrected:
        return
    zone = shop_zone()
    lines = [change.line for change in corrected]
    book = open_with_all_made_from(lines)
    receipts = receipts_of(lines)
    entries = [_changed_receipt(change, receipts[change.line.lot_id]) for change in corrected]
    try:
        posted = ledger.post(Kind.RECEIVED, entries, book=book, by=by, zone=zone, reason=reason)
    except NotEnoughStock as shortage:
        raise _less_than_was_taken(shortage, corrected) from shortage
    taken_along = {line.lot_id: -posted.movement_of(position)[1].value for position, line in enumerate(lines)}
    revalue_lots(book, taken_along, by=by, zone=zone, reason=reason, reshared=set(taken_along))


@transaction.atomic
def reverse_delivery(*, delivery: Delivery, reason: str, by: Person) -> Delivery:
    """Undo a delivery that was booked by mistake, while all of it is still where it came in.

    Raises NotWhole, which lists what to undo first, and AlreadyUndone.
    """
    delivery = lock_delivery(delivery)
    lines = lines_of(delivery)
    receipts = receipts_of(lines)
    earliest = min(receipt.happened_at for receipt in receipts.values())
    book = open_book(earliest=earliest, lots=set(receipts))
    there = refuse_unless_whole(set(receipts), book=book)
    entries = [
        Entry(
            kind=Kind.RECEIVED,
            lot=lot,
            place=place,
            quantity=-quantity,
            happened_at=receipts[lot].happened_at,
            corrects=receipts[lot].movement,
        )
        for lot, (place, quantity) in sorted(there.items())
    ]
    posted = ledger.post(Kind.REVERSED, entries, book=book, by=by, zone=shop_zone(), reason=reason)
    wait_no_longer(lots=receipts)
    delivery.undone_by_id = posted.id
    delivery.save(update_fields=["undone_by"])
    return delivery


def _corrected(delivery: Delivery, quantities: Sequence[QuantityGiven]) -> list[_Corrected]:
    """The lines that really change."""
    lines = {line.pk: line for line in lines_of(delivery)}
    errors: list[tuple[str, str]] = []
    found: list[_Corrected] = []
    seen: set[int] = set()
    for index, given in enumerate(quantities):
        where = f"/lines/{index}"
        line = lines.get(given.line)
        if line is None:
            errors.append((f"{where}/line", f"Delivery {delivery.number} has no line {given.line}."))
            continue
        if given.line in seen:
            errors.append((f"{where}/line", "That line stands here already. Give its quantity once."))
        seen.add(given.line)
        quantity = stock_quantity(given.quantity, material=line.material, pointer=f"{where}/quantity")
        if quantity <= 0:
            errors.append((f"{where}/quantity", "More than nothing came in. Undo the delivery if it never came."))
        typed = figures_of(line.material).known(given.quantity)
        found.append(_Corrected(line, quantity, typed, given.containers or line.containers))
    if errors:
        raise bad_fields(errors)
    return [corrected for corrected in found if corrected.change or corrected.more_containers]


def _changed_receipt(corrected: _Corrected, receipt: Receipt) -> Entry:
    """The receipt, larger or smaller. What comes on top is worth nothing yet, what goes takes its money along: the
    shares are set afterwards."""
    return Entry(
        kind=Kind.RECEIVED,
        lot=corrected.line.lot_id,
        place=receipt.place,
        quantity=corrected.change,
        value=0 if corrected.change > 0 else Worth.IN_PROPORTION,
        happened_at=receipt.happened_at,
        corrects=receipt.movement,
    )


def _keep(corrected: Sequence[_Corrected], *, by: Person) -> None:
    changes = []
    for change in corrected:
        was, had = str(change.line), change.line.containers
        change.line.containers = change.containers
        change.line.quantity = change.quantity
        change.line.typed_amount, change.line.typed_unit = typed_columns(change.typed).values()
        changes.append((change.line, {"quantity": (was, str(change.line)), "containers": (had, change.containers)}))
    log_changes_of(changes, by=by)
    lines = [change.line for change in corrected]
    DeliveryLine.objects.bulk_update(lines, ["quantity", "typed_amount", "typed_unit", "containers"])


def _less_than_was_taken(shortage: NotEnoughStock, corrected: Sequence[_Corrected]) -> NotEnoughStock:
    """The refusal in the delivery's words: the least that must have come in."""
    lot = shortage.extra["lot"]
    change = next(change for change in corrected if change.line.lot_id == lot)
    least = change.line.quantity - Decimal(shortage.extra["there"])
    unit = change.line.material.stock_unit
    return NotEnoughStock(
        f"Of {change.line.material} at least {format_quantity(least, unit)} must have come in: that much has "
        "been taken or moved since. Correct what was taken first, or give at least that.",
        lot=lot,
        least={"amount": f"{least.normalize():f}", "unit": unit},
        remedies=[{"kind": "undo_first", "text": "Correct what was taken from the lot, and then this."}],
    )
