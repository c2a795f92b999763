"""Safety stocks and reorder points, held against books: exact values tightly, printed roundings loosely."""

from __future__ import annotations

from decimal import Decimal

import pytest

from inventory.calc.demand import lead_time_demand
from inventory.calc.ordering import reorder_point, safety_stock

D = Decimal


def test_lead_time_demand_known_and_three_percent_risk() -> None:
    """Stevenson, Operations Management, example 8: print 9.40."""
    safety = safety_stock(D(5), 1 - D("0.03"))
    assert float(safety) == pytest.approx(9.403968, abs=5e-7)
    assert float(reorder_point(D(50), safety)) == pytest.approx(59.403968, abs=5e-7)
    assert float(safety) == pytest.approx(9.40, abs=5e-3)


def test_daily_demand_varies_and_the_lead_time_does_not() -> None:
    """Taylor, Introduction to Management Science: print 26.0888 with z rounded to 1.65."""
    demand = lead_time_demand(D(30), D(5), D(10))
    safety = safety_stock(demand.sd, D("0.95"))
    assert demand.mean == 300
    assert float(safety) == pytest.approx(26.0074, abs=5e-5)
    assert float(reorder_point(demand.mean, safety)) == pytest.approx(326.0074, abs=5e-5)
    assert float(safety) == pytest.approx(26.0888, rel=4e-3)


def test_demand_and_lead_time_both_vary() -> None:
    """Heizer & Render, Operations Management (from memory, computed): print 1,004."""
    demand = lead_time_demand(D(150), D(16), D(5), D(1))
    point = reorder_point(demand.mean, safety_stock(demand.sd, D("0.95")))
    assert demand.sd**2 == pytest.approx(D(23780), rel=D("1e-24"))
    assert float(point) == pytest.approx(1003.65, abs=5e-3)
    assert float(point) == pytest.approx(1004, abs=0.5)


def test_lumpy_demand_enumerated() -> None:
    """Weekly demand 0/1/4 with .5/.3/.2, lead time 1/2/3 weeks with .2/.5/.3: mean 2.31, variance 5.4019.

    The normal formula says 6.13 at 95 %, where enumeration says 8: lumpy demand is not normal.
    """
    weekly = {0: D("0.5"), 1: D("0.3"), 4: D("0.2")}
    weeks = {1: D("0.2"), 2: D("0.5"), 3: D("0.3")}
    demand = lead_time_demand(*_mean_and_sd(weekly), *_mean_and_sd(weeks))
    assert demand.mean == D("2.31")
    assert demand.sd**2 == pytest.approx(D("5.4019"), rel=D("1e-24"))
    point = reorder_point(demand.mean, safety_stock(demand.sd, D("0.95")))
    assert float(point) == pytest.approx(6.13, abs=5e-3)


def _mean_and_sd(distribution: dict[int, Decimal]) -> tuple[Decimal, Decimal]:
    mean = sum((value * chance for value, chance in distribution.items()), D(0))
    return mean, sum((chance * (value - mean) ** 2 for value, chance in distribution.items()), D(0)).sqrt()
