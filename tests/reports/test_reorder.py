"""Reorder: the worked figures, and what stands against the reorder point.

The worked material: received 5 days ago, lead time 6 days. Used 0, 30, 0, 10, 0, 20 mL on the six days up to today:
mean 10, variance (0 − 10)² three times, 20², 0², 10² = 800 over 5 = 160, sd 12.649111. Over 6 days 60 mL with sd
30.983867; 95 % of the time z 1.644854 × that, 50.963926, suffices: the reorder point is 110.963926 mL.
"""

from datetime import date
from decimal import Decimal
from math import ceil
from typing import Any

import pytest
from rest_framework.test import APIClient

from inventory.calc.quantities import parse_quantity
from inventory.catalog.actions import ContentGiven, PartGiven, add_pack, add_resin_system, add_supplier
from inventory.catalog.models import Pack
from inventory.pours.actions import plan_pour
from inventory.pours.entered import Entered, PieceShare, Plan
from inventory.stock.actions import move, write_off
from inventory.stock.models import Place
from tests.reports.conftest import Works, read, tops_of

URL = "/api/reports/reorder/"


def row_of(client: APIClient, code: str) -> dict[str, Any]:
    found: dict[str, Any] = next(row for row in read(client, URL)["rows"] if row["material"]["code"] == code)
    return found


def amount(row: dict[str, Any], name: str) -> str:
    return str(row[name]["amount"])


@pytest.fixture
def worked(works: Works) -> Any:
    lot = works.lot(works.resin, "150 ml", on="2026-06-10")
    job = works.job("Kitchen", "10")
    for day, quantity in (("11", "30"), ("13", "10")):
        works.pour(job, (lot, f"{quantity} ml"), at=f"2026-06-{day}T15:00:00Z")
    works.pour(job, (lot, "15 ml"), (lot, "5 ml", "waste"), at="2026-06-15T14:00:00Z")
    works.undo(works.pour(job, (lot, "7 ml"), at="2026-06-14T15:00:00Z"))
    return lot


def pack(works: Works, name: str, **contents: str) -> Pack:
    materials = {"resin": works.resin, "hardener": works.hardener, "mica": works.mica}
    given = [ContentGiven(materials[key], parse_quantity(quantity)) for key, quantity in contents.items()]
    return add_pack(supplier=works.supplier, name=name, contents=given, price=Decimal("40"), by=works.owner)


def test_the_worked_reorder_point_says_why(office: APIClient, worked: Any) -> None:
    row = row_of(office, "R-1")

    assert (amount(row, "on_hand"), amount(row, "daily_usage"), row["lead_time_days"]) == ("90", "10", 6)
    assert (amount(row, "safety_stock"), amount(row, "reorder_point")) == ("50.963926", "110.963926")
    assert (row["is_below"], amount(row, "missing"), row["runs_out_on"]) == (True, "20.963926", "2026-06-24")
    why = row["why"]
    assert {name: why[name] for name in ("mean", "sd", "days", "z", "sd_during_lead_time", "use_during_lead_time")} == {
        "mean": "10.000000",
        "sd": "12.649111",
        "days": 6,
        "z": "1.644854",
        "sd_during_lead_time": "30.983867",
        "use_during_lead_time": "60.000000",
    }
    assert (why["service_level"], why["lead_time_days"], why["first_received_on"]) == ("0.950000", 6, "2026-06-10")
    assert "19 of 20" in why["in_words"]


def test_its_figures_open_into_their_lines(office: APIClient, worked: Any) -> None:
    row = row_of(office, "R-1")

    used = read(office, row["usage_movements"], page_size=100)["results"]
    assert (
        -sum(Decimal(line["quantity"]["amount"]) for line in used) == Decimal(row["why"]["mean"]) * row["why"]["days"]
    )
    here = read(office, row["movements"], page_size=100)["results"]
    assert sum(Decimal(line["quantity"]["amount"]) for line in here) == Decimal(amount(row, "on_hand"))


