"""Amounts in sentences, on the first page and in the reorder report: in the shop's own units, and days in words."""

from datetime import date
from decimal import Decimal

import pytest

from inventory.calc.units import Dimension
from inventory.reports.queries.reorder import reorder
from inventory.reports.queries.today import Need, needs_a_hand
from inventory.shop.models import Shop
from inventory.shop.reading import as_read
from inventory.stock.models import Reservation
from tests.reports.conftest import Works


def said(kind: Need) -> dict[str, str]:
    return {row.title: row.detail for row in needs_a_hand(is_owner=True).rows if row.kind == kind}


@pytest.mark.parametrize(
    ("amount", "unit", "words"),
    [
        ("828.058828", "ml", "28 fl oz"),
        ("5323.235321", "ml", "180 fl oz"),
        ("100000", "ml", "3,381 fl oz"),
        ("90", "ml", "3 fl oz"),
        ("30", "ml", "1 fl oz"),
        ("7.5", "ml", "0.25 fl oz"),
        ("0.1", "ml", "less than 0.01 fl oz"),
        ("1142.9", "g", "1,143 g"),
        ("74", "each", "74 each"),
        ("0", "ml", "0 fl oz"),
    ],
)
def test_an_amount_is_rounded_as_a_person_says_it(amount: str, unit: str, words: str) -> None:
    preferred = {Dimension.VOLUME: "fl_oz", Dimension.MASS: "g"}
    assert as_read(Decimal(amount), unit, preferred) == words


def test_what_is_left_of_an_old_lot_is_said_in_the_shops_unit(works: Works) -> None:
    works.lot(works.resin, "828.058828 ml", lot_number="R-9", expires_on=date(2026, 6, 14))

    assert said(Need.LOT_EXPIRED) == {
        "Table resin A, lot R-9": "28 fl oz left; its last good day was 1 day ago",
    }
    Shop.objects.update(volume_unit="ml")
    assert said(Need.LOT_EXPIRED) == {
        "Table resin A, lot R-9": "828 mL left; its last good day was 1 day ago",
    }


@pytest.mark.parametrize(
    ("expires_on", "words"),
    [
        (date(2026, 6, 15), "today is its last good day"),
        (date(2026, 6, 16), "1 day left"),
        (date(2026, 6, 29), "14 days left"),
    ],
)
def test_days_left_are_counted_in_words(works: Works, expires_on: date, words: str) -> None:
    works.lot(works.mica, "40 g", lot_number="M-9", expires_on=expires_on)

    assert said(Need.LOT_EXPIRING) == {"Pearl mica, lot M-9": f"40 g left; {words}"}
    assert said(Need.LOT_EXPIRED) == {}


def test_a_low_material_is_named_with_its_reorder_point_in_the_shops_unit(works: Works) -> None:
    lot = works.lot(works.resin, "3 l", on="2026-03-01")
    works.pour(works.job("Bar", "30"), (lot, "2900 ml"), at="2026-06-10T15:00:00Z")

    [row] = [row for row in reorder().rows if row.material == works.resin.pk]
    point = as_read(row.reorder_point or Decimal(0), "ml", {Dimension.VOLUME: "fl_oz"})
    assert said(Need.MATERIAL_BELOW) == {"Table resin A": f"3.4 fl oz to be had, reorder point {point}"}
    assert row.why is not None
    assert row.why.in_words.startswith("1.1 fl oz a day over 90 days; 6 days until Harbour Resin Supply delivers take")

    set_aside = Reservation.objects.create(material=works.resin, place=works.place, quantity=Decimal(1000), cause=1)
    assert said(Need.MATERIAL_BELOW) == {
        "Table resin A": f"30 fl oz more set aside than there is, reorder point {point}",
    }

    set_aside.delete()
    works.lot(works.resin, "20 l", on="2026-06-12")
    assert said(Need.MATERIAL_BELOW) == {}
