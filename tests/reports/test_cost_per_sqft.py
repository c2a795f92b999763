"""Cost per square foot: worked figures, and what is inside, beside and outside.

The worked job: 30 sq ft of tops; 500 mL of a resin that cost 100.00 for 1000 mL, 250 mL of a hardener that cost 80.00
for 500 mL, and 10 mL of the resin set in the bucket. 50 + 40 + 1 = 91.00, over 30 sq ft 3.0333 a square foot; of it
1.00 was wasted.
"""

from decimal import Decimal
from typing import Any

import pytest
from rest_framework.test import APIClient

from inventory.jobs.actions import scrap_piece
from inventory.stock.actions import Input, blend
from inventory.stock.models import Basis
from tests.reports.conftest import Works, read, tops_of

URL = "/api/reports/cost-per-sqft/"


def rows(client: APIClient, **query: Any) -> dict[str, dict[str, Any]]:
    return {row["label"]: row for row in read(client, URL, **query)["rows"]}


@pytest.fixture
def shelf(works: Works) -> dict[str, Any]:
    return {"a": works.lot(works.resin, "1000 ml", "100"), "b": works.lot(works.hardener, "500 ml", "80")}


@pytest.fixture
def kitchen(works: Works, shelf: dict[str, Any]) -> Any:
    job = works.job("Kitchen", "20", "10")
    works.pour(job, (shelf["a"], "500 ml"), (shelf["b"], "250 ml"), (shelf["a"], "10 ml", "waste"))
    return works.finish(job, "2026-06-01")


def test_the_worked_job_costs_3_0333_a_square_foot(office: APIClient, kitchen: Any) -> None:
    report = read(office, URL)

    [row] = report["rows"]
    assert row == {
        "key": str(kitchen.pk),
        "label": f"Job {kitchen.number}: Kitchen",
        "state": "finished",
        "area_sqft": "30.000000",
        "tops": 2,
        "scrapped": 0,
        "cost": "91.0000",
        "cost_per_sqft": "3.0333",
        "by_kind": {"resin": "51.0000", "hardener": "40.0000"},
        "waste_cost": "1.0000",
        "waste_by_kind": {"resin": "1.0000"},
        "redo_cost": "0.0000",
        "notes": ["materials only"],
        "reason": None,
        "link": {"noun": "job", "id": kitchen.pk},
        "movements": "/api/reports/cost-per-sqft/movements/"
        f"?group_by=job&key={kitchen.pk}&purpose=customer&state=finished",
    }
    assert report["total"]["cost"] == "91.0000"
    assert report["unfinished_total"] is None


def test_each_top_counts_once_however_many_coats(works: Works, office: APIClient, shelf: Any) -> None:
    job = works.job("Vanity", "10")
    for layer in ("seal_coat", "flood_coat", "top_coat"):
        works.pour(job, (shelf["a"], "100 ml"), layer=layer)
    works.finish(job, "2026-06-01")

    [row] = rows(office).values()
    assert (row["area_sqft"], row["cost"], row["cost_per_sqft"]) == ("10.000000", "30.0000", "3.0000")


@pytest.mark.parametrize(("layer", "is_redo"), [("repair", False), ("touch_up", False), ("flood_coat", True)])
def test_a_redone_coat_stands_beside_and_not_inside(
    works: Works, office: APIClient, shelf: Any, layer: str, is_redo: bool
) -> None:
    job = works.job("Vanity", "10")
    works.pour(job, (shelf["a"], "100 ml"))
    works.pour(job, (shelf["a"], "200 ml"), (shelf["a"], "50 ml", "waste"), layer=layer, is_redo=is_redo)
    works.finish(job, "2026-06-01")

    [row] = rows(office).values()
    assert (row["cost"], row["waste_cost"], row["redo_cost"]) == ("10.0000", "0.0000", "25.0000")


def test_a_pour_on_two_jobs_is_shared_by_area_to_the_last_ten_thousandth(works: Works, office: APIClient) -> None:
    """100.00 over 10, 10 and 10 sq ft: 33.3334 and 66.6666, not 66.6667."""
    lot = works.lot(works.resin, "1000 ml", "100")
    one, two = works.job("One", "10"), works.job("Two", "10", "10")
    works.pour(tops_of(one, two), (lot, "1000 ml"))
    for job in (one, two):
        works.finish(job, "2026-06-01")

    assert [row["cost"] for row in rows(office).values()] == ["33.3334", "66.6666"]
    assert [row["cost"] for row in rows(office, group_by="piece").values()] == ["33.3334", "33.3333", "33.3333"]
    assert read(office, URL, group_by="piece")["total"]["cost"] == "100.0000"


