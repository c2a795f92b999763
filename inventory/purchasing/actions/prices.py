"""The bill arrives, or turns out to be wrong: what delivered goods cost is set afterwards."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from django.db import transaction

from inventory.calc.landed_cost import divide_kit
from inventory.catalog.models import PackContent
from inventory.purchasing.actions.lines import kit_content, money, money_of
from inventory.purchasing.actions.records import lines_of, lock_delivery, open_with_all_made_from, revalue_lots
from inventory.purchasing.models import Delivery, DeliveryLine
from inventory.purchasing.queries import last_prices
from inventory.shop.change_log import log_changes_of
from inventory.shop.clock import shop_zone
from inventory.shop.fields import to_whole
from inventory.shop.models import Person
from inventory.shop.problems import bad_fields
from inventory.stock.actions.delivered import settle_prices
from inventory.stock.models import Basis


@dataclass(frozen=True, slots=True)
class PriceGiven:
    """What was paid, before charges, for one line (`line`, its id) or for all lines of one pack (`pack_line`, from 1).

    cost: 0 needs a basis that says why nothing was paid.
    """

    cost: Decimal
    line: int | None = None
    pack_line: int | None = None
    basis: Basis | None = None


@dataclass(slots=True)
class _NewCost:
    line: DeliveryLine
    cost: int
    basis: Basis


@transaction.atomic
def set_prices(*, delivery: Delivery, prices: Sequence[PriceGiven], by: Person) -> Delivery:
    """Say what lines of a delivery cost: for the first time, or differently from before.

    The difference goes on into whatever the lots became. A pack's price is divided over its lines as at receipt.
    Charges stay as they were spread. Every change stands in the change log.
    Raises BadBody, CreditTooLarge where a discount is more than the new price, AlreadyUndone.
    """
    delivery = lock_delivery(delivery)
    lines = lines_of(delivery)
    new = _new_costs(delivery, lines, prices)
    book = open_with_all_made_from([change.line for change in new])
    differences = {change.line.lot_id: change.cost - to_whole(change.line.booked_cost, 4) for change in new}
    revalue_lots(book, differences, by=by, zone=shop_zone(), reason=f"Price of delivery {delivery.number}")
    settle_prices(bases={change.line.lot_id: change.basis for change in new}, reached=set(book.lots))
    log_changes_of([(change.line, _before_and_after(change)) for change in new], by=by)
    for change in new:
        change.line.cost = change.line.booked_cost = money(change.cost)
        change.line.basis = change.basis
    DeliveryLine.objects.bulk_update([change.line for change in new], ["cost", "booked_cost", "basis"])
    return delivery


def _new_costs(delivery: Delivery, lines: Sequence[DeliveryLine], prices: Sequence[PriceGiven]) -> list[_NewCost]:
    by_id = {line.pk: line for line in lines}
    errors: list[tuple[str, str]] = []
    found: list[_NewCost] = []
    for index, price in enumerate(prices):
        where = f"/lines/{index}"
        cost, basis = money_of(price.cost, price.basis, pointer=where)
        if cost is None:
            raise ValueError("a price that is set is known")
        if price.pack_line is not None:
            named = [line for line in lines if line.pack_line == price.pack_line]
            missing = (f"{where}/pack_line", f"Delivery {delivery.number} has no pack line {price.pack_line}.")
        else:
            named = [by_id[price.line]] if price.line in by_id else []
            missing = (f"{where}/line", f"Delivery {delivery.number} has no line {price.line}.")
        if not named:
            errors.append(missing)
        elif {line.pk for line in named} & {change.line.pk for change in found}:
            errors.append((missing[0], "This line has a price here already. Give one."))
        else:
            found += [_NewCost(line, part, basis) for line, part in zip(named, _divided(cost, named), strict=True)]
    if errors:
        raise bad_fields(errors)
    return found


def _divided(cost: int, lines: Sequence[DeliveryLine]) -> list[int]:
    if len(lines) == 1:
        return [cost]
    contents = PackContent.objects.filter(pack=lines[0].pack_id)
    shares = dict(contents.values_list("material_id", "cost_share_percent"))
    known = last_prices({line.material_id for line in lines})
    kit = [kit_content(shares.get(line.material_id), line.material, line.quantity, known) for line in lines]
    return divide_kit(cost, kit)


def _before_and_after(change: _NewCost) -> dict[str, tuple[object, object]]:
    return {"cost": (change.line.cost, money(change.cost)), "basis": (change.line.basis, change.basis.value)}
