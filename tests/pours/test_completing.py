"""What a completed pour records, and what it costs."""

from decimal import Decimal
from typing import Any

import pytest
from rest_framework.test import APIClient

from inventory.jobs.actions import add_customer
from inventory.shop.models import Person
from inventory.stock.models import Movement, Posting, Reservation
from tests.pours.conftest import Workshop, money_and_quantity_by_kind, taken, usage


def test_completing_as_planned_takes_the_plan_and_says_it_was_assumed(workshop: Workshop) -> None:
    resin, hardener = workshop.lot(workshop.resin, "4 l"), workshop.lot(workshop.hardener, "2 l")
    pour = workshop.planned(usage(workshop.resin, "32 fl oz"), usage(workshop.hardener, "16 fl oz"))

    done = workshop.act(pour, "complete").json()

    assert done["status"] == "completed"
    assert taken(done) == [(resin.pk, "946.352946"), (hardener.pk, "473.176473")]
    assert [row["provenance"] for row in done["usages"]] == ["assumed", "assumed"]
    assert [(row["typed_amount"], row["typed_unit"]) for row in done["usages"]] == [("32", "fl_oz"), ("16", "fl_oz")]
    assert done["poured_at"] == "2026-06-15T15:00:00Z"
    assert not Reservation.objects.exists()


def test_amounts_that_are_given_replace_the_plan_whole(workshop: Workshop) -> None:
    resin, mica = workshop.lot(workshop.resin, "4 l"), workshop.lot(workshop.mica, "100 g")
    pour = workshop.planned(usage(workshop.resin, "1 l"))

    done = workshop.act(pour, "complete", usages=[usage(workshop.mica, "2 tsp")]).json()

    assert taken(done) == [(mica.pk, "3.4")]
    assert [row["quantity"]["amount"] for row in done["planned"]] == ["1000"]
    assert (done["usages"][0]["provenance"], done["usages"][0]["grams_per_tsp"]) == ("typed", "1.700000")
    assert workshop.on_hand(resin) == "4000"


def test_money_goes_in_proportion_and_crew_sees_none_of_it(workshop: Workshop, office: APIClient) -> None:
    workshop.lot(workshop.resin, "3 l", "10")

    third = workshop.poured(usage(workshop.resin, "1 l"))
    rest = workshop.poured(usage(workshop.resin, "2 l"), client=office)

    assert "cost" not in third
    assert "value" not in third["usages"][0]
    assert (rest["cost"], rest["usages"][0]["value"]) == ("6.6667", "6.6667")
    assert office.get(f"/api/pours/{third['id']}/").json()["cost"] == "3.3333"


def test_a_container_weighed_before_and_after_gives_what_was_used(workshop: Workshop) -> None:
    can = workshop.material("C-1", "Slate base spray", "spray_can", "g", measures="can = 340 g")
    lot = workshop.lot(can, "680 g")
    weighed = {"material": can.pk, "weighed": {"before": "435 g", "after": "350 g"}}

    by_scale = workshop.poured(weighed)
    by_share = workshop.poured(usage(can, "1/4 can"))
    backwards = workshop.act(
        workshop.planned(), "complete", usages=[{"material": can.pk, "weighed": {"before": "1 g", "after": "2 g"}}]
    )

    assert taken(by_scale) == taken(by_share) == [(lot.pk, "85")]
    row = by_scale["usages"][0]
    assert (row["provenance"], row["weighed_before"], row["weighed_after"]) == ("weighed", "435 g", "350 g")
    assert (by_share["usages"][0]["typed_amount"], by_share["usages"][0]["typed_unit"]) == ("0.25", "can")
    assert (backwards.status_code, backwards.json()["errors"][0]["pointer"]) == (400, "/usages/0/weighed")


def test_three_thirds_of_a_can_empty_it(workshop: Workshop) -> None:
    can = workshop.material("C-1", "Slate base spray", "spray_can", "g", measures="can = 340 g")
    lot = workshop.lot(can, "340 g", "9.99")

    for _ in range(3):
        workshop.poured(usage(can, "1/3 can"))

    assert (workshop.on_hand(lot), workshop.worth(lot)) == ("0", "0.0000")


def test_tape_paint_and_solvent_go_in_beside_the_resin(workshop: Workshop) -> None:
    tape = workshop.material("T-1", "Edge tape", "consumable", "ft", tracks_lots=False)
    paint = workshop.material("P-1", "Grey base paint", "paint", "ml")
    for material, quantity in ((tape, "300 ft"), (paint, "1 qt")):
        workshop.lot(material, quantity)

    pour = workshop.poured(usage(tape, "12 ft"), usage(paint, "8 fl oz"))

    assert [row["quantity"] for row in pour["usages"]] == [
        {"amount": "12", "unit": "ft"},
        {"amount": "236.588236", "unit": "ml"},
    ]


