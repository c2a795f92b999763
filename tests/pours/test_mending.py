"""Additions, corrections and undoing: what was booked stays on record, and the lots end up as they should."""

from datetime import date
from decimal import Decimal

from rest_framework.test import APIClient

from inventory.purchasing.actions import ChargeGiven, add_charge
from inventory.purchasing.models import Charge
from inventory.stock.models import Movement
from tests.pours.conftest import Workshop, money_and_quantity_by_kind, taken, usage


def test_an_addition_joins_a_completed_pour_without_undoing_it(workshop: Workshop, office: APIClient) -> None:
    lot = workshop.lot(workshop.resin, "1 l", "100")
    pour = workshop.poured(usage(workshop.resin, "300 ml"))

    more = workshop.act(
        pour, "additions", client=office, usages=[usage(workshop.resin, "200 ml")], poured_at="2026-06-15T14:30:00Z"
    ).json()

    assert taken(more) == [(lot.pk, "300"), (lot.pk, "200")]
    assert [row["position"] for row in more["usages"]] == [0, 1]
    assert more["cost"] == "50.0000"
    acts = office.get(f"/api/pours/{pour['id']}/").json()["acts"]
    assert [act["what"] for act in acts] == ["completed", "added"]


def test_only_a_completed_pour_is_added_to_corrected_or_undone(workshop: Workshop) -> None:
    workshop.lot(workshop.resin, "1 l")
    pour = workshop.planned(usage(workshop.resin, "300 ml"))
    lines = [usage(workshop.resin, "1 ml")]

    answers = [
        workshop.act(pour, "additions", usages=lines),
        workshop.act(pour, "correct", usages=lines, reason="x"),
        workshop.act(pour, "reverse", reason="x"),
    ]

    assert {(answer.status_code, answer.json()["type"]) for answer in answers} == {
        (409, "/problems/pour-not-completed")
    }
    workshop.act(pour, "complete")
    assert workshop.act(pour, "reverse", reason="x").status_code == 200
    assert workshop.act(pour, "reverse", reason="x").status_code == 409  # once only


def test_a_correction_takes_back_and_books_anew_in_one_act(workshop: Workshop, office: APIClient) -> None:
    wrong = workshop.lot(workshop.hardener, "1 l", "60", number="H-1", use_by="2026-09-01")
    right = workshop.lot(workshop.hardener, "1 l", "90", number="H-2", use_by="2026-10-01")
    pour = workshop.poured(usage(workshop.hardener, "500 ml"))

    mended = workshop.act(
        pour,
        "correct",
        client=office,
        usages=[usage(workshop.hardener, "400 ml", lot=right.pk)],
        reason="Wrong label read",
    ).json()

    assert taken(mended) == [(right.pk, "400")]
    assert (mended["cost"], mended["status"]) == ("36.0000", "completed")
    assert (workshop.on_hand(wrong), workshop.worth(wrong)) == ("1000", "60.0000")
    assert workshop.on_hand(right) == "600"
    detail = office.get(f"/api/pours/{pour['id']}/").json()
    assert [(act["what"], act["reason"]) for act in detail["acts"]] == [
        ("completed", ""),
        ("corrected", "Wrong label read"),
    ]
    assert [(row["lot"], row["value"]) for row in detail["taken_back"]] == [(wrong.pk, "0.0000")]
    assert money_and_quantity_by_kind(pour) == {"used": Decimal("36.0000")}


def test_a_correction_may_use_what_it_takes_back(workshop: Workshop) -> None:
    lot = workshop.lot(workshop.resin, "1 l")
    pour = workshop.poured(usage(workshop.resin, "1 l"))

    more = workshop.act(pour, "correct", usages=[usage(workshop.resin, "1200 ml")], reason="More")
    less = workshop.act(pour, "correct", usages=[usage(workshop.resin, "900 ml")], reason="Less")

    assert more.json()["shortages"][0]["there"] == {"amount": "1000", "unit": "ml"}
    assert taken(less.json()) == [(lot.pk, "900")]
    assert workshop.on_hand(lot) == "100"


def test_a_corrected_left_over_replaces_the_first(workshop: Workshop) -> None:
    lot = workshop.lot(workshop.resin, "1 l")
    pour = workshop.poured(usage(workshop.resin, "400 ml"), leftover={"quantity": "100 ml", "went_to": "bin"})

    mended = workshop.act(
        pour,
        "correct",
        usages=[usage(workshop.resin, "400 ml")],
        leftover={"quantity": "40 ml", "went_to": "bin"},
        reason="Measured the cup",
    ).json()

    assert [(row["quantity"]["amount"], row["is_waste"]) for row in mended["usages"]] == [("360", False), ("40", True)]
    assert workshop.on_hand(lot) == "600"


def test_undoing_restores_quantity_and_money_with_every_later_charge(workshop: Workshop, office: APIClient) -> None:
    lot = workshop.lot(workshop.resin, "1 l", "100")
    pour = workshop.poured(usage(workshop.resin, "250 ml"))
    freight = ChargeGiven("freight", Decimal("20"), Charge.SpreadBy.VALUE)
    add_charge(delivery=lot.delivery_line.delivery, charge=freight, charged_on=date(2026, 6, 15), by=workshop.owner)

    charged = office.get(f"/api/pours/{pour['id']}/").json()
    undone = workshop.act(pour, "reverse", client=office, reason="Typed on the wrong job").json()

    assert (charged["cost"], charged["usages"][0]["value"]) == ("30.0000", "30.0000")
    assert [act["what"] for act in charged["acts"]] == ["completed", "cost_changed"]
    assert (undone["status"], undone["reason"], undone["cost"]) == ("reversed", "Typed on the wrong job", "0.0000")
    assert (workshop.on_hand(lot), workshop.worth(lot)) == ("1000", "120.0000")
    back = Movement.objects.filter(cause=pour["id"]).latest("pk")
    assert back.happened_at == Movement.objects.filter(cause=pour["id"]).earliest("pk").happened_at


def test_of_a_completed_pour_only_what_was_seen_can_be_changed(workshop: Workshop, bench: APIClient) -> None:
    lot = workshop.lot(workshop.resin, "1 l")
    pour = workshop.poured(usage(workshop.resin, "250 ml"))
    address = f"/api/pours/{pour['id']}/"

    seen = bench.patch(address, {"note": "Bubbles at the sink", "ticks": {"torch": True}})
    amounts = bench.patch(address, {"usages": [usage(workshop.resin, "1 ml")]})
    coat = bench.patch(address, {"layer": "primer"})

    assert (seen.status_code, seen.json()["note"]) == (200, "Bubbles at the sink")
    assert (amounts.status_code, amounts.json()["type"]) == (409, "/problems/pour-not-planned")
    assert coat.status_code == 409
    assert workshop.on_hand(lot) == "750"
