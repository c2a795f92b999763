"""A plan sets stock aside, is refused where it cannot be had, and can be changed until it is poured."""

from decimal import Decimal
from typing import Any

import pytest
from rest_framework.test import APIClient

from inventory.stock.actions import hold, reject
from inventory.stock.models import Reservation
from tests.pours.conftest import Workshop, usage


def set_aside() -> list[tuple[str, str]]:
    rows = Reservation.objects.order_by("id").values_list("material__code", "quantity")
    return [(code, f"{quantity.normalize():f}") for code, quantity in rows]


def test_a_plan_sets_its_materials_aside_for_the_job_and_day(workshop: Workshop) -> None:
    workshop.lot(workshop.resin, "1 l")
    pour = workshop.planned(
        usage(workshop.resin, "300 ml", bucket=1),
        usage(workshop.resin, "200 ml", bucket=2),
        poured_at="2026-06-20T02:00:00Z",  # still the 19th in Chicago
    )

    row = Reservation.objects.get()
    assert (row.quantity, row.job_key, row.cause) == (Decimal(500), workshop.job.pk, pour["id"])
    assert row.needed_on.isoformat() == "2026-06-19"  # type: ignore[union-attr]
    assert (pour["status"], pour["planned_for"]) == ("planned", "2026-06-20T02:00:00Z")


def test_what_others_have_set_aside_cannot_be_planned_again(workshop: Workshop) -> None:
    workshop.lot(workshop.resin, "1 l")
    workshop.planned(usage(workshop.resin, "700 ml"))

    refused = workshop.plan(usage(workshop.resin, "400 ml"))
    short = workshop.plan(usage(workshop.resin, "400 ml"), allow_short=True)
    fits = workshop.plan(usage(workshop.resin, "100 ml"))

    assert (refused.status_code, refused.json()["type"]) == (422, "/problems/not-enough-stock")
    assert refused.json()["shortages"][0]["missing"] == {"amount": "100", "unit": "ml"}
    assert refused.json()["remedies"][-1]["kind"] == "plan_short"
    assert short.status_code == 201
    assert fits.status_code == 422  # the plan that is short comes first
    assert set_aside() == [("R-1", "700"), ("R-1", "400")]


def test_a_pour_that_happened_takes_what_others_had_set_aside(workshop: Workshop) -> None:
    lot = workshop.lot(workshop.resin, "1 l")
    workshop.planned(usage(workshop.resin, "1 l"))

    answer = workshop.plan(usage(workshop.resin, "400 ml"), complete=True)

    assert answer.status_code == 201
    assert workshop.on_hand(lot) == "600"


def test_a_plan_put_down_after_the_fact_is_not_refused(workshop: Workshop) -> None:
    pour = workshop.planned(usage(workshop.resin, "400 ml"), poured_at="2026-06-14T20:00:00Z")
    refused = workshop.act(pour, "complete")
    workshop.lot(workshop.resin, "1 l")

    done = workshop.act(pour, "complete")

    assert refused.status_code == 422
    assert done.json()["poured_at"] == "2026-06-14T20:00:00Z"


@pytest.mark.parametrize(
    ("why", "slug"), [("expired", "lot-expired"), ("on hold", "lot-on-hold"), ("rejected", "lot-rejected")]
)
def test_an_odd_lot_blocks_planning(workshop: Workshop, office: APIClient, why: str, slug: str) -> None:
    lot = workshop.lot(workshop.resin, "1 l", number="odd", use_by="2026-06-10" if why == "expired" else None)
    if why != "expired":
        {"on hold": hold, "rejected": reject}[why](lot=lot, reason="Cloudy", by=workshop.owner)
    named = usage(workshop.resin, "100 ml", lot=lot.pk)

    crew = workshop.plan({**named, "reason": "Looks fine"})
    owner_without_reason = workshop.plan(named, client=office)
    owner = workshop.plan({**named, "reason": "Tested on a board"}, client=office)

    assert (crew.status_code, crew.json()["type"]) == (422, f"/problems/{slug}")
    assert crew.json()["errors"][0]["pointer"] == "/usages/0/lot"
    assert owner_without_reason.status_code == 422
    assert owner.status_code == (422 if why == "rejected" else 201)


