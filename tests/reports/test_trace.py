"""Uses and sources: exact, proportional, symmetrical, through any depth.

The worked trace: lot L of 1000 mL. 400 mL are poured straight onto tops of 30 and 10 sq ft, 300 and 100 mL. 200 mL go
into a jug with 200 mL of another lot; a pour takes 100 of its 400 mL, so holds 50 mL of L. 30 mL are written off.
What is left: 370 mL in L and 150 mL in the jug. 400 + 50 + 30 + 370 + 150 = 1000.
"""

from collections import defaultdict
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rest_framework.test import APIClient

from inventory.jobs.models import Piece
from inventory.pours.models import Pour
from inventory.reports.queries.sources import sources_of_job, sources_of_piece, sources_of_pour
from inventory.reports.queries.uses import Uses, uses_of_lot
from inventory.shop.models import Person
from inventory.stock.actions import (
    Counted,
    Input,
    blend,
    count_place,
    give_away,
    move,
    open_container,
    return_goods,
    reverse_posting,
    write_off,
)
from inventory.stock.models import Lot, Movement, Place, Posting
from tests.reports.conftest import Works, read, tops_of


def rest_of(uses: Uses) -> list[tuple[str, str, str]]:
    return [(row.what, row.lot.lot_number, f"{row.quantity.normalize():f}") for row in uses.rest]


def poured(uses: Uses) -> dict[int, str]:
    return {row.pour: f"{row.quantity.normalize():f}" for row in uses.pours}


def shown_sum(uses: Uses) -> Decimal:
    return sum((row.quantity for row in [*uses.pours, *uses.rest]), Decimal(0))


@pytest.fixture
def worked(works: Works) -> dict[str, Any]:
    lot = works.lot(works.resin, "1000 ml", lot_number="L-1")
    other = works.lot(works.resin, "500 ml", lot_number="L-2")
    kitchen, bath = works.job("Kitchen", "30", "10"), works.job("Bath", "8", purpose="sample")
    straight = works.pour(kitchen, (lot, "400 ml"))
    jug = blend(
        material=works.resin,
        inputs=[Input(lot, Decimal(200)), Input(other, Decimal(200))],
        lot_number="J-1",
        by=works.owner,
    ).lot
    mixed = works.pour(bath, (jug, "60 ml"), (jug, "40 ml", "waste"), at="2026-06-15T15:00:00Z")
    write_off(lot=lot, quantity=Decimal(30), reason="dusty", by=works.owner)
    return {
        "lot": lot,
        "other": other,
        "jug": jug,
        "straight": straight,
        "mixed": mixed,
        "kitchen": kitchen,
        "bath": bath,
    }


def test_the_worked_trace_accounts_for_all_that_came_in(worked: dict[str, Any]) -> None:
    uses = uses_of_lot(worked["lot"].pk)

    assert poured(uses) == {worked["straight"].pk: "400", worked["mixed"].pk: "50"}
    assert [row.wasted for row in uses.pours] == [0, 20]
    assert rest_of(uses) == [("on_hand", "L-1", "370"), ("on_hand", "J-1", "150"), ("written_off", "L-1", "30")]
    assert [(row.lot.lot_number, row.quantity) for row in uses.through] == [("J-1", 200)]
    assert (uses.received, uses.found, uses.total, uses.difference) == (1000, 0, 1000, 0)
    assert shown_sum(uses) == uses.total


def test_tops_jobs_and_boards_get_their_part_by_area(worked: dict[str, Any]) -> None:
    uses = uses_of_lot(worked["lot"].pk)

    assert [[(use.on.name, use.quantity, use.on.is_board) for use in row.tops] for row in uses.pours] == [
        [("Top 0", 300, False), ("Top 1", 100, False)],
        [("Top 0", 50, True)],
    ]
    assert [(job.of.title, job.of.customer_name, job.quantity, job.tops) for job in uses.jobs] == [
        ("Kitchen", "Wren Okafor", 400, 2),
        ("Bath", "Wren Okafor", 50, 1),
    ]


def test_backward_gives_the_same_figures(works: Works, worked: dict[str, Any]) -> None:
    def found(sources: Any) -> list[tuple[str, Decimal, bool]]:
        return [(row.lot.lot_number, row.quantity, row.is_direct) for row in sources.rows]

    assert found(sources_of_pour(worked["mixed"].pk)) == [("J-1", 100, True), ("L-1", 50, False), ("L-2", 50, False)]
    assert found(sources_of_pour(worked["straight"].pk)) == [("L-1", 400, True)]
    first, second = tops_of(worked["kitchen"])
    assert found(sources_of_piece(first.pk)) == [("L-1", 300, True)]
    assert found(sources_of_piece(second.pk)) == [("L-1", 100, True)]
    assert found(sources_of_job(worked["kitchen"].pk)) == [("L-1", 400, True)]
    assert found(sources_of_job(works.job("Nothing").pk)) == []