def test_typed_shares_come_before_areas(works: Works, office: APIClient) -> None:
    lot = works.lot(works.resin, "1000 ml", "100")
    job = works.job("One", "10", "10")
    works.pour(job, (lot, "1000 ml"), shares=["75", "25"])
    works.finish(job, "2026-06-01")

    assert [row["cost"] for row in rows(office, group_by="piece").values()] == ["75.0000", "25.0000"]


def test_several_materials_on_three_alike_tops_share_as_their_sum_does(works: Works, office: APIClient) -> None:
    """Two lots of 100.00 on three tops: 66.6667, 66.6667, 66.6666, as 200.00 is shared; not twice 33.3334."""
    a, b = works.lot(works.resin, "1000 ml", "100"), works.lot(works.hardener, "1000 ml", "100")
    job = works.job("One", "10", "10", "10")
    works.pour(job, (a, "1000 ml"), (b, "1000 ml"))
    works.finish(job, "2026-06-01")

    found = list(rows(office, group_by="piece").values())
    assert [row["cost"] for row in found] == ["66.6667", "66.6667", "66.6666"]
    for kind in ("resin", "hardener"):
        assert sum(Decimal(row["by_kind"][kind]) for row in found) == 100


def test_a_top_of_other_work_bears_its_share_and_shows_nowhere(works: Works, office: APIClient) -> None:
    lot = works.lot(works.resin, "1000 ml", "90")
    paid, sample = works.job("Paid", "20"), works.job("Sample", "10", purpose="sample")
    works.pour(tops_of(paid, sample), (lot, "1000 ml"))
    for job in (paid, sample):
        works.finish(job, "2026-06-01")

    assert [row["cost"] for row in rows(office).values()] == ["60.0000"]
    assert [row["cost"] for row in rows(office, purpose="sample").values()] == ["30.0000"]
    assert [row["cost"] for row in rows(office, purpose="all").values()] == ["60.0000", "30.0000"]


def test_a_scrapped_top_keeps_its_cost_and_loses_its_area(works: Works, office: APIClient, shelf: Any) -> None:
    job = works.job("Kitchen", "20", "10")
    works.pour(job, (shelf["a"], "600 ml"))
    scrap_piece(piece=tops_of(job)[0], reason="dropped", by=works.owner)
    works.finish(job, "2026-06-01")

    [row] = rows(office).values()
    assert (row["cost"], row["area_sqft"], row["cost_per_sqft"], row["scrapped"]) == (
        "60.0000",
        "10.000000",
        "6.0000",
        1,
    )
    lost, _ = rows(office, group_by="piece").values()
    assert (lost["cost"], lost["cost_per_sqft"]) == ("40.0000", None)
    assert lost["reason"] == "Every top was scrapped, so there is no finished area."


def test_without_a_completed_pour_there_is_no_figure_and_the_reason(
    works: Works, office: APIClient, shelf: Any
) -> None:
    bare, undone, empty = works.job("Bare", "10"), works.job("Undone", "10"), works.job("Empty")
    works.undo(works.pour(undone, (shelf["a"], "100 ml")))
    for job in (bare, undone, empty):
        works.finish(job, "2026-06-01")

    found = list(rows(office).values())
    assert [(row["cost"], row["cost_per_sqft"], row["waste_cost"]) for row in found] == [(None, None, None)] * 3
    assert [row["reason"] for row in found] == [
        "No completed pour is recorded on these tops.",
        "No completed pour is recorded on these tops.",
        "There are no tops, so there is no area.",
    ]


def test_a_month_says_that_a_top_in_it_has_no_pour(works: Works, office: APIClient, kitchen: Any) -> None:
    works.finish(works.job("Bare", "10"), "2026-06-02")

    [row] = rows(office, group_by="month").values()
    assert (row["area_sqft"], row["cost"]) == ("40.000000", "91.0000")
    assert row["notes"] == ["materials only", "1 top has no completed pour on record; the area counts all the same"]