def test_waste_is_posted_as_wasted_and_costs_too(workshop: Workshop, office: APIClient) -> None:
    workshop.lot(workshop.resin, "1 l", "50")

    pour = workshop.poured(
        usage(workshop.resin, "600 ml"),
        usage(workshop.resin, "400 ml", is_waste=True, reason="Tipped over"),
        client=office,
    )

    assert money_and_quantity_by_kind(pour) == {"used": Decimal("30.0000"), "wasted": Decimal("20.0000")}
    assert pour["cost"] == "50.0000"


def test_an_amount_without_the_figure_it_needs_says_which(workshop: Workshop) -> None:
    paste = workshop.material("D-1", "White paste", "paste", "g")
    workshop.lot(paste, "100 g")

    answer = workshop.act(workshop.planned(), "complete", usages=[usage(paste, "10 ml")])

    body = answer.json()
    assert (answer.status_code, body["type"], body["missing"]) == (422, "/problems/unit-mismatch", "density_g_per_ml")
    assert body["errors"][0]["pointer"] == "/usages/0/quantity"


def test_later_edits_of_a_density_change_nothing_that_was_posted(workshop: Workshop, office: APIClient) -> None:
    workshop.lot(workshop.resin, "1 l")
    pour = workshop.poured(usage(workshop.resin, "113 g"))

    changed = office.patch(f"/api/materials/{workshop.resin.pk}/", {"density_g_per_ml": "2"})
    again = office.get(f"/api/pours/{pour['id']}/").json()

    assert changed.status_code == 200
    assert (again["usages"][0]["quantity"]["amount"], again["usages"][0]["density_g_per_ml"]) == ("100", "1.130000")


def test_several_people_and_several_jobs_pieces_share_one_pour(
    workshop: Workshop, bench: APIClient, owner: Person, crew: Person
) -> None:
    other = workshop.make_job("Bar", "Bar top")
    first, second = workshop.tops()[0], workshop.tops(other)[0]

    def plan(*shares: Any) -> Any:
        pieces = [
            {"piece": piece, "share_percent": share} for piece, share in zip((first, second), shares, strict=True)
        ]
        return workshop.plan(pieces=pieces, people=[owner.pk, crew.pk])

    good = plan("60", "40")
    assert good.status_code == 201
    assert [row["share_percent"] for row in good.json()["pieces"]] == ["60.000000", "40.000000"]
    assert [person["name"] for person in good.json()["people"]] == ["Owner", "Crew"]
    assert plan("60", "39.99").json()["errors"][0]["pointer"] == "/pieces"
    assert plan("60", None).status_code == 400
    assert plan("-1", "101").status_code == 400
    assert workshop.plan(pieces=[first, first]).json()["errors"][0]["pointer"] == "/pieces/1"
    assert workshop.plan(people=[999_999]).json()["errors"][0]["pointer"] == "/people/0"


def test_conditions_and_ticks_keep_how_they_are_known_and_drop_the_untouched(workshop: Workshop) -> None:
    pour = workshop.poured(
        conditions={
            "air": {"value": "72", "unit": "F", "provenance": "weighed"},
            "humidity": {"value": "45", "unit": "percent", "provenance": "assumed"},
        },
        ticks={"sanded": True, "mixing_minutes": {"value": 4}},
    )

    assert pour["conditions"] == {"air": {"value": "72", "unit": "F", "provenance": "weighed"}}
    assert pour["ticks"] == {
        "sanded": {"value": True, "provenance": "typed"},
        "mixing_minutes": {"value": 4, "provenance": "typed"},
    }


def test_a_pour_that_nobody_planned_is_recorded_in_one_call(workshop: Workshop) -> None:
    lot = workshop.lot(workshop.resin, "1 l")

    answer = workshop.plan(usage(workshop.resin, "250 ml"), complete=True, poured_at="2026-06-14T20:00:00-05:00")

    assert answer.status_code == 201
    pour = answer.json()
    assert (pour["status"], pour["poured_at"], pour["planned"]) == ("completed", "2026-06-15T01:00:00Z", [])
    assert taken(pour) == [(lot.pk, "250")]


def test_one_that_cannot_be_recorded_leaves_nothing(workshop: Workshop, bench: APIClient) -> None:
    workshop.lot(workshop.resin, "1 l")

    answer = workshop.plan(usage(workshop.resin, "250 ml"), usage(workshop.hardener, "1 ml"), complete=True)

    assert answer.status_code == 422
    assert bench.get("/api/pours/").json()["count"] == 0
    assert not Movement.objects.filter(kind="used").exists()


