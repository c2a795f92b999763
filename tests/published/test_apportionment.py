"""Dividing a whole, against printed tables."""

from __future__ import annotations

from decimal import Decimal

from inventory.calc.apportion import apportion, apportion_money


def test_a_hundred_over_three_equal_parts_in_cents() -> None:
    assert apportion(10000, [1, 1, 1]) == [3334, 3333, 3333]


def test_the_house_of_representatives_bill_of_1792() -> None:
    """COMAP, For All Practical Purposes, ch. 14: Hamilton's method, 120 seats."""
    people = {
        "VA": 630560, "MA": 475327, "PA": 432879, "NC": 353523, "NY": 331589, "MD": 278514, "CT": 236841, "SC": 206236,
        "NJ": 179570, "NH": 141822, "VT": 85533, "GA": 70835, "KY": 68705, "RI": 68446, "DE": 55540,
    }  # fmt: skip
    assert apportion(120, list(people.values())) == [21, 16, 14, 12, 11, 9, 8, 7, 6, 5, 3, 2, 2, 2, 2]


def test_one_price_over_three_appraisals() -> None:
    """Wild, Principles of Financial Accounting, ch. 10: a lump-sum purchase of 326,000."""
    appraisals = [Decimal(175_000), Decimal(70_000), Decimal(105_000)]
    # The print's 163,000 / 65,200 / 97,800 are one half, one fifth and three tenths of the price.
    assert apportion_money(Decimal(326_000), appraisals) == [Decimal(163_000), Decimal(65_200), Decimal(97_800)]