def test_an_undone_pour_costs_nothing_and_leaves_no_mark(works: Works, office: APIClient, kitchen: Any) -> None:
    free = works.lot(works.mica, "100 g", "0", basis=Basis.FREE)
    works.undo(works.pour(kitchen, (free, "5 g")))

    [row] = rows(office).values()
    assert (row["cost"], row["notes"]) == ("91.0000", ["materials only"])


def test_tops_count_in_the_month_they_were_finished(works: Works, office: APIClient, kitchen: Any, shelf: Any) -> None:
    later = works.job("Later", "5")
    works.pour(later, (shelf["a"], "100 ml"), at="2026-05-31T15:00:00Z")
    works.finish(later, "2026-06-10")
    earlier = works.job("Earlier", "5")
    works.pour(earlier, (shelf["a"], "100 ml"))
    works.finish(earlier, "2026-05-31")

    found = read(office, URL, group_by="month")
    assert [(row["key"], row["cost"]) for row in found["rows"]] == [("2026-05", "10.0000"), ("2026-06", "101.0000")]
    assert (found["total"]["cost"], found["total"]["area_sqft"]) == ("111.0000", "40.000000")
    assert list(rows(office, **{"from": "2026-06-01", "to": "2026-06-09"})) == [f"Job {kitchen.number}: Kitchen"]


def test_unfinished_tops_stand_apart(works: Works, office: APIClient, kitchen: Any, shelf: Any) -> None:
    going = works.job("Going", "5")
    works.pour(going, (shelf["a"], "100 ml"))

    assert list(rows(office)) == [f"Job {kitchen.number}: Kitchen"]
    report = read(office, URL, state="all", group_by="customer")
    assert [(row["state"], row["cost"]) for row in report["rows"]] == [
        ("finished", "91.0000"),
        ("unfinished", "10.0000"),
    ]
    assert (report["total"]["cost"], report["unfinished_total"]["cost"]) == ("91.0000", "10.0000")
    [row] = rows(office, state="unfinished", group_by="month").values()
    assert (row["key"], row["label"], row["notes"]) == (
        "unfinished",
        "Not finished yet",
        ["materials only", "so far: not finished yet"],
    )


def test_by_kind_of_material_every_row_stands_over_all_the_area(office: APIClient, kitchen: Any) -> None:
    report = read(office, URL, group_by="material_kind")

    assert [(row["key"], row["cost"], row["area_sqft"], row["cost_per_sqft"]) for row in report["rows"]] == [
        ("resin", "51.0000", "30.000000", "1.7000"),
        ("hardener", "40.0000", "30.000000", "1.3333"),
    ]
    assert (report["total"]["cost"], report["total"]["area_sqft"]) == ("91.0000", "30.000000")


def test_free_and_provisional_goods_are_said_also_through_a_mix(works: Works, office: APIClient, kitchen: Any) -> None:
    free = works.lot(works.mica, "100 g", "0", basis=Basis.FREE)
    unpriced = works.lot(works.mica, "100 g", None)
    mixed = blend(material=works.mica, inputs=[Input(free, Decimal(50)), Input(unpriced, Decimal(50))], by=works.owner)
    one, two = works.job("Free", "10"), works.job("Mixed", "10")
    works.pour(one, (free, "5 g"))
    works.pour(two, (mixed.lot, "5 g"), at="2026-06-15T15:00:00Z")
    for job in (one, two):
        works.finish(job, "2026-06-15")

    assert [row["notes"][1:] for row in rows(office).values()] == [
        [],
        ["contains free goods"],
        ["contains free goods", "provisional"],
    ]


def test_a_late_charge_reaches_the_tops(works: Works, office: APIClient, shelf: Any, kitchen: Any) -> None:
    """10.00 of freight on the resin's 1000 mL: 5.10 of it went into the job's 510 mL."""
    delivery = shelf["a"].delivery_line.delivery
    body = {"kind": "freight", "amount": "10", "spread_by": "value", "charged_on": "2026-06-10"}
    assert office.post(f"/api/deliveries/{delivery.pk}/charges/", body).status_code == 201

    [row] = rows(office).values()
    assert (row["cost"], row["waste_cost"]) == ("96.1000", "1.1000")


