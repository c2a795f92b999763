"""A delivery comes in."""

from collections.abc import Sequence
from datetime import date

from django.db import transaction

from inventory.catalog.actions.shelving import refuse_archived
from inventory.catalog.models import Supplier
from inventory.purchasing.actions.charges import ChargeGiven, goods_of, refuse_beyond_cost, share_rows, spread
from inventory.purchasing.actions.lines import Line, Prepared, money, prepare, typed_columns
from inventory.purchasing.models import Charge, ChargeShare, Delivery, DeliveryLine
from inventory.shop.clock import shop_zone
from inventory.shop.models import Person
from inventory.shop.numbers import next_number
from inventory.shop.problems import bad_field
from inventory.stock.actions import Arrival, Received, receive
from inventory.stock.models import Lot, Place
from inventory.stock.queries import default_place


@transaction.atomic
def receive_delivery(
    *,
    supplier: Supplier,
    received_on: date,
    lines: Sequence[Line],
    by: Person,
    place: Place | None = None,
    reference: str = "",
    note: str = "",
    charges: Sequence[ChargeGiven] = (),
) -> Delivery:
    """Book a delivery: a lot for each material of it, all on the shelf, or nothing.

    The charges are part of what the lots cost. A line whose price is to follow is booked at its material's last price,
    provisionally, at 0 where there never was one. Two calls with as many kinds of line take as many SQL statements,
    however many lines they have.

    Raises BadBody, UnitMismatch, LotTwice, NothingToSpreadOver, CreditTooLarge, InTheFuture, TooMuch.
    """
    refuse_archived(supplier, pointer="/supplier")
    refuse_archived(place, pointer="/place")
    if not lines:
        raise bad_field("/lines", "Say what came in: one line at least.")
    prepared = prepare(lines, supplier=supplier.pk, received_on=received_on)
    shares = _spread_all(charges, prepared)
    place = place or default_place()
    received = receive(
        arrivals=_arrivals(prepared, shares), place=place, received_on=received_on, zone=shop_zone(), by=by
    )
    delivery = Delivery.objects.create(
        number=next_number("delivery"),
        supplier=supplier,
        received_on=received_on,
        place=place,
        reference=reference,
        note=note,
        by=by,
        posting_id=received.posted.id,
    )
    rows = _keep_lines(delivery, prepared, received.lots, shares)
    _keep_charges(delivery, charges, shares, rows, received)
    return delivery


def _spread_all(charges: Sequence[ChargeGiven], prepared: Sequence[Prepared]) -> list[list[int]]:
    """What each line bears of each charge. Raises CreditTooLarge where discounts take more than a line costs."""
    goods = [goods_of(lot.material, quantity=lot.quantity, booked=lot.booked) for lot in prepared]
    materials = [lot.material for lot in prepared]
    shares = [
        spread(charge, goods=goods, materials=materials, pointer=f"/charges/{index}")
        for index, charge in enumerate(charges)
    ]
    refuse_beyond_cost(shares, goods, materials)
    return shares


def _arrivals(prepared: Sequence[Prepared], shares: Sequence[Sequence[int]]) -> list[Arrival]:
    return [
        Arrival(
            material=lot.material,
            quantity=lot.quantity,
            value=money(lot.booked + sum(share[position] for share in shares)),
            lot_number=lot.lot_number or None,
            made_on=lot.made_on,
            expires_on=lot.expires_on,
            containers=lot.containers,
            basis=lot.basis,
            is_provisional=lot.cost is None,
        )
        for position, lot in enumerate(prepared)
    ]


def _keep_lines(
    delivery: Delivery, prepared: Sequence[Prepared], lots: Sequence[Lot], shares: Sequence[Sequence[int]]
) -> list[DeliveryLine]:
    return DeliveryLine.objects.bulk_create(
        DeliveryLine(
            delivery=delivery,
            position=position,
            material=line.material,
            lot=lot,
            pack=line.pack,
            pack_line=line.pack_line,
            pack_count=line.pack_count,
            quantity=line.quantity,
            containers=line.containers,
            cost=None if line.cost is None else money(line.cost),
            booked_cost=money(line.booked),
            charges=money(sum(share[position - 1] for share in shares)),
            basis=line.basis,
            **typed_columns(line.typed),
        )
        for position, (line, lot) in enumerate(zip(prepared, lots, strict=True), start=1)
    )


def _keep_charges(
    delivery: Delivery,
    charges: Sequence[ChargeGiven],
    shares: Sequence[Sequence[int]],
    lines: Sequence[DeliveryLine],
    received: Received,
) -> None:
    rows = Charge.objects.bulk_create(
        Charge(
            delivery=delivery,
            kind=charge.kind,
            amount=charge.amount,
            spread_by=charge.spread_by.value,
            charged_on=delivery.received_on,
            posting_id=received.posted.id,
        )
        for charge in charges
    )
    ChargeShare.objects.bulk_create(
        share for row, parts in zip(rows, shares, strict=True) for share in share_rows(row, lines, parts)
    )