def test_typed_shares_divide_what_is_on_the_tops(works: Works) -> None:
    lot = works.lot(works.resin, "1000 ml")
    works.pour(works.job("One", "10", "10", "10"), (lot, "1 ml"), shares=["50", "30", "20"])

    [pour] = uses_of_lot(lot.pk).pours
    assert [top.quantity for top in pour.tops] == [Decimal("0.5"), Decimal("0.3"), Decimal("0.2")]


def test_what_cannot_be_divided_evenly_still_sums_to_the_last_millionth(works: Works) -> None:
    lot = works.lot(works.resin, "1000 ml")
    job = works.job("One", "10", "10", "10")
    works.pour(job, (lot, "1 ml"))

    [pour] = uses_of_lot(lot.pk).pours
    assert [top.quantity for top in pour.tops] == [Decimal("0.333334"), Decimal("0.333333"), Decimal("0.333333")]
    assert [sources_of_piece(piece.pk).rows[0].quantity for piece in tops_of(job)] == [
        top.quantity for top in pour.tops
    ]


def test_an_undone_pour_is_in_no_trace(works: Works) -> None:
    lot = works.lot(works.resin, "1000 ml")
    pour = works.pour(works.job("One", "10"), (lot, "1 ml"))
    works.undo(pour)

    assert poured(uses_of_lot(lot.pk)) == {}
    assert sources_of_pour(pour.pk).rows == []


def test_openings_moves_counts_returns_and_gifts_are_all_told(works: Works) -> None:
    lot = works.lot(works.resin, "1000 ml", lot_number="L-1", containers=2)
    van = Place.objects.create(number=99, name="Van")
    child = open_container(lot=lot, by=works.owner)
    move(lot=lot, to=van, quantity=Decimal(100), by=works.owner)
    return_goods(lot=child, quantity=Decimal(50), to="supplier", reason="too much", by=works.owner)
    give_away(lot=child, quantity=Decimal(20), reason="to a friend", by=works.owner)
    count_place(
        place=works.place,
        counted_at=Posting.objects.latest("id").recorded_at,
        lines=[Counted(child, Decimal(425), "missed"), Counted(lot, Decimal(410), "more")],
        by=works.owner,
    )

    uses = uses_of_lot(lot.pk)
    assert rest_of(uses) == [
        ("on_hand", "L-1", "410"),
        ("on_hand", "L-1", "100"),
        ("on_hand", "L-1", "425"),
        ("counted", "L-1", "5"),
        ("returned", "L-1", "50"),
        ("given", "L-1", "20"),
    ]
    assert (uses.received, uses.found, uses.total, uses.difference) == (1000, 10, 1010, 0)
    assert shown_sum(uses) == 1010
    own = uses_of_lot(child.pk)
    assert (own.opened, own.total, own.difference, shown_sum(own)) == (500, 500, 0, 500)


def test_all_of_a_number_are_traced_as_one(works: Works) -> None:
    first = works.lot(works.resin, "1000 ml", lot_number="K-7", containers=2)
    again = works.lot(works.resin, "300 ml", lot_number="K-7", on="2026-06-01")
    works.lot(works.hardener, "300 ml", lot_number="K-7")
    child = open_container(lot=first, by=works.owner)
    pour = works.pour(works.job("One", "10"), (child, "10 ml"), (again, "5 ml"), at="2026-06-15T15:00:00Z")

    uses = uses_of_lot(again.pk, all_of_this_number=True)
    assert [lot.id for lot in uses.lots] == [first.pk, again.pk, child.pk]
    assert (uses.received, uses.opened, uses.total, uses.difference) == (1300, 0, 1300, 0)
    assert poured(uses) == {pour.pk: "15"}
    assert shown_sum(uses) == 1300
    assert poured(uses_of_lot(again.pk)) == {pour.pk: "5"}


def test_a_lot_without_a_number_on_its_label_is_alone(works: Works) -> None:
    lot = works.lot(works.resin, "1000 ml")
    other = works.lot(works.resin, "1000 ml", lot_number=lot.lot_number)

    assert [found.id for found in uses_of_lot(lot.pk, all_of_this_number=True).lots] == [lot.pk]
    assert [found.id for found in uses_of_lot(other.pk, all_of_this_number=True).lots] == [other.pk]