@pytest.mark.parametrize("group_by", ["job", "piece", "month", "customer", "material_kind"])
def test_totals_are_the_sums_of_the_rows(
    works: Works, office: APIClient, shelf: Any, kitchen: Any, group_by: str
) -> None:
    other = works.job("Other", "7", "3", customer="Ada Lindqvist")
    works.pour([*tops_of(kitchen), *tops_of(other)], (shelf["a"], "123.457 ml"), (shelf["b"], "61 ml", "waste"))
    works.finish(other, "2026-05-30")

    report = read(office, URL, group_by=group_by)
    for figure in ("cost", "waste_cost", "redo_cost"):
        assert sum(Decimal(row[figure]) for row in report["rows"]) == Decimal(report["total"][figure])
    for row in [*report["rows"], report["total"]]:
        assert sum(map(Decimal, row["by_kind"].values())) == Decimal(row["cost"])
        assert sum(map(Decimal, row["waste_by_kind"].values())) == Decimal(row["waste_cost"])
    whole = read(office, URL)["total"]
    assert (report["total"]["cost"], report["total"]["area_sqft"]) == (whole["cost"], whole["area_sqft"])


@pytest.mark.parametrize("group_by", ["job", "piece", "month", "customer", "material_kind"])
def test_every_figure_opens_into_lines_that_sum_to_it(
    works: Works, office: APIClient, shelf: Any, kitchen: Any, group_by: str
) -> None:
    other = works.job("Other", "7", "3", customer="Ada Lindqvist")
    works.pour([*tops_of(kitchen), *tops_of(other)], (shelf["a"], "123.457 ml"), (shelf["b"], "61 ml", "waste"))
    works.pour([*tops_of(kitchen), *tops_of(other)], (shelf["a"], "10 ml"), layer="repair")
    works.undo(works.pour(other, (shelf["a"], "9 ml")))
    works.finish(other, "2026-05-30")
    going = works.job("Going", "5")
    works.pour([*tops_of(going), *tops_of(other)], (shelf["a"], "100 ml"))

    for row in read(office, URL, group_by=group_by, state="all")["rows"]:
        lines = read(office, row["movements"])
        assert lines["cost"] == row["cost"], row["label"]
        for is_redo, figure in ((False, "cost"), (True, "redo_cost")):
            shares = sum(Decimal(line["share"]) for line in lines["lines"] if line["is_redo"] is is_redo)
            assert shares == Decimal(row[figure] or 0) == Decimal(lines[figure])
            assert sum(Decimal(material[figure]) for material in lines["materials"]) == shares


def test_the_ledger_itself_sums_to_a_job_that_shares_no_pour(office: APIClient, kitchen: Any) -> None:
    lines = read(office, "/api/movements/", job=kitchen.pk)["results"]

    assert -sum(Decimal(line["value"]) for line in lines) == Decimal("91.0000")


@pytest.mark.parametrize(
    ("query", "parameter", "words"),
    [
        ({"group_by": "recipe"}, "group_by", "There are: job, piece, month, customer, material_kind."),
        ({"state": "half"}, "state", "There are: finished, unfinished, all."),
        ({"purpose": "fun"}, "purpose", "There are: customer, sample, class, trial, all."),
        ({"from": "June"}, "from", "YYYY-MM-DD"),
        ({"from": "2026-06-02", "to": "2026-06-01"}, "to", "before the first"),
        ({"ordering": "colour"}, "ordering", "Cannot order by colour"),
        ({"colour": "red"}, "colour", "no such parameter"),
    ],
)
def test_a_question_that_cannot_be_answered_says_what_can(
    office: APIClient, query: dict[str, str], parameter: str, words: str
) -> None:
    answer = office.get(URL, query)

    assert answer.status_code == 400
    [error] = answer.json()["errors"]
    assert error["parameter"] == parameter
    assert words in error["detail"]


@pytest.mark.parametrize(
    ("group_by", "key"),
    [("job", "x"), ("job", "0"), ("job", "9" * 19), ("month", "2026-13"), ("material_kind", "gold")],
)
def test_lines_of_no_row_are_refused(office: APIClient, group_by: str, key: str) -> None:
    answer = office.get(f"{URL}movements/", {"group_by": group_by, "key": key})

    assert answer.status_code == 400
    assert answer.json()["errors"][0]["parameter"] == "key"