def test_nothing_lies_in_the_future(workshop: Workshop) -> None:
    workshop.lot(workshop.resin, "1 l")
    pour = workshop.planned(usage(workshop.resin, "250 ml"))

    ahead = workshop.act(pour, "complete", poured_at="2026-06-15T15:06:00Z")
    just_now = workshop.act(pour, "complete", poured_at="2026-06-15T15:04:00Z")

    assert (ahead.status_code, ahead.json()["type"]) == (422, "/problems/in-the-future")
    assert just_now.status_code == 200


def test_a_pour_is_completed_once(workshop: Workshop) -> None:
    lot = workshop.lot(workshop.resin, "1 l")
    pour = workshop.planned(usage(workshop.resin, "250 ml"))

    first = workshop.act(pour, "complete")
    second = workshop.act(pour, "complete")

    assert first.status_code == 200
    assert (second.status_code, second.json()["type"]) == (409, "/problems/pour-not-planned")
    assert second.json()["remedies"][0]["kind"] == "correct"
    assert workshop.on_hand(lot) == "750"


def test_completed_twice_with_one_key_it_is_posted_once(workshop: Workshop) -> None:
    workshop.lot(workshop.resin, "1 l")
    pour = workshop.planned(usage(workshop.resin, "250 ml"))

    def complete(**body: Any) -> Any:
        return workshop.bench.post(f"/api/pours/{pour['id']}/complete/", body, headers={"Idempotency-Key": "tap-1"})

    first, again, other = complete(), complete(), complete(note="different")

    assert (first.status_code, again.json()) == (200, first.json())
    assert other.status_code == 422
    assert Posting.objects.filter(kind="used").count() == 1


def test_a_pour_without_a_top_or_of_an_unknown_coat_is_refused(workshop: Workshop) -> None:
    assert workshop.plan(pieces=[]).json()["errors"][0]["pointer"] == "/pieces"
    assert workshop.plan(pieces=[999_999]).json()["errors"][0]["pointer"] == "/pieces/0"
    assert workshop.plan(layer="glaze").json()["errors"][0]["pointer"] == "/layer"
    assert (
        workshop.plan({"material": 999_999, "quantity": "1 ml"}).json()["errors"][0]["pointer"] == "/usages/0/material"
    )
    assert workshop.plan({"material": workshop.resin.pk}).status_code == 400
    assert workshop.plan(usage(workshop.resin, "3 oz")).status_code == 400
    assert workshop.bench.post("/api/pours/999999/complete/", {}).status_code == 404


def test_a_customer_of_a_poured_job_is_not_deleted(workshop: Workshop, office: APIClient) -> None:
    workshop.poured()
    nobody = add_customer(name="Ines Park", by=workshop.owner)

    assert office.delete(f"/api/jobs/{workshop.job.pk}/").json()["type"] == "/problems/in-use"
    assert office.delete(f"/api/pieces/{workshop.tops()[0]}/").status_code == 409
    assert office.delete(f"/api/customers/{nobody.pk}/").status_code == 204


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("pieces", [{"piece": 1, "share": "60"}]),
        ("pieces", [{"share_percent": "60"}]),
        ("pieces", [None]),
        ("ticks", {"sanded": {"value": True, "by": "hand"}}),
        ("ticks", {"sanded": {"value": [1]}}),
        ("ticks", {"sanded": None}),
        ("ticks", ["sanded"]),
        ("ticks", {"s" * 41: True}),
        ("conditions", {str(number): 1 for number in range(41)}),
        ("conditions", {"air": {"value": "72", "unit": "F", "provenance": "guessed"}}),
        ("people", ["nobody"]),
        ("usages", [{"material": 1, "quantity": "1 ml", "weighed": {"before": "2 g", "after": "1 g"}}]),
        ("usages", [{"material": 1, "quantity": "1 ml", "place": 1}]),
        ("usages", [{"material": 1, "quantity": {"amount": "1e999", "unit": "ml"}}]),
        ("usages", [{"material": 1, "quantity": 5}]),
        ("leftover", {"quantity": "1 ml", "went_to": "shelf"}),
        ("found", [{"lot": 1, "quantity": "0 ml", "reason": "none"}]),
    ],
)
def test_a_bad_field_is_told_where_it_is(workshop: Workshop, field: str, value: Any) -> None:
    answer = workshop.plan(complete=True, **{field: value})

    assert answer.status_code == 400
    assert answer.json()["errors"][0]["pointer"].startswith(f"/{field}")
