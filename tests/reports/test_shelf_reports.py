"""Expiring, value on a day, mass balance: what they count, and that their figures open into the ledger."""

from datetime import date
from decimal import Decimal
from typing import Any

import pytest
from rest_framework.test import APIClient

from inventory.reports.queries.mass_balance import FIGURES, Scope, mass_balance
from inventory.reports.queries.value import value_on
from inventory.stock.actions import (
    Counted,
    Input,
    blend,
    count_place,
    give_away,
    move,
    open_container,
    return_goods,
    undo_blend,
    write_off,
)
from inventory.stock.models import Balance, Lot, Movement, Place, Posting
from tests.reports.conftest import Works, read


@pytest.fixture
def busy(works: Works) -> dict[str, Any]:
    """A lot to which everything has happened, and the jug that some of it went into."""
    lot = works.lot(works.resin, "1000 ml", "100", lot_number="L-1", containers=2)
    other = works.lot(works.resin, "333 ml", "40", lot_number="L-2", on="2026-06-01")
    job = works.job("Kitchen", "30", "10")
    works.pour(job, (lot, "100 ml"), (lot, "7 ml", "waste"), at="2026-05-10T15:00:00Z")
    works.undo(works.pour(job, (lot, "50 ml"), at="2026-05-11T15:00:00Z"))
    write_off(lot=lot, quantity=Decimal(30), reason="dusty", by=works.owner)
    child = open_container(lot=lot, by=works.owner)
    move(lot=lot, to=Place.objects.create(number=99, name="Van"), quantity=Decimal(10), by=works.owner)
    return_goods(lot=child, quantity=Decimal(50), to="supplier", reason="too much", by=works.owner)
    give_away(lot=child, quantity=Decimal(20), reason="to a friend", by=works.owner)
    inputs = [Input(child, Decimal(100)), Input(other, Decimal(33))]
    jug = blend(material=works.resin, inputs=inputs, lot_number="J-1", by=works.owner).lot
    undo_blend(blend=blend(material=works.resin, inputs=inputs, by=works.owner), reason="spilt", by=works.owner)
    counted = [Counted(jug, Decimal(130), "film"), Counted(other, Decimal(301), "more")]
    now = Posting.objects.latest("id").recorded_at
    count_place(place=works.place, counted_at=now, lines=counted, by=works.owner)
    return {"lot": lot, "child": child, "other": other, "jug": jug}


def shown(row: Any) -> dict[str, str]:
    return {name: f"{row.figures[name].quantity.normalize():f}" for name in FIGURES if row.figures[name].quantity}


def test_all_that_came_in_is_here_or_went_to_the_last_digit(works: Works, busy: dict[str, Any]) -> None:
    report = mass_balance(Scope(material=works.resin))

    assert {row.lot.lot_number: shown(row) for row in report.rows if row.lot and row.lot.id != busy["child"].pk} == {
        "L-1": {
            "received": "1000", "used": "100", "wasted": "7", "written_off": "30", "opened_on": "500", "on_hand": "363",
        },
        "L-2": {"received": "333", "counted_up": "1", "blended_on": "33", "on_hand": "301"},
        "J-1": {"blended_in": "133", "counted_off": "3", "on_hand": "130"},
        "own-5": {},
    }  # fmt: skip
    for row in [*report.rows, report.total]:
        assert (row.difference.quantity, row.difference.value) == (0, 0)
    total = report.total.figures
    assert total["opened_in"] == total["opened_on"]
    assert total["blended_in"].value == total["blended_on"].value
    assert total["on_hand"].value == sum(row.value for row in Balance.objects.all())


@pytest.mark.parametrize("which", ["lot", "child", "other", "jug"])
def test_every_figure_of_the_balance_opens_into_its_lines(office: APIClient, busy: dict[str, Any], which: str) -> None:
    [row] = read(office, "/api/reports/mass-balance/", lot=busy[which].pk, **{"from": "2026-05-11"})["rows"]

    for name, figure in row["figures"].items():
        lines = read(office, figure["movements"], page_size=100)["results"]
        quantity = sum(Decimal(line["quantity"]["amount"]) for line in lines)
        value = sum(Decimal(line["value"]) for line in lines)
        sign = 1 if name in ("opening", "on_hand") or name.endswith(("received", "charged", "_in", "_up")) else -1
        assert (sign * quantity, sign * value) == (Decimal(figure["quantity"]["amount"]), Decimal(figure["value"])), (
            name
        )


def test_a_period_starts_with_what_was_there_and_ends_with_what_is_left(works: Works, busy: dict[str, Any]) -> None:
    scope = Scope(material=works.resin, first_day=date(2026, 5, 10), last_day=date(2026, 6, 1))

    report = mass_balance(scope)
    assert shown(report.total) == {
        "opening": "1000", "received": "333", "used": "100", "wasted": "7", "on_hand": "1226",
    }  # fmt: skip
    assert (report.total.difference.quantity, report.total.difference.value) == (0, 0)


