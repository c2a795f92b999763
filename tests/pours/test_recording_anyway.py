"""A pour that happened can always be recorded, whatever the book says."""

from typing import Any

import pytest
from rest_framework.test import APIClient

from inventory.catalog.models import Material
from inventory.stock.actions import hold
from tests.pours.conftest import Workshop, money_and_quantity_by_kind, taken, usage


def test_a_refusal_says_what_is_short_by_how_much_and_what_would_help(workshop: Workshop) -> None:
    workshop.lot(workshop.resin, "800 ml", number="A-1")
    workshop.lot(workshop.hardener, "100 ml", number="H-1")
    old = workshop.lot(workshop.resin, "300 ml", number="A-0", use_by="2026-06-01")
    pour = workshop.planned()

    answer = workshop.act(pour, "complete", usages=[usage(workshop.resin, "1 l"), usage(workshop.hardener, "500 ml")])

    body = answer.json()
    assert (answer.status_code, body["type"]) == (422, "/problems/not-enough-stock")
    assert body["detail"] == (
        "Table resin A: 200 ml short; 1000 ml wanted, 800 ml there. "
        "Table hardener B: 400 ml short; 500 ml wanted, 100 ml there."
    )
    assert [error["pointer"] for error in body["errors"]] == ["/usages/0", "/usages/1"]
    assert body["shortages"][0]["missing"] == {"amount": "200", "unit": "ml"}
    assert [(remedy["kind"], remedy.get("lot")) for remedy in body["remedies"]] == [
        ("other_lot", old.pk),
        ("found_more", None),
        ("receive_first", None),
    ]
    assert {row["lot_number"] for row in body["remedies"][1]["lots"]} == {"A-0", "A-1", "H-1"}
    assert body["remedies"][2]["received_on"] == "2026-06-15"
    assert workshop.act(pour, "complete", usages=[]).status_code == 200  # nothing was written by the refusal


def test_what_was_found_is_counted_up_in_the_same_act(workshop: Workshop, office: APIClient) -> None:
    lot = workshop.lot(workshop.resin, "800 ml", "80")
    pour = workshop.planned(usage(workshop.resin, "700 ml"))

    done = workshop.act(
        pour,
        "complete",
        client=office,
        usages=[usage(workshop.resin, "1 l")],
        found=[{"lot": lot.pk, "quantity": "200 ml", "reason": "The pail was fuller than its label"}],
    ).json()

    assert taken(done) == [(lot.pk, "1000")]
    assert done["cost"] == "100.0000"  # the find came in at the lot's unit cost
    assert (workshop.on_hand(lot), workshop.worth(lot)) == ("0", "0.0000")
    acts = office.get(f"/api/pours/{done['id']}/").json()["acts"]
    assert [(act["what"], act["reason"]) for act in acts] == [("completed", "The pail was fuller than its label")]


def test_undoing_a_pour_takes_its_find_out_again(workshop: Workshop) -> None:
    lot = workshop.lot(workshop.resin, "800 ml", "80")
    pour = workshop.poured(
        usage(workshop.resin, "1 l"), found=[{"lot": lot.pk, "quantity": "200 ml", "reason": "Fuller"}]
    )

    undone = workshop.act(pour, "reverse", reason="Wrong job")

    assert undone.status_code == 200
    assert (workshop.on_hand(lot), workshop.worth(lot)) == ("800", "80.0000")


def test_goods_not_booked_yet_are_booked_for_the_day_of_the_pour(workshop: Workshop) -> None:
    pour = workshop.planned()
    wants = {"usages": [usage(workshop.resin, "500 ml")], "poured_at": "2026-06-14T18:00:00Z"}
    refused = workshop.act(pour, "complete", **wants)

    remedy = next(one for one in refused.json()["remedies"] if one["kind"] == "receive_first")
    lot = workshop.lot(workshop.resin, "1 l", on=remedy["received_on"])

    assert taken(workshop.act(pour, "complete", **wants).json()) == [(lot.pk, "500")]


@pytest.mark.parametrize("why", ["expired", "on hold"])
def test_an_odd_lot_that_went_in_is_recorded_and_waits_for_the_owners_reason(
    workshop: Workshop, bench: APIClient, office: APIClient, why: str
) -> None:
    lot = odd_lot(workshop, why)
    pour = workshop.poured(usage(workshop.resin, "100 ml", lot=lot))
    waiting = bench.get("/api/pours/?needs_owner_reason=true").json()["results"]

    by_crew = workshop.act(pour, "explain", reason="Looked fine")
    by_owner = workshop.act(pour, "explain", client=office, reason="Tested on a board first")
    twice = workshop.act(pour, "explain", client=office, reason="Again")

    row = pour["usages"][0]
    assert (row["was_expired"], row["lot_status"]) == ((True, "usable") if why == "expired" else (False, "on_hold"))
    assert [one["id"] for one in waiting] == [pour["id"]]
    assert by_crew.status_code == 403
    assert (by_owner.json()["needs_owner_reason"], by_owner.json()["owner_reason"]) == (
        False,
        "Tested on a board first",
    )
    assert (twice.status_code, twice.json()["type"]) == (409, "/problems/nothing-to-explain")


def test_the_owners_own_reason_beside_the_lot_is_enough(workshop: Workshop, office: APIClient) -> None:
    lot = odd_lot(workshop, "expired")

    with_reason = workshop.poured(usage(workshop.resin, "1 ml", lot=lot, reason="Tested"), client=office)
    without = workshop.poured(usage(workshop.resin, "1 ml", lot=lot), client=office)
    crews = workshop.poured(usage(workshop.resin, "1 ml", lot=lot, reason="Tested"))

    assert (with_reason["needs_owner_reason"], with_reason["owner_reason"]) == (False, "Tested")
    assert without["needs_owner_reason"] is True
    assert crews["needs_owner_reason"] is True


