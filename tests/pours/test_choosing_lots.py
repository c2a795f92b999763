"""From which lots a pour takes, and which it never takes from by itself."""

from typing import Any

from inventory.stock.actions import hold, reject, release
from tests.pours.conftest import Workshop, taken, usage


def test_an_expired_lot_is_never_chosen(workshop: Workshop) -> None:
    old = workshop.lot(workshop.resin, "900 ml", number="old", use_by="2026-06-10")
    new = workshop.lot(workshop.resin, "900 ml", number="new", use_by="2027-01-31")

    last_good_day = workshop.poured(usage(workshop.resin, "100 ml"), poured_at="2026-06-10T23:00:00-05:00")
    day_after = workshop.poured(usage(workshop.resin, "100 ml"), poured_at="2026-06-11T00:00:00-05:00")

    assert taken(last_good_day) == [(old.pk, "100")]
    assert taken(day_after) == [(new.pk, "100")]


def test_a_lot_on_hold_is_never_chosen(workshop: Workshop) -> None:
    first = workshop.lot(workshop.resin, "900 ml", number="first", use_by="2026-08-01")
    second = workshop.lot(workshop.resin, "900 ml", number="second", use_by="2026-09-01")

    hold(lot=first, reason="Cloudy", by=workshop.owner)
    while_held = workshop.poured(usage(workshop.resin, "100 ml"))
    release(lot=first, reason="Warmed clear", by=workshop.owner)
    after = workshop.poured(usage(workshop.resin, "100 ml"))

    assert taken(while_held) == [(second.pk, "100")]
    assert taken(after) == [(first.pk, "100")]


def test_the_earliest_use_by_goes_first_and_the_next_gives_the_rest(workshop: Workshop) -> None:
    late = workshop.lot(workshop.resin, "500 ml", use_by="2026-12-01")
    early = workshop.lot(workshop.resin, "300 ml", use_by="2026-09-01")
    ageless = workshop.lot(workshop.resin, "500 ml")

    pour = workshop.poured(usage(workshop.resin, "900 ml"))

    assert taken(pour) == [(early.pk, "300"), (late.pk, "500"), (ageless.pk, "100")]
    assert [row["typed_amount"] for row in pour["usages"]] == ["900"] * 3


def test_a_colour_matched_material_keeps_to_the_lot_that_the_job_used(workshop: Workshop) -> None:
    first = workshop.lot(workshop.mica, "50 g", use_by="2026-09-01")
    workshop.poured(usage(workshop.mica, "10 g"))
    sooner = workshop.lot(workshop.mica, "50 g", use_by="2026-07-01")
    other_job = workshop.make_job("Bar", "Bar top")

    same_job = workshop.poured(usage(workshop.mica, "10 g"))
    elsewhere = workshop.planned(pieces=workshop.tops(other_job))
    elsewhere = workshop.act(elsewhere, "complete", usages=[usage(workshop.mica, "10 g")]).json()

    assert taken(same_job) == [(first.pk, "10")]
    assert taken(elsewhere) == [(sooner.pk, "10")]


def test_a_colour_matched_material_takes_the_lot_that_serves_the_whole_job(workshop: Workshop) -> None:
    workshop.lot(workshop.mica, "15 g", use_by="2026-07-01")
    enough = workshop.lot(workshop.mica, "50 g", use_by="2026-09-01")
    workshop.planned(usage(workshop.mica, "20 g"), layer="accent")

    pour = workshop.poured(usage(workshop.mica, "10 g"))

    assert taken(pour) == [(enough.pk, "10")]


def test_a_named_lot_is_honoured_and_not_chosen_away(workshop: Workshop) -> None:
    early = workshop.lot(workshop.resin, "300 ml", use_by="2026-09-01")
    late = workshop.lot(workshop.resin, "300 ml", use_by="2026-12-01")

    pour = workshop.poured(usage(workshop.resin, "200 ml"), usage(workshop.resin, "250 ml", lot=early.pk))

    assert taken(pour) == [(early.pk, "50"), (late.pk, "150"), (early.pk, "250")]
    assert [row["lot_provenance"] for row in pour["usages"]] == ["assumed", "assumed", "typed"]


