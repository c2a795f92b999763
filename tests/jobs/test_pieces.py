"""Pieces are measured by the job's own rule, and their areas never change unseen."""

from decimal import Decimal
from typing import Any

from rest_framework.test import APIClient

from inventory.shop.models import Change, Person, Shop


def test_faces_are_kept_apart_and_summed_by_the_counting_rule(job: dict[str, Any]) -> None:
    """The worked job: top 120 × 25.5 in, front edge 1.5 in, splash 4 in: 21.25 + 1.25 + 3.3333 = 155/6 sq ft."""
    run = job["pieces"][0]

    assert (run["top_sqft"], run["edge_sqft"], run["splash_sqft"]) == ("21.250000", "1.250000", "3.333333")
    assert run["area_sqft"] == "25.833333"


def test_a_job_keeps_the_rule_it_was_made_under(bench: APIClient, job: dict[str, Any], shop: Shop) -> None:
    Shop.objects.update(counts_splash=False)

    old = bench.post(f"/api/jobs/{job['id']}/pieces/", piece("Second run")).json()
    new = bench.post("/api/jobs/", {"customer": job["customer"]["id"], "title": "Bar", "pieces": [piece("Bar")]}).json()

    assert old[0]["area_sqft"] == "25.833333"
    assert new["pieces"][0]["area_sqft"] == "22.500000"
    assert new["counting_rule"] == {
        "counts_top": True,
        "counts_edges": True,
        "counts_splash": False,
        "deducts_cutouts": False,
    }


def test_a_job_may_be_given_its_own_rule(bench: APIClient, shop: Shop) -> None:
    body = {"customer": {"name": "Ines Park"}, "title": "Vanity", "pieces": [piece("Vanity")]}

    tops_only = bench.post(
        "/api/jobs/", {**body, "counting_rule": {"counts_edges": False, "counts_splash": False}}
    ).json()
    nothing = bench.post("/api/jobs/", {**body, "counting_rule": dict.fromkeys(FACES, False)})

    assert tops_only["pieces"][0]["area_sqft"] == "21.250000"
    assert nothing.status_code == 400
    assert nothing.json()["errors"][0]["pointer"] == "/counting_rule"


def test_the_corner_of_an_l_counts_once(bench: APIClient, job: dict[str, Any]) -> None:
    legs = [{"length_in": "120", "width_in": "25.5"}, {"length_in": "60", "width_in": "25.5"}]

    made = bench.post(f"/api/jobs/{job['id']}/pieces/", {"name": "Corner", "legs": legs})

    assert made.status_code == 201
    assert made.json()[0]["area_sqft"] == "27.359375"


def test_cutouts_are_deducted_only_where_the_rule_says_so(bench: APIClient, shop: Shop) -> None:
    sink = {
        "name": "Sink run",
        "length_in": "120",
        "width_in": "24",
        "cutouts": [{"length_in": "36", "width_in": "20"}],
    }
    body = {"customer": {"name": "Ines Park"}, "title": "Sink", "pieces": [sink]}

    kept = bench.post("/api/jobs/", body).json()["pieces"][0]
    deducted = bench.post("/api/jobs/", {**body, "counting_rule": {"deducts_cutouts": True}}).json()["pieces"][0]

    assert (kept["area_sqft"], kept["cutout_sqft"]) == ("20.000000", "5.000000")
    assert deducted["area_sqft"] == "15.000000"


def test_a_count_of_three_makes_three_pieces(bench: APIClient, job: dict[str, Any]) -> None:
    made = bench.post(
        f"/api/jobs/{job['id']}/pieces/", {"name": "Shelf", "count": 3, "length_in": "36", "width_in": "12"}
    ).json()

    assert [top["name"] for top in made] == ["Shelf 1", "Shelf 2", "Shelf 3"]
    assert len({top["number"] for top in made}) == 3
    assert {top["area_sqft"] for top in made} == {"3.000000"}


def test_what_cannot_be_measured_is_told_at_its_place(bench: APIClient, shop: Shop) -> None:
    pieces = [
        {"name": "Good", "area_sqft": "12.5"},
        {"name": "No width", "length_in": "120"},
        {"name": "Twice", "area_sqft": "3", "diameter_in": "12"},
        {"name": "Zero", "length_in": "120", "width_in": "0"},
    ]

    answer = bench.post("/api/jobs/", {"customer": {"name": "Ines Park"}, "title": "Odd", "pieces": pieces})

    assert answer.status_code == 400
    pointers = [error["pointer"] for error in answer.json()["errors"]]
    assert pointers == ["/pieces/1/width_in", "/pieces/2", "/pieces/3/width_in"]
    assert bench.get("/api/jobs/").json()["count"] == 0


