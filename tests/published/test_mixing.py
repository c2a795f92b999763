"""Mixing figures that follow from the ratio and the densities alone (exact definitions)."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from inventory.calc.mixing import mixable, mixed_density, per_hundred, ratio_by_mass

GALLON = Decimal("3785.411784")  # mL; 231 cubic inches, NIST Handbook 44, appendix C
TWO_TO_ONE = {"A": 2, "B": 1}
DENSITIES = {"A": Decimal("1.13"), "B": Decimal("0.96")}


def test_parts_by_weight_per_hundred_of_a() -> None:
    """100·(vB·dB)/(vA·dA)."""
    parts = per_hundred(ratio_by_mass(TWO_TO_ONE, DENSITIES), of="A")
    assert parts["B"] == Fraction(100 * 96, 2 * 113)
    assert float(parts["B"]) == pytest.approx(42.4779, abs=5e-5)
    equal = per_hundred(ratio_by_mass({"A": 1, "B": 1}, {"A": Decimal("1.13"), "B": Decimal("0.97")}), of="A")
    assert float(equal["B"]) == pytest.approx(85.8407, abs=5e-5)


def test_density_of_the_mix() -> None:
    assert mixed_density(TWO_TO_ONE, DENSITIES) == Fraction(322, 300)
    assert float(mixed_density(TWO_TO_ONE, DENSITIES)) == pytest.approx(1.07333, abs=5e-6)


def test_a_gallon_mixed_two_to_one() -> None:
    """A 2523.608 mL = 2851.68 g, B 1261.804 mL = 1211.33 g."""
    by_volume = mixable({"A": GALLON, "B": Fraction(GALLON) / 3}, TWO_TO_ONE)
    assert by_volume.total == Fraction(GALLON)
    assert float(by_volume.used["A"]) == pytest.approx(2523.608, abs=5e-4)
    assert float(by_volume.used["B"]) == pytest.approx(1261.804, abs=5e-4)

    hardener = by_volume.used["B"] * Fraction(DENSITIES["B"])
    by_mass = mixable({"A": 10_000, "B": hardener}, ratio_by_mass(TWO_TO_ONE, DENSITIES))
    assert float(by_mass.used["A"]) == pytest.approx(2851.68, abs=5e-3)
    assert float(by_mass.used["B"]) == pytest.approx(1211.33, abs=5e-3)
    assert by_mass.total / mixed_density(TWO_TO_ONE, DENSITIES) == Fraction(GALLON)
