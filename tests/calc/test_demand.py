"""How fast a material goes: the window, its days without use, and the spread of the lead time."""

from __future__ import annotations

import statistics
from datetime import date, timedelta
from decimal import Decimal
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.calc.demand import NO_USE, daily_use, lead_time_demand

TODAY = date(2026, 6, 30)


def ago(days: int) -> date:
    return TODAY - timedelta(days=days)


def test_days_without_use_count() -> None:
    use = daily_use({ago(0): Decimal(30), ago(9): Decimal(20)}, today=TODAY, first_received_on=ago(9))
    assert (use.mean, use.days) == (Decimal(5), 10)


def test_the_window_ends_today_and_begins_ninety_days_back_or_at_the_first_receipt() -> None:
    used = {ago(days): Decimal(90) for days in (0, 89, 90)}
    assert daily_use(used, today=TODAY, first_received_on=ago(400)).mean == 2
    assert daily_use(used, today=TODAY, first_received_on=ago(400)).days == 90
    assert daily_use(used, today=TODAY, first_received_on=ago(44)).mean == 2
    assert daily_use(used, today=TODAY, first_received_on=ago(44)).days == 45


def test_what_lies_ahead_of_today_is_not_yet_used() -> None:
    assert daily_use({ago(-1): Decimal(9)}, today=TODAY, first_received_on=ago(9)).mean == 0


def test_what_never_came_is_not_used() -> None:
    assert daily_use({}, today=TODAY, first_received_on=None) == NO_USE
    assert daily_use({}, today=TODAY, first_received_on=ago(-1)) == NO_USE


def test_a_single_day_shows_no_spread() -> None:
    use = daily_use({TODAY: Decimal(7)}, today=TODAY, first_received_on=TODAY)
    assert (use.mean, use.sd, use.days) == (7, 0, 1)


def test_a_window_of_no_days_is_refused() -> None:
    with pytest.raises(ValueError, match="window"):
        daily_use({}, today=TODAY, first_received_on=TODAY, window_days=0)


@given(st.dictionaries(st.integers(0, 89), st.decimals(0, 9_999_999, places=6)))
def test_mean_and_spread_are_those_of_the_whole_series(used: dict[int, Decimal]) -> None:
    series = [used.get(days, Decimal(0)) for days in range(90)]
    use = daily_use({ago(days): q for days, q in used.items()}, today=TODAY, first_received_on=ago(1000))
    assert use.mean == pytest.approx(statistics.mean(series), rel=Decimal("1e-24"))
    assert use.sd == pytest.approx(statistics.stdev(series), rel=Decimal("1e-24"))


@given(st.integers(0, 89), st.decimals("0.000001", "9999999.999999", places=6))
def test_equal_use_every_day_has_no_spread_to_the_last_digit(days: int, quantity: Decimal) -> None:
    used = {ago(day): quantity for day in range(days + 1)}
    use = daily_use(used, today=TODAY, first_received_on=ago(days))
    assert (use.mean, use.sd, use.days) == (quantity, 0, days + 1)


positive = st.decimals(0, 10_000, places=3)


@given(positive, positive, positive, positive)
def test_the_spread_of_the_lead_time_grows_with_both_causes(
    mean: Decimal, sd: Decimal, lead_time: Decimal, lead_time_sd: Decimal
) -> None:
    demand = lead_time_demand(mean, sd, lead_time, lead_time_sd)
    expected = sqrt(float(lead_time) * float(sd) ** 2 + float(mean) ** 2 * float(lead_time_sd) ** 2)
    assert demand.mean == mean * lead_time
    assert float(demand.sd) == pytest.approx(expected, rel=1e-12)
    assert demand.sd >= lead_time_demand(mean, sd, lead_time).sd


@pytest.mark.parametrize("wrong", [(1, -1, 1, 0), (1, 1, -1, 0), (1, 1, 1, -1)])
def test_a_spread_or_lead_time_below_zero_is_refused(wrong: tuple[int, int, int, int]) -> None:
    with pytest.raises(ValueError, match="0 or more"):
        lead_time_demand(*map(Decimal, wrong))