def test_moves_and_write_offs_are_no_use(works: Works, office: APIClient, worked: Any) -> None:
    before = row_of(office, "R-1")
    move(lot=worked, to=Place.objects.create(number=99, name="Van"), quantity=Decimal(10), by=works.owner)
    write_off(lot=worked, quantity=Decimal(10), reason="dusty", place=works.place, by=works.owner)

    after = row_of(office, "R-1")
    assert after["why"] == before["why"]
    assert amount(after, "on_hand") == "80"


def test_what_is_set_aside_and_what_is_expired_is_not_to_be_had(works: Works, office: APIClient, worked: Any) -> None:
    works.lot(works.resin, "1000 ml", lot_number="old", expires_on=date(2026, 6, 14))
    tops = [PieceShare(piece.pk) for piece in tops_of(works.job("Next", "10"))]
    usages = [Entered(material=works.resin.pk, quantity=parse_quantity("40 ml"))]
    plan_pour(plan=Plan(pieces=tops, layer="flood_coat", usages=usages), by=works.owner)

    row = row_of(office, "R-1")
    assert {
        name: amount(row, name) for name in ("on_hand", "usable", "reserved", "available", "on_order", "position")
    } == {
        "on_hand": "1090",
        "usable": "90",
        "reserved": "40",
        "available": "50",
        "on_order": "0",
        "position": "50",
    }


def test_whole_packs_are_suggested(works: Works, office: APIClient, worked: Any) -> None:
    bottle = pack(works, "Half litre", resin="8 ml")

    report = read(office, URL)
    row = row_of(office, "R-1")
    assert row["packs"] == [{"pack": bottle.pk, "name": "Half litre", "count": 3, "price": "40.0000"}]
    assert amount(row, "suggested_quantity") == "24"
    assert report["orders"] == [{"supplier": works.supplier.pk, "name": "Harbour Resin Supply", "packs": row["packs"]}]


def test_a_kit_is_taken_as_often_as_its_scarcest_content_needs(works: Works, office: APIClient, worked: Any) -> None:
    hardener = works.lot(works.hardener, "60 ml", on="2026-06-10")
    works.pour(works.job("More", "10"), (hardener, "54 ml"), at="2026-06-12T15:00:00Z")
    kit = pack(works, "Kit", resin="10 ml", hardener="20 ml")

    hardener_row, resin_row = row_of(office, "H-1"), row_of(office, "R-1")
    needed = ceil(Decimal(amount(hardener_row, "missing")) / 20)
    assert needed > 3  # the resin alone would need three
    assert [row["packs"][0]["count"] for row in (hardener_row, resin_row)] == [needed, needed]
    assert amount(resin_row, "suggested_quantity") == str(10 * needed)
    [order] = read(office, URL)["orders"]
    assert [(line["pack"], line["count"]) for line in order["packs"]] == [(kit.pk, needed)]


def test_a_bottle_where_one_part_is_missing_and_the_kit_where_both_are(
    works: Works, office: APIClient, worked: Any
) -> None:
    bottle = pack(works, "Bottle", resin="10 ml")
    kit = pack(works, "Kit", resin="10 ml", hardener="20 ml")
    assert [line["pack"] for line in row_of(office, "R-1")["packs"]] == [bottle.pk]

    hardener = works.lot(works.hardener, "60 ml", on="2026-06-10")
    works.pour(works.job("More", "10"), (hardener, "54 ml"), at="2026-06-12T15:00:00Z")

    assert [line["pack"] for line in row_of(office, "R-1")["packs"]] == [kit.pk]


def test_without_a_pack_the_missing_quantity_is_said(office: APIClient, worked: Any) -> None:
    row = row_of(office, "R-1")

    assert (row["packs"], amount(row, "suggested_quantity")) == ([], "20.963926")
    assert row["reason"].startswith("No pack of Harbour Resin Supply")