def test_a_measure_is_a_decimal_or_a_fraction_and_nothing_else(bench: APIClient, job: dict[str, Any]) -> None:
    def make(width: Any) -> int:
        body = {"name": "Strip", "length_in": "144", "width_in": width}
        return bench.post(f"/api/jobs/{job['id']}/pieces/", body).status_code

    assert [make(width) for width in ("25.5", "25 1/2", "25½", 25.5, 3)] == [201] * 5
    assert [make(width) for width in ("NaN", "1/0", "1e9", "-3", "", None, {}, True, "9" * 40)] == [400] * 9


def test_measuring_again_changes_the_area_and_is_logged(bench: APIClient, job: dict[str, Any], crew: Person) -> None:
    run = job["pieces"][0]

    changed = bench.patch(
        f"/api/pieces/{run['id']}/", {"length_in": "122", "width_in": "25.5", "area_source": "templated"}
    )

    assert changed.status_code == 200
    assert changed.json()["top_sqft"] == "21.604167"
    assert changed.json()["splash_sqft"] == "3.333333"  # given before, still there
    logged = Change.objects.get(noun="piece", record=run["id"], field="area_sqft")
    assert (Decimal(logged.before), Decimal(logged.after), logged.by) == (
        Decimal("25.833333"),
        Decimal("26.1875"),
        crew,
    )


def test_a_new_way_of_giving_the_top_replaces_the_old_one(bench: APIClient, job: dict[str, Any]) -> None:
    table = job["pieces"][1]

    changed = bench.patch(f"/api/pieces/{table['id']}/", {"area_sqft": "12.5"}).json()

    half_a_leg = bench.patch(f"/api/pieces/{table['id']}/", {"legs": [{"length_in": "120"}]})

    assert half_a_leg.json()["errors"][0]["pointer"] == "/legs/0/width_in"
    assert changed["shape"] == {"area_sqft": "12.5"}
    assert changed["area_sqft"] == "12.500000"


def test_two_who_edit_the_same_piece_do_not_overwrite_each_other(bench: APIClient, job: dict[str, Any]) -> None:
    address = f"/api/pieces/{job['pieces'][0]['id']}/"
    tag = bench.get(address)["ETag"]

    first = bench.patch(address, {"name": "Long run"}, headers={"If-Match": tag})
    second = bench.patch(address, {"name": "Short run"}, headers={"If-Match": tag})

    assert (first.status_code, second.status_code) == (200, 412)
    assert bench.get(address).json()["name"] == "Long run"


def test_a_scrapped_piece_loses_its_area_and_gets_it_back(bench: APIClient, job: dict[str, Any]) -> None:
    table = job["pieces"][1]
    whole = bench.get(f"/api/jobs/{job['id']}/").json()["area_sqft"]

    scrapped = bench.post(f"/api/pieces/{table['id']}/scrap/", {"reason": "Dropped on the stairs"})
    again = bench.post(f"/api/pieces/{table['id']}/scrap/", {"reason": "Twice"})
    left = bench.get(f"/api/jobs/{job['id']}/").json()["area_sqft"]
    back = bench.post(f"/api/pieces/{table['id']}/unscrap/")

    assert (whole, left) == ("38.399704", "25.833333")
    assert scrapped.json()["scrapped_reason"] == "Dropped on the stairs"
    assert again.json()["type"] == "/problems/piece-scrapped"
    assert back.json()["is_scrapped"] is False
    assert bench.get(f"/api/jobs/{job['id']}/").json()["area_sqft"] == whole
    assert bench.post(f"/api/pieces/{table['id']}/unscrap/").status_code == 409


FACES = ("counts_top", "counts_edges", "counts_splash")


def piece(name: str) -> dict[str, Any]:
    return {
        "name": name,
        "length_in": "120",
        "width_in": "25.5",
        "edges": [{"length_in": "120", "height_in": "1.5"}],
        "splash": [{"length_in": "120", "height_in": "4"}],
    }
