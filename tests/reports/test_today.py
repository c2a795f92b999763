"""Today: every kind of thing that needs a hand, each with the act that settles it."""

from datetime import date, datetime
from decimal import Decimal
from typing import Any

from rest_framework.test import APIClient

from inventory.calc.quantities import parse_quantity
from inventory.pours.actions import complete_pour, plan_pour
from inventory.pours.entered import Account, Entered, PieceShare, Plan
from inventory.pours.models import Pour
from inventory.stock.actions import hold, write_off
from tests.reports.conftest import Works, read, tops_of


def today(client: APIClient) -> list[dict[str, Any]]:
    rows: list[dict[str, Any]] = read(client, "/api/today/")["rows"]
    return rows


def kinds(client: APIClient) -> list[str]:
    return [row["kind"] for row in today(client)]


def planned(works: Works, at: str | None) -> Pour:
    tops = [PieceShare(piece.pk) for piece in tops_of(works.job("Kitchen", "10"))]
    moment = datetime.fromisoformat(at) if at else None
    return plan_pour(plan=Plan(pieces=tops, layer="flood_coat", planned_for=moment), by=works.owner)


def test_an_empty_shop_needs_no_hand(works: Works, office: APIClient) -> None:
    assert today(office) == []


def test_pours_by_their_time(works: Works, bench: APIClient) -> None:
    """It is ten in the morning in Chicago on 15 June."""
    for at in ("2026-06-23T04:59:00Z", "2026-06-23T05:00:00Z", "2026-06-15T16:00:00Z", "2026-06-15T14:00:00Z",
               "2026-06-15T04:59:00Z", "2026-06-16T05:00:00Z", None):  # fmt: skip
        planned(works, at)

    rows = today(bench)
    assert [(row["kind"], row["act"], row["on"]) for row in rows] == [
        ("pour_overdue", "complete", "2026-06-14"),
        ("pour_unlogged", "complete", "2026-06-15"),
        ("pour_today", "complete", "2026-06-15"),
        ("pour_undated", "complete", None),
        ("pour_coming", "prepare", "2026-06-16"),
        ("pour_coming", "prepare", "2026-06-22"),
    ]
    pour = Pour.objects.get(pk=rows[1]["link"]["id"])
    job = pour.pour_pieces.get().piece.job
    assert rows[1]["link"]["noun"] == "pour"
    assert (rows[1]["title"], rows[1]["detail"]) == ("Flood coat on Top 0", f"Job {job.number}: Kitchen; 09:00")


def test_a_completed_pour_is_settled(works: Works, bench: APIClient) -> None:
    lot = works.lot(works.resin, "100 ml")
    pour = planned(works, "2026-06-15T14:00:00Z")
    assert kinds(bench) == ["pour_unlogged"]

    usage = Entered(material=works.resin.pk, quantity=parse_quantity("1 ml"), lot=lot.pk)
    complete_pour(pour=pour, account=Account(usages=[usage]), by=works.owner)

    assert "pour_unlogged" not in kinds(bench)


def test_lots_by_their_use_by_and_on_hold(works: Works, bench: APIClient) -> None:
    def lot(number: str, use_by: str) -> Any:
        return works.lot(works.mica, "10 g", lot_number=number, expires_on=date.fromisoformat(use_by))

    old, _, _ = lot("old", "2026-06-14"), lot("soon", "2026-06-29"), lot("later", "2026-06-30")
    held = lot("held", "2027-01-01")
    hold(lot=held, reason="smells", all_of_this_number=False, by=works.owner)

    rows = today(bench)
    assert [(row["kind"], row["title"], row["act"]) for row in rows] == [
        ("lot_expired", "Pearl mica, lot old", "write_off"),
        ("lot_on_hold", "Pearl mica, lot held", "release_or_reject"),
        ("lot_expiring", "Pearl mica, lot soon", "use_first"),
    ]
    assert rows[1]["detail"] == "smells"
    assert rows[0]["detail"] == "10 g left; its last good day was 1 day ago"
    for gone in (old, held):
        write_off(lot=gone, quantity=None, reason="done", by=works.owner)
    assert kinds(bench) == ["lot_expiring"]


def test_a_material_below_its_reorder_point(works: Works, bench: APIClient) -> None:
    lot = works.lot(works.resin, "100 ml", on="2026-06-10")
    assert kinds(bench) == []

    works.pour(works.job("Kitchen", "10"), (lot, "60 ml"), at="2026-06-12T15:00:00Z")

    [row] = today(bench)
    assert (row["kind"], row["title"], row["act"]) == ("material_below", "Table resin A", "order")
    assert row["link"] == {"noun": "material", "id": works.resin.pk}


def test_prices_and_reasons_are_the_owners_to_give(works: Works, office: APIClient, bench: APIClient) -> None:
    works.lot(works.mica, "10 g", None)
    expired = works.lot(works.mica, "10 g", expires_on=date(2026, 5, 10))
    works.pour(works.job("Kitchen", "10"), (expired, "10 g"))

    assert kinds(bench) == ["material_below"] or kinds(bench) == []
    rows = {row["kind"]: row for row in today(office)}
    assert rows["delivery_without_price"]["detail"] == "1 line waits for the price"
    assert rows["delivery_without_price"]["act"] == "price"
    assert rows["pour_needs_reason"]["act"] == "explain"

    delivery = rows["delivery_without_price"]["link"]["id"]
    lines = office.get(f"/api/deliveries/{delivery}/").json()["lines"]
    body = {"lines": [{"line": lines[0]["id"], "cost": "5"}]}
    assert office.post(f"/api/deliveries/{delivery}/price/", body).status_code in (200, 201)
    assert "delivery_without_price" not in kinds(office)


def test_no_money_stands_on_the_page(works: Works, office: APIClient) -> None:
    works.lot(works.mica, "10 g", "777.77", expires_on=date(2026, 6, 14))

    assert Decimal("777.77") > 0
    assert "777" not in str(today(office))