def test_without_a_supplier_there_is_no_reorder_point_and_the_reason(works: Works, office: APIClient) -> None:
    row = row_of(office, "M-1")

    assert (row["reorder_point"], row["safety_stock"], row["why"], row["is_below"]) == (None, None, None, False)
    assert row["reason"].startswith("Nobody supplies it yet")


def test_the_named_supplier_comes_before_the_last_one(works: Works, office: APIClient, worked: Any) -> None:
    assert row_of(office, "R-1")["supplier"]["is_named"] is False
    slow = add_supplier(name="Slow Boat", lead_time_days=24, by=works.owner)
    works.resin.main_supplier = slow
    works.resin.save()

    row = row_of(office, "R-1")
    assert (row["supplier"]["name"], row["supplier"]["is_named"], row["lead_time_days"]) == ("Slow Boat", True, 24)
    assert amount(row, "safety_stock") == "101.927851"  # twice that of 6 days


def test_materials_below_their_point_come_first(works: Works, office: APIClient, worked: Any) -> None:
    works.lot(works.mica, "10 g")

    assert [row["material"]["code"] for row in read(office, URL)["rows"]] == ["R-1", "M-1", "H-1"]
    by_code = read(office, URL, ordering="code")["rows"]
    assert [row["material"]["code"] for row in by_code] == ["H-1", "M-1", "R-1"]


def test_mixable_by_volume_and_which_part_is_stranded(works: Works, office: APIClient) -> None:
    """2:1 by volume: 900 mL of A want 450 of B; there are 400, so 1200 mixed and 100 mL of A stranded."""
    system(works, volume=("2", "1"))
    works.lot(works.resin, "900 ml")
    works.lot(works.hardener, "400 ml")
    works.lot(works.hardener, "1000 ml", lot_number="old", expires_on=date(2026, 6, 14))

    [found] = read(office, URL)["systems"]
    assert found["resin_system"]["name"] == "Table top"
    assert found["mixable"] == {"amount": "1200", "unit": "ml"}
    assert [(part["role"], part["stranded"]["amount"]) for part in found["stranded"]] == [("A", "100"), ("B", "0")]
    assert (found["runs_out_first"], found["reason"]) == (["B"], None)


def test_mixable_by_mass_goes_through_the_densities(works: Works, office: APIClient) -> None:
    """100:40 by mass: 1000 mL of A weigh 1130 g and want 452 g of B. 500 mL weigh 480 g: 28 g, 29.166667 mL, over."""
    system(works, mass=("100", "40"))
    works.lot(works.resin, "1000 ml")
    works.lot(works.hardener, "500 ml")

    [found] = read(office, URL)["systems"]
    assert found["mixable"] == {"amount": "1582", "unit": "g"}
    assert [part["stranded"] for part in found["stranded"]] == [
        {"amount": "0", "unit": "ml"},
        {"amount": "29.166667", "unit": "ml"},
    ]


def test_a_missing_density_is_said_and_not_guessed(works: Works, office: APIClient) -> None:
    works.hardener.density_g_per_ml = None
    works.hardener.save()
    system(works, mass=("100", "40"))

    [found] = read(office, URL)["systems"]
    assert (found["mixable"], found["stranded"][0]["stranded"]) == (None, None)
    assert found["reason"].startswith("The density of Table hardener B (part B) is missing")


def system(works: Works, *, volume: tuple[str, str] | None = None, mass: tuple[str, str] | None = None) -> None:
    def ratio(shares: tuple[str, str] | None) -> dict[str, Decimal] | None:
        return {role: Decimal(share) for role, share in zip("AB", shares, strict=True)} if shares else None

    parts = [PartGiven("A", works.resin), PartGiven("B", works.hardener)]
    add_resin_system(
        name="Table top", parts=parts, ratio_by_volume=ratio(volume), ratio_by_mass=ratio(mass), by=works.owner
    )