def test_uses_and_sources_over_http(office: APIClient, bench: APIClient, worked: dict[str, Any]) -> None:
    uses = read(bench, f"/api/lots/{worked['lot'].pk}/uses/")
    assert uses["pours"][1]["quantity"] == {"amount": "50", "unit": "ml"}
    assert uses["pours"][1]["poured_at"] == "2026-06-15T15:00:00Z"
    assert uses["rest"][0]["lot"]["material"]["name"] == "Table resin A"
    assert uses["total"] == {"amount": "1000", "unit": "ml"}
    sources = read(bench, f"/api/pours/{worked['mixed'].pk}/sources/")
    assert [
        (row["lot"]["lot_number"], row["quantity"]["amount"], row["lot"]["supplier"]) for row in sources["rows"]
    ] == [
        ("J-1", "100", None),
        ("L-1", "50", "Harbour Resin Supply"),
        ("L-2", "50", "Harbour Resin Supply"),
    ]
    assert read(bench, f"/api/jobs/{worked['bath'].pk}/sources/")["rows"][0]["pours"][0]["quantity"]["amount"] == "100"
    assert len(read(bench, f"/api/pieces/{tops_of(worked['bath'])[0].pk}/sources/")["rows"]) == 3
    for address in ("lots/999999/uses/", "pours/999999/sources/", "pieces/999999/sources/", "jobs/999999/sources/"):
        assert office.get(f"/api/{address}").status_code == 404
    assert office.get(f"/api/lots/{10**25}/uses/").status_code == 404


@settings(max_examples=12)
@given(data=st.data())
def test_pour_p_holds_x_of_lot_l_exactly_when_l_lists_x_in_p(
    data: st.DataObject, django_db_blocker: Any, works: Works
) -> None:
    """Random deliveries, jugs of jugs to depth 8, pours on one to three tops, some undone."""
    whole = st.integers(1, 60)
    lots = [works.lot(works.resin, f"{data.draw(whole) * 10} ml") for _ in range(3)]
    tops = tops_of(works.job("One", "10", "7", "3"))
    pours: list[Pour] = []
    for _ in range(data.draw(st.integers(3, 8))):
        chosen = data.draw(st.lists(st.sampled_from(lots), min_size=1, max_size=3, unique=True))
        takes = [(lot, Decimal(data.draw(whole)) / 7) for lot in chosen]
        parts = [(lot, min(round(some, 6), on_hand(lot))) for lot, some in takes if on_hand(lot) > 1]
        if not parts:
            continue
        if data.draw(st.booleans()):
            inputs = [Input(lot, some) for lot, some in parts]
            lots.append(blend(material=works.resin, inputs=inputs, by=works.owner).lot)
        else:
            under = tops[: data.draw(st.integers(1, 3))]
            pours.append(works.pour(under, *((lot, f"{some} ml") for lot, some in parts), at="2026-06-15T15:00:00Z"))
    if pours and data.draw(st.booleans()):
        works.undo(data.draw(st.sampled_from(pours)))

    forward = {(lot.pk, use.pour): use.quantity for lot in lots for use in uses_of_lot(lot.pk).pours}
    backward = {(row.lot.id, pour.pk): row.quantity for pour in pours for row in sources_of_pour(pour.pk).rows}
    assert forward == backward
    on_tops: dict[tuple[int, int], Decimal] = defaultdict(Decimal)
    for lot in lots:
        uses = uses_of_lot(lot.pk)
        assert uses.difference == 0
        assert abs(shown_sum(uses) - uses.total) <= Decimal("0.0000005") * (len(uses.pours) + len(uses.rest))
        for use in uses.pours:
            assert sum(top.quantity for top in use.tops) == use.quantity
            for top in use.tops:
                on_tops[lot.pk, top.on.piece] += top.quantity
    pieces = Piece.objects.filter(pk__in=[top.pk for top in tops])
    assert on_tops == {
        (row.lot.id, piece.pk): row.quantity for piece in pieces for row in sources_of_piece(piece.pk).rows
    }


def on_hand(lot: Lot) -> Decimal:
    return sum((line.quantity for line in Movement.objects.filter(lot=lot)), Decimal(0))


def test_a_jug_that_was_taken_apart_again_leads_nowhere(works: Works, owner: Person) -> None:
    lot, other = works.lot(works.resin, "100 ml"), works.lot(works.resin, "100 ml")
    made = blend(material=works.resin, inputs=[Input(lot, Decimal(10)), Input(other, Decimal(10))], by=owner)
    reverse_posting(posting=made.posting, reason="never made", by=owner)

    uses = uses_of_lot(lot.pk)
    assert [(row.what, row.quantity) for row in uses.rest] == [("on_hand", 100)]
    assert (uses.through, uses.difference) == ([], 0)
