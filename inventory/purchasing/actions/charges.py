"""Charges on a delivery: freight, duty, handling and discounts, with the goods or long after them."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from django.db import transaction

from inventory.calc.landed_cost import CannotSpread, Goods, SpreadBy, spread_charge
from inventory.catalog.models import Material, StockUnit
from inventory.catalog.problems import UnitMismatch
from inventory.purchasing.actions.lines import grams_of, money
from inventory.purchasing.actions.records import lines_of, lock_delivery, open_with_all_made_from, revalue_lots
from inventory.purchasing.models import Charge, ChargeShare, Delivery, DeliveryLine
from inventory.purchasing.problems import NothingToSpreadOver
from inventory.rest.problems import Problem
from inventory.shop.clock import refuse_future, shop_zone, start_of_day
from inventory.shop.fields import to_whole
from inventory.shop.models import Person
from inventory.shop.problems import bad_field
from inventory.stock.problems import CreditTooLarge


@dataclass(frozen=True, slots=True)
class ChargeGiven:
    """A charge, or a discount where the amount is below zero. kind: in a few words (freight, duty, handling)."""

    kind: str
    amount: Decimal
    spread_by: SpreadBy = SpreadBy.VALUE


def goods_of(material: Material, *, quantity: Decimal, booked: int) -> Goods:
    return Goods(
        quantity=to_whole(quantity, 6), unit=material.stock_unit, value=booked, grams=grams_of(material, quantity)
    )


def spread(charge: ChargeGiven, *, goods: Sequence[Goods], materials: Sequence[Material], pointer: str) -> list[int]:
    """What each line bears, in ten-thousandths.

    pointer: where the body speaks of the charge. Raises UnitMismatch, NothingToSpreadOver, BadBody.
    """
    if charge.amount == 0:
        raise bad_field(f"{pointer}/amount", "A charge of 0 changes nothing. Leave it out.")
    try:
        return spread_charge(to_whole(charge.amount, 4), by=SpreadBy(charge.spread_by), goods=goods)
    except CannotSpread as error:
        raise _cannot_spread(error, materials, pointer) from error


def refuse_beyond_cost(shares: Sequence[Sequence[int]], goods: Sequence[Goods], materials: Sequence[Material]) -> None:
    """Raise CreditTooLarge where the charges of a line, discounts among them, take more than it costs."""
    for position, (line, material) in enumerate(zip(goods, materials, strict=True)):
        landed = line.value + sum(share[position] for share in shares)
        if landed < 0:
            raise CreditTooLarge(
                f"The discount on {material} is {money(-landed):f} more than it costs. "
                "Make it smaller, or spread it by value.",
                material=material.pk,
                remedies=[{"kind": "spread_by", "text": "Spread it by value.", "spread_by": SpreadBy.VALUE}],
            )


@transaction.atomic
def add_charge(*, delivery: Delivery, charge: ChargeGiven, charged_on: date, by: Person) -> Delivery:
    """Book a charge or a credit that came after the goods.

    It is spread over the delivery as it stands now and carried on into whatever the lots became: what is on the shelf,
    what was used, opened and blended.
    Raises AlreadyUndone, UnitMismatch, NothingToSpreadOver, CreditTooLarge, InTheFuture, BadBody.
    """
    zone = shop_zone()
    refuse_future(start_of_day(charged_on, zone))
    delivery = lock_delivery(delivery)
    lines = lines_of(delivery)
    materials = [line.material for line in lines]
    goods = [goods_of(line.material, quantity=line.quantity, booked=to_whole(line.booked_cost, 4)) for line in lines]
    shares = spread(charge, goods=goods, materials=materials, pointer="")
    book = open_with_all_made_from(lines)
    changes = {line.lot_id: share for line, share in zip(lines, shares, strict=True)}
    posted = revalue_lots(book, changes, by=by, zone=zone, reason=charge.kind, charged_on=charged_on)
    if posted is None:
        raise RuntimeError("a charge that is not 0 moves money")
    row = Charge.objects.create(
        delivery=delivery,
        kind=charge.kind,
        amount=charge.amount,
        spread_by=charge.spread_by.value,
        charged_on=charged_on,
        posting_id=posted,
    )
    ChargeShare.objects.bulk_create(share_rows(row, lines, shares))
    for line, share in zip(lines, shares, strict=True):
        line.charges += money(share)
    DeliveryLine.objects.bulk_update(lines, ["charges"])
    return delivery


def share_rows(charge: Charge, lines: Sequence[DeliveryLine], shares: Sequence[int]) -> list[ChargeShare]:
    return [
        ChargeShare(charge=charge, line=line, amount=money(share))
        for line, share in zip(lines, shares, strict=True)
        if share
    ]


def _cannot_spread(error: CannotSpread, materials: Sequence[Material], pointer: str) -> Problem:
    where = f"{pointer}/spread_by"
    named = list(dict.fromkeys(materials[position] for position in error.lines))
    names = ", ".join(material.name for material in named)
    if error.by is SpreadBy.VALUE:
        sentence = "Nothing in this delivery has a price yet, so a charge cannot be spread by value."
        others = (SpreadBy.QUANTITY, SpreadBy.MASS)
        return NothingToSpreadOver(
            f"{sentence} Give the prices first, or spread it by quantity or mass.",
            errors=[{"pointer": where, "detail": sentence}],
            remedies=[
                {"kind": "give_price", "text": "Give the prices first."},
                *({"kind": "spread_by", "text": f"Spread it by {other}.", "spread_by": other} for other in others),
            ],
        )
    if error.by is SpreadBy.MASS:
        liquids = [material for material in named if material.stock_unit == StockUnit.MILLILITRES]
        density = "Give the liquids their density, or spread" if liquids else "Spread"
        sentence = f"Nobody knows what these weigh: {names}. {density} the charge by value."
        figure = {"kind": "give_figure", "text": "Give the material its density in g per mL, from the data sheet."}
        remedies = [figure | {"material": material.pk} for material in liquids]
    else:
        first = materials[0]
        sentence = (
            f"{first} is kept in {first.stock_unit}, but these are not: {names}. "
            "By quantity, all lines are in one unit. Spread the charge by value."
        )
        remedies = []
    return UnitMismatch(
        sentence,
        errors=[{"pointer": where, "detail": sentence}],
        remedies=[*remedies, {"kind": "spread_by", "text": "Spread it by value.", "spread_by": SpreadBy.VALUE}],
        lines=[position + 1 for position in error.lines],
        materials=[material.pk for material in named],
    )