def test_nothing_is_used_before_it_was_received(workshop: Workshop) -> None:
    lot = workshop.lot(workshop.resin, "900 ml", on="2026-06-10")
    pour = workshop.planned()

    def complete(poured_at: str, **fields: Any) -> Any:
        return workshop.act(pour, "complete", poured_at=poured_at, usages=[usage(workshop.resin, "1 ml", **fields)])

    chosen = complete("2026-06-09T12:00:00-05:00")
    named = complete("2026-06-09T23:59:59-05:00", lot=lot.pk)
    on_the_day = complete("2026-06-10T00:00:00-05:00", lot=lot.pk)

    assert (chosen.status_code, chosen.json()["type"]) == (422, "/problems/not-enough-stock")
    assert [remedy["kind"] for remedy in chosen.json()["remedies"]] == ["change_time", "found_more", "receive_first"]
    assert (named.status_code, named.json()["type"]) == (422, "/problems/used-before-received")
    assert on_the_day.status_code == 200


def test_a_backdated_pour_takes_at_most_the_lowest_balance_since(workshop: Workshop) -> None:
    small = workshop.lot(workshop.resin, "500 ml", use_by="2026-08-01", on="2026-06-01")
    workshop.poured(usage(workshop.resin, "400 ml"), poured_at="2026-06-12T12:00:00Z")
    big = workshop.lot(workshop.resin, "500 ml", use_by="2026-09-01", on="2026-06-01")

    pour = workshop.poured(usage(workshop.resin, "300 ml"), poured_at="2026-06-11T12:00:00Z")

    assert taken(pour) == [(small.pk, "100"), (big.pk, "200")]


def test_a_lot_rejected_later_may_be_named_for_a_pour_before(workshop: Workshop) -> None:
    lot = workshop.lot(workshop.hardener, "900 ml", number="H-77")
    reject(lot=lot, reason="Soft tops", by=workshop.owner)
    pour = workshop.planned()

    def complete(poured_at: str) -> Any:
        named = usage(workshop.hardener, "100 ml", lot=lot.pk)
        return workshop.act(pour, "complete", poured_at=poured_at, usages=[named])

    after = complete("2026-06-15T15:00:00Z")
    before = complete("2026-06-14T15:00:00Z")

    assert (after.status_code, after.json()["type"]) == (422, "/problems/lot-rejected")
    assert before.status_code == 200
    assert before.json()["usages"][0]["lot_status"] == "usable"
    assert before.json()["needs_owner_reason"] is False


def test_what_lies_elsewhere_is_told_and_can_be_named_with_its_place(workshop: Workshop) -> None:
    from inventory.stock.actions import add_place

    van = add_place(name="Van", by=workshop.owner)
    lot = workshop.lot(workshop.resin, "900 ml", place=van)
    pour = workshop.planned()

    here = workshop.act(pour, "complete", usages=[usage(workshop.resin, "100 ml")])
    from_van = workshop.act(pour, "complete", usages=[usage(workshop.resin, "100 ml", lot=lot.pk, place=van.pk)])

    remedy = here.json()["remedies"][0]
    assert (remedy["kind"], remedy["lot"], remedy["place_name"]) == ("other_place", lot.pk, "Van")
    assert remedy["quantity"] == {"amount": "900", "unit": "ml"}
    assert (from_van.status_code, from_van.json()["usages"][0]["place_name"]) == (200, "Van")
    assert workshop.on_hand(lot, van) == "800"


def test_a_lot_of_another_material_is_refused_where_it_stands(workshop: Workshop) -> None:
    lot = workshop.lot(workshop.resin, "900 ml")
    pour = workshop.planned()

    wrong = workshop.act(pour, "complete", usages=[usage(workshop.hardener, "1 ml", lot=lot.pk)])
    none = workshop.act(pour, "complete", usages=[usage(workshop.hardener, "1 ml", lot=999_999)])

    assert (wrong.status_code, wrong.json()["type"]) == (422, "/problems/wrong-lot")
    assert (none.status_code, none.json()["errors"][0]["pointer"]) == (400, "/usages/0/lot")