# Left-over: 1000 ml of A at 1.13 and 500 ml of B at 0.96 g/ml, and 30 g of mica: 1640 g in the bucket.
BUCKET = [("resin", "1000 ml"), ("hardener", "500 ml"), ("mica", "30 g")]


def test_left_over_is_one_number_split_over_all_that_was_in_the_bucket(workshop: Workshop) -> None:
    pour = bucket_poured(workshop, leftover={"quantity": "410 g", "went_to": "bin"})  # a quarter of 1640 g

    rows = [(row["material_code"], row["quantity"]["amount"], row["is_waste"]) for row in pour["usages"]]
    assert rows == [
        ("R-1", "750", False),
        ("R-1", "250", True),
        ("H-1", "375", False),
        ("H-1", "125", True),
        ("M-1", "22.5", False),
        ("M-1", "7.5", True),
    ]
    assert set(money_and_quantity_by_kind(pour)) == {"used", "wasted"}


def test_left_over_by_volume_counts_the_liquids(workshop: Workshop) -> None:
    pour = bucket_poured(workshop, leftover={"quantity": "0.5 l", "went_to": "bin"})  # a third of 1.5 l

    wasted = {row["material_code"]: row["quantity"]["amount"] for row in pour["usages"] if row["is_waste"]}
    assert wasted == {"R-1": "333.333333", "H-1": "166.666667", "M-1": "10"}


def test_left_over_of_one_bucket_leaves_the_other_alone(workshop: Workshop) -> None:
    fill(workshop)
    pour = workshop.poured(
        usage(workshop.resin, "100 ml", bucket=1),
        usage(workshop.resin, "100 ml", bucket=2),
        leftover={"quantity": "50 ml", "went_to": "bin", "bucket": 2},
    )

    assert [(row["bucket"], row["quantity"]["amount"]) for row in pour["usages"]] == [(1, "100"), (2, "50"), (2, "50")]


def test_left_over_poured_on_another_piece_becomes_that_pours(workshop: Workshop, office: APIClient) -> None:
    board = workshop.planned(pieces=workshop.tops(workshop.make_job("Board", "Sample")), layer="accent")
    early = {"quantity": "410 g", "went_to": board["id"]}
    fill(workshop)
    lines = [usage(getattr(workshop, name), quantity) for name, quantity in BUCKET]
    pour = workshop.planned()
    refused = workshop.act(pour, "complete", usages=lines, leftover=early)
    workshop.act(board, "complete", usages=[])

    done = workshop.act(pour, "complete", client=office, usages=lines, leftover=early).json()
    board = office.get(f"/api/pours/{board['id']}/").json()

    assert (refused.status_code, refused.json()["type"]) == (409, "/problems/pour-not-completed")
    assert [row["quantity"]["amount"] for row in done["usages"]] == ["750", "375", "22.5"]
    assert [(row["quantity"]["amount"], row["given_by"]) for row in board["usages"]] == [
        ("250", done["id"]),
        ("125", done["id"]),
        ("7.5", done["id"]),
    ]
    assert float(done["cost"]) == pytest.approx(3 * float(board["cost"]), abs=0.001)
    assert workshop.act(board, "reverse", reason="Mistake").json()["type"] == "/problems/took-left-over"
    assert workshop.act(done, "reverse", reason="Mistake").status_code == 200
    assert office.get(f"/api/pours/{board['id']}/").json()["usages"] == []
    assert workshop.act(board, "reverse", reason="Mistake").status_code == 200


def test_more_cannot_be_left_than_was_mixed(workshop: Workshop) -> None:
    fill(workshop)
    pour = workshop.planned()
    lines = [usage(getattr(workshop, name), quantity) for name, quantity in BUCKET]

    def leave(quantity: str, **fields: Any) -> Any:
        return workshop.act(pour, "complete", usages=lines, leftover={"quantity": quantity, "went_to": "bin"} | fields)

    too_much = leave("1700 g")
    assert (too_much.status_code, too_much.json()["type"]) == (422, "/problems/left-over-too-large")
    assert "1640 g" in too_much.json()["detail"]
    assert leave("3 ft").json()["errors"][0]["pointer"] == "/leftover/quantity"
    assert leave("1 g", bucket=7).json()["errors"][0]["pointer"] == "/leftover"
    assert leave("1 g", went_to=pour["id"]).json()["errors"][0]["pointer"] == "/leftover/went_to"
    assert leave("1 g", went_to=999_999).status_code == 400
    everything = leave("1640 g")
    assert {row["is_waste"] for row in everything.json()["usages"]} == {True}


def odd_lot(workshop: Workshop, why: str) -> int:
    lot = workshop.lot(workshop.resin, "900 ml", number="odd", use_by="2026-06-01" if why == "expired" else None)
    if why == "on hold":
        hold(lot=lot, reason="Cloudy", by=workshop.owner)
    return lot.pk


def fill(workshop: Workshop) -> None:
    materials: list[Material] = [workshop.resin, workshop.hardener, workshop.mica]
    for material, quantity in zip(materials, ("2 l", "2 l", "100 g"), strict=True):
        workshop.lot(material, quantity)


def bucket_poured(workshop: Workshop, **body: Any) -> dict[str, Any]:
    fill(workshop)
    return workshop.poured(*(usage(getattr(workshop, name), quantity) for name, quantity in BUCKET), **body)