def test_lots_of_one_number_and_the_whole_shop(works: Works, office: APIClient, busy: dict[str, Any]) -> None:
    works.lot(works.mica, "10 g", "5")

    by_number = read(office, "/api/reports/mass-balance/", lot_number="L-1")
    assert [row["lot"]["id"] for row in by_number["rows"]] == [busy["lot"].pk, busy["child"].pk]
    whole = read(office, "/api/reports/mass-balance/")
    assert [(row["lot"], row["material"]["name"]) for row in whole["rows"]] == [
        (None, "Pearl mica"),
        (None, "Table resin A"),
    ]
    assert whole["total"]["figures"]["received"] == {"quantity": None, "value": "145.0000", "movements": None}
    assert whole["total"]["difference"]["value"] == "0.0000"


def test_a_difference_is_shown_where_the_ledger_is_damaged(works: Works, busy: dict[str, Any]) -> None:
    Balance.objects.filter(lot=busy["other"]).update(quantity=Decimal(300))

    [row] = mass_balance(Scope(lot=busy["other"])).rows
    assert (row.difference.quantity, row.difference.value) == (1, 0)


def test_a_lot_that_is_not_there_is_named_in_the_refusal(office: APIClient) -> None:
    answer = office.get("/api/reports/mass-balance/", {"lot": 424242})

    assert answer.status_code == 400
    assert answer.json()["errors"][0]["parameter"] == "lot"
    assert read(office, "/api/reports/mass-balance/", lot_number="none such")["rows"] == []


def test_the_value_today_is_what_the_balances_say(works: Works, office: APIClient, busy: dict[str, Any]) -> None:
    works.lot(works.mica, "10 g", "5")

    report = read(office, "/api/reports/value/")
    assert report["on"] == "2026-06-15"
    assert {row["material"]["name"]: (row["quantity"]["amount"], row["value"]) for row in report["rows"]} == {
        "Pearl mica": ("10", "5.0000"),
        "Table resin A": (
            f"{sum(row.quantity for row in Balance.objects.filter(lot__material=works.resin)).normalize():f}",
            str(sum(row.value for row in Balance.objects.filter(lot__material=works.resin))),
        ),
    }
    assert [(row["kind"], row["materials"]) for row in report["kinds"]] == [("resin", 1), ("powder", 1)]
    assert Decimal(report["total"]) == sum(row.value for row in Balance.objects.all())


@pytest.mark.parametrize("day", ["2026-05-03", "2026-05-04", "2026-05-10", "2026-05-11", "2026-06-01", "2026-06-15"])
def test_the_value_on_a_day_is_what_its_lines_sum_to(
    works: Works, office: APIClient, busy: dict[str, Any], day: str
) -> None:
    lines = Movement.objects.filter(happened_on__lte=day)
    report = value_on(date.fromisoformat(day))

    assert report.total == sum((line.value for line in lines), Decimal(0))
    for row in report.rows:
        found = read(office, row.movements, page_size=100)["results"]
        assert sum(Decimal(line["quantity"]["amount"]) for line in found) == row.quantity
        assert sum(Decimal(line["value"]) for line in found) == row.value


def test_expiring_lots_are_those_within_the_days_and_those_behind(works: Works, office: APIClient) -> None:
    def lot(number: str, use_by: str | None) -> Lot:
        return works.lot(
            works.resin, "100 ml", "10", lot_number=number, expires_on=date.fromisoformat(use_by) if use_by else None
        )

    lot("gone", "2026-06-14"), lot("last day", "2026-06-15"), lot("in 60", "2026-08-14"), lot("in 61", "2026-08-15")
    lot("for ever", None)
    write_off(lot=lot("empty", "2026-06-01"), quantity=None, reason="old", by=works.owner)

    report = read(office, "/api/reports/expiring/")
    assert [(row["lot_number"], row["days_left"], row["is_expired"]) for row in report["rows"]] == [
        ("gone", -1, True),
        ("last day", 0, False),
        ("in 60", 60, False),
    ]
    assert (report["value"], report["expired_value"]) == ("30.0000", "10.0000")
    assert [row["lot_number"] for row in read(office, "/api/reports/expiring/", days=0)["rows"]] == ["gone", "last day"]
    assert office.get("/api/reports/expiring/", {"days": -1}).status_code == 400


def test_an_opened_lot_expires_by_its_opened_life(works: Works, office: APIClient) -> None:
    hardener = works.material("H-9", "Quick hardener", "hardener", "ml", open_life_days=30)
    lot = works.lot(hardener, "100 ml", lot_number="Q-1", expires_on=date(2027, 6, 1))
    assert read(office, "/api/reports/expiring/")["rows"] == []

    open_container(lot=lot, opened_on=date(2026, 6, 10), by=works.owner)

    [row] = read(office, "/api/reports/expiring/")["rows"]
    assert (row["lot_number"], row["use_by"], row["opened_on"]) == ("Q-1", "2026-07-10", "2026-06-10")
    assert row["places"] == [{"place": "Shop", "on_hand": {"amount": "100", "unit": "ml"}}]
