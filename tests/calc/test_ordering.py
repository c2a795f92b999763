"""When to order and how many packs: never a kit too many, never one too few."""

from __future__ import annotations

from datetime import date, timedelta
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.special import ndtri

from inventory.calc.ordering import (
    TOLERANCE,
    Offer,
    reorder_point,
    runs_out_on,
    safety_stock,
    shortfall,
    suggested_packs,
)

RESIN, HARDENER, CUPS = 1, 2, 3
KIT = Offer(10, {RESIN: Decimal(2000), HARDENER: Decimal(1000)})
BOTTLE = Offer(11, {HARDENER: Decimal(500)})
TODAY = date(2026, 6, 1)


@given(st.decimals("0.500001", "0.999999", places=6))
def test_the_safety_factor_is_the_exact_normal_quantile(level: Decimal) -> None:
    assert float(safety_stock(Decimal(1), level)) == pytest.approx(ndtri(float(level)), rel=1e-12)


def test_a_higher_service_level_keeps_more_and_one_half_keeps_nothing() -> None:
    kept = [safety_stock(Decimal(10), Decimal(level)) for level in ("0.2", "0.5", "0.8", "0.95", "0.99")]
    assert kept[:2] == [0, 0]
    assert kept[1] < kept[2] < kept[3] < kept[4]


@pytest.mark.parametrize("level", ["0", "1", "95", "-0.1"])
def test_a_service_level_in_percent_is_refused(level: str) -> None:
    with pytest.raises(ValueError, match="between 0 and 1"):
        safety_stock(Decimal(10), Decimal(level))


def test_a_spread_below_zero_is_refused() -> None:
    with pytest.raises(ValueError, match="0 or more"):
        safety_stock(Decimal(-1), Decimal("0.95"))


def test_what_falls_short_is_counted_from_the_reorder_point() -> None:
    point = reorder_point(Decimal(300), Decimal(26))
    assert shortfall(position=Decimal(320), reorder_point=point) == 6
    assert shortfall(position=Decimal(326), reorder_point=point) == 0
    assert shortfall(position=Decimal(999), reorder_point=point) == 0


@pytest.mark.parametrize(
    ("available", "per_day", "days"),
    [("10", "5", 2), ("9.999999", "5", 1), ("10", "4", 2), ("0", "5", 0), ("-3", "5", 0), ("0.1", "0.3", 0)],
)
def test_stock_runs_out_on_the_first_day_it_does_not_serve(available: str, per_day: str, days: int) -> None:
    assert runs_out_on(Decimal(available), Decimal(per_day), TODAY) == TODAY + timedelta(days=days)


def test_what_is_not_used_does_not_run_out() -> None:
    assert runs_out_on(Decimal(10), Decimal(0), TODAY) is None
    assert runs_out_on(Decimal("9e9"), Decimal("0.000001"), TODAY) is None


def test_a_kit_is_suggested_as_often_as_its_scarcest_content_needs() -> None:
    """Resin asks for two kits, hardener for three: three kits, not five."""
    assert suggested_packs({RESIN: Decimal(3000), HARDENER: Decimal(2100)}, [KIT]) == {10: 3}


def test_what_a_kit_brings_counts_before_the_next_offer_is_looked_at() -> None:
    needs = {RESIN: Decimal(2000), HARDENER: Decimal(900)}
    assert suggested_packs(needs, [KIT, BOTTLE]) == {10: 1}
    assert suggested_packs(needs, [BOTTLE, KIT]) == {11: 2, 10: 1}


def test_a_need_that_no_offer_holds_and_no_need_suggest_nothing() -> None:
    assert suggested_packs({CUPS: Decimal(5)}, [KIT]) == {}
    assert suggested_packs({RESIN: Decimal(0), HARDENER: Decimal(-5)}, [KIT]) == {}


def test_nobody_orders_a_kit_for_less_than_can_be_weighed() -> None:
    assert suggested_packs({RESIN: Decimal("2000.001")}, [KIT]) == {10: 1}
    assert suggested_packs({RESIN: Decimal("2000.002")}, [KIT]) == {10: 2}
    assert suggested_packs({RESIN: Decimal("0.001")}, [KIT]) == {}


def test_a_pack_that_holds_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="pack 12"):
        suggested_packs({RESIN: Decimal(1)}, [Offer(12, {RESIN: Decimal(0)})])


materials = st.integers(1, 5)
quantities = st.decimals("0.002", 10_000, places=6)
offers = st.lists(
    st.builds(Offer, st.integers(1, 99), st.dictionaries(materials, quantities, min_size=1)),
    max_size=4,
    unique_by=lambda offer: offer.pack,
)


@given(st.dictionaries(materials, st.decimals(-100, 10_000, places=6)), offers)
def test_every_need_that_an_offer_holds_is_covered_and_no_pack_is_spare(
    needs: dict[int, Decimal], offers: list[Offer]
) -> None:
    counts = suggested_packs(needs, offers)

    def left(counts: dict[int, int]) -> dict[int, Fraction]:
        brought = {material: Fraction(0) for material in needs}
        for offer in offers:
            for material in offer.contents.keys() & needs.keys():
                brought[material] += counts.get(offer.pack, 0) * Fraction(offer.contents[material])
        return {material: Fraction(need) - brought[material] for material, need in needs.items()}

    offered = {material for offer in offers for material in offer.contents}
    assert all(short <= TOLERANCE for material, short in left(counts).items() if material in offered)
    last = next((offer.pack for offer in reversed(offers) if offer.pack in counts), None)
    if last is not None:
        fewer = left(counts | {last: counts[last] - 1})
        assert any(short > TOLERANCE for material, short in fewer.items() if material in offered)
