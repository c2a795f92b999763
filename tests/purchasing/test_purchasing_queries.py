"""What deliveries say of a material: its last price, who delivers it, since when."""

from datetime import date
from decimal import Decimal
from fractions import Fraction

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from inventory.catalog.actions import add_supplier, change_material
from inventory.purchasing import queries
from inventory.purchasing.actions import reverse_delivery
from inventory.stock.models import Basis
from tests.purchasing.conftest import Door


@pytest.fixture
def filled(door: Door) -> Door:
    """Resin bought twice from one supplier and then from another; hardener once, free; mica never."""
    paints = add_supplier(name="Quarry Road Paints", lead_time_days=3, by=door.by)
    door.deliver(door.line(door.resin, "1000 ml", "30"), on=date(2026, 1, 5))
    door.deliver(door.line(door.resin, "300 ml", "10"), on=date(2026, 1, 20))
    door.deliver(door.line(door.resin, "1000 ml"), on=date(2026, 2, 5), supplier=paints)
    door.deliver(door.line(door.hardener, "500 ml", basis=Basis.FREE), on=date(2026, 1, 7))
    return door


def test_the_last_price_is_exact_and_only_of_what_was_bought(filled: Door) -> None:
    materials = [filled.resin.pk, filled.hardener.pk, filled.mica.pk]

    with CaptureQueriesContext(connection) as captured:
        prices = queries.last_prices(materials)

    assert len(captured) == 1
    assert list(prices) == [filled.resin.pk]
    last = prices[filled.resin.pk]
    assert (last.price, last.cost, last.quantity) == (Fraction(1, 30), Decimal(10), Decimal(300))
    assert last.received_on == date(2026, 1, 20)


def test_the_price_history_runs_from_the_newest(filled: Door) -> None:
    history = queries.price_history(filled.resin.pk)
    assert [price.price for price in history] == [Fraction(1, 30), Fraction(3, 100)]


def test_the_main_supplier_is_the_one_named_and_else_who_delivered_last(filled: Door) -> None:
    materials = [filled.resin.pk, filled.hardener.pk, filled.mica.pk]

    with CaptureQueriesContext(connection) as captured:
        found = queries.main_suppliers(materials)
    assert len(captured) == 2
    assert set(found) == {filled.resin.pk, filled.hardener.pk}
    latest = found[filled.resin.pk]
    assert (latest.name, latest.lead_time_days, latest.is_named) == ("Quarry Road Paints", 3, False)
    assert found[filled.hardener.pk].name == "Harbour Resin Supply"

    change_material(material=filled.resin, main_supplier=filled.supplier, by=filled.by)
    named = queries.main_suppliers(materials)[filled.resin.pk]
    assert (named.name, named.lead_time_days, named.is_named) == ("Harbour Resin Supply", 6, True)


def test_the_first_receipt_leaves_out_what_never_came(filled: Door) -> None:
    materials = [filled.resin.pk, filled.mica.pk]
    assert queries.first_receipts(materials) == {filled.resin.pk: date(2026, 1, 5)}

    mistaken = filled.deliver(filled.line(filled.mica, "5 g"), on=date(2026, 1, 2))
    assert queries.first_receipts(materials)[filled.mica.pk] == date(2026, 1, 2)
    reverse_delivery(delivery=mistaken, reason="Never came.", by=filled.by)

    assert queries.first_receipts(materials) == {filled.resin.pk: date(2026, 1, 5)}