def test_a_lot_that_expires_before_the_day_cannot_be_planned_with(workshop: Workshop) -> None:
    lot = workshop.lot(workshop.resin, "1 l", use_by="2026-06-20")

    def plan(day: str, **fields: Any) -> int:
        return workshop.plan(usage(workshop.resin, "1 ml", **fields), poured_at=f"{day}T15:00:00Z").status_code

    assert (plan("2026-06-20"), plan("2026-06-21")) == (201, 422)
    assert (plan("2026-06-20", lot=lot.pk), plan("2026-06-21", lot=lot.pk)) == (201, 422)


def test_a_changed_plan_sets_aside_what_it_now_needs(workshop: Workshop, bench: APIClient) -> None:
    workshop.lot(workshop.resin, "1 l")
    workshop.lot(workshop.hardener, "1 l")
    pour = workshop.planned(usage(workshop.resin, "900 ml"))
    address = f"/api/pours/{pour['id']}/"

    changed = bench.patch(address, {"usages": [usage(workshop.resin, "1 l"), usage(workshop.hardener, "500 ml")]})
    too_much = bench.patch(address, {"usages": [usage(workshop.resin, "2 l")]})
    renamed = bench.patch(address, {"note": "Client brings the sink", "layer": "seal_coat"})

    assert changed.status_code == 200
    assert too_much.status_code == 422
    assert (renamed.json()["layer"], len(renamed.json()["planned"])) == ("seal_coat", 2)
    assert set_aside() == [("R-1", "1000"), ("H-1", "500")]


def test_two_who_change_the_same_plan_do_not_overwrite_each_other(workshop: Workshop, bench: APIClient) -> None:
    pour = workshop.planned()
    address = f"/api/pours/{pour['id']}/"
    tag = bench.get(address)["ETag"]

    first = bench.patch(address, {"note": "First"}, headers={"If-Match": tag})
    second = bench.patch(address, {"note": "Second"}, headers={"If-Match": tag})

    assert (first.status_code, second.status_code) == (200, 412)


def test_a_cancelled_plan_lets_go_of_its_stock(workshop: Workshop) -> None:
    workshop.lot(workshop.resin, "1 l")
    pour = workshop.planned(usage(workshop.resin, "900 ml"))

    cancelled = workshop.act(pour, "cancel")

    assert (cancelled.status_code, cancelled.json()["status"]) == (200, "cancelled")
    assert set_aside() == []
    assert workshop.act(pour, "cancel").status_code == 409
    assert workshop.act(pour, "complete").json()["remedies"][0]["kind"] == "plan_again"


def test_a_planned_pour_shows_the_lots_it_would_take_and_what_it_lacks(workshop: Workshop, bench: APIClient) -> None:
    lot = workshop.lot(workshop.resin, "300 ml", use_by="2026-12-31", number="A-7")
    pour = workshop.planned(usage(workshop.resin, "500 ml"), allow_short=True)

    proposal = bench.get(f"/api/pours/{pour['id']}/").json()["proposal"]

    assert [(row["lot"], row["lot_number"], row["use_by"], row["quantity"]) for row in proposal["takings"]] == [
        (lot.pk, "A-7", "2026-12-31", {"amount": "300", "unit": "ml"})
    ]
    assert proposal["shortages"][0]["missing"] == {"amount": "200", "unit": "ml"}
    reject(lot=lot, reason="Soft tops", by=workshop.owner)
    named = workshop.planned(usage(workshop.resin, "1 ml", lot=lot.pk), poured_at="2026-06-14T15:00:00Z")
    assert "was rejected" in named["proposal"]["problem"]


def test_the_same_coat_on_the_same_top_that_day_by_another_is_pointed_out(
    workshop: Workshop, office: APIClient, bench: APIClient
) -> None:
    first = workshop.planned(layer="flood_coat")

    mine = workshop.planned(layer="flood_coat")
    theirs = workshop.planned(layer="flood_coat", client=office)
    other_coat = workshop.planned(layer="top_coat", client=office)
    next_day = workshop.planned(layer="flood_coat", client=office, poured_at="2026-06-16T15:00:00Z")

    assert mine["same_pour_as"] == []
    assert [row["id"] for row in theirs["same_pour_as"]] == [first["id"], mine["id"]]
    assert theirs["same_pour_as"][0]["by"]["name"] == "Crew"
    assert other_coat["same_pour_as"] == next_day["same_pour_as"] == []
