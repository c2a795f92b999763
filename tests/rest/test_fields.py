"""Quantities, money, days, moments and ids in a body."""

from datetime import UTC, datetime
from decimal import Decimal
from fractions import Fraction
from types import SimpleNamespace
from typing import Any

import pytest
from rest_framework import serializers

from inventory.calc.quantities import Typed
from inventory.rest.fields import DayField, IdField, MomentField, MoneyField, PeriodQuery
from inventory.rest.quantities import QuantityField, plain

ACCEPTED: list[tuple[Any, Any, Any]] = [
    (QuantityField(), {"amount": "32", "unit": "fl_oz"}, Typed(Fraction(32), "fl_oz")),
    (QuantityField(), {"amount": Decimal("0.5"), "unit": "gal"}, Typed(Fraction(1, 2), "gal")),
    (QuantityField(), {"amount": 3, "unit": "oz"}, Typed(Fraction(3), "oz")),
    (QuantityField(), "32 fl oz", Typed(Fraction(32), "fl_oz")),
    (QuantityField(), "1 1/2 cups", Typed(Fraction(3, 2), "cup")),
    (QuantityField(), "~14 g", Typed(Fraction(14), "g", is_rough=True)),
    (QuantityField(), "2 pumps", Typed(Fraction(2), "pumps")),
    (QuantityField(), "1/3 can", Typed(Fraction(1, 3), "can")),
    (QuantityField(), "½ big scoop", Typed(Fraction(1, 2), "big scoop")),
    (QuantityField(), {"amount": "2", "unit": "pump"}, Typed(Fraction(2), "pump")),
    (MoneyField(), "9999999.9999", Decimal("9999999.9999")),
    (MoneyField(), "-3.5", Decimal("-3.5")),
    (MoneyField(), Decimal("12"), Decimal(12)),
    (MoneyField(min_value=0), 0, Decimal(0)),
    (DayField(), "2026-05-31", datetime(2026, 5, 31, tzinfo=UTC).date()),
    (MomentField(), "2026-05-31T14:30:00-07:00", datetime(2026, 5, 31, 21, 30, tzinfo=UTC)),
    (MomentField(), "2026-05-31T14:30Z", datetime(2026, 5, 31, 14, 30, tzinfo=UTC)),
    (IdField(), 7, 7),
    (IdField(), "7", 7),
]
REFUSED: list[tuple[Any, Any, str]] = [
    (QuantityField(), "3 oz", "fl oz"),
    (QuantityField(), "32", "unit"),
    (QuantityField(), "fl oz", "amount"),
    (QuantityField(), "1/0 g", "zero"),
    (QuantityField(), "1e999999 g", "exponent"),
    (QuantityField(), "NaN g", "number"),
    (QuantityField(), "-1 g", "below zero"),
    (QuantityField(), "10000000 g", "at most"),
    (QuantityField(is_above_zero=True), "0 g", "more than nothing"),
    (QuantityField(), {"amount": "1"}, "amount"),
    (QuantityField(), {"amount": "1", "unit": "g", "u": 1}, "not u"),
    (QuantityField(), {"amount": True, "unit": "g"}, "number"),
    (QuantityField(), {"amount": [], "unit": "g"}, "number"),
    (QuantityField(), {"amount": "1", "unit": ["g"]}, "unit"),
    (QuantityField(), {"amount": Decimal("1E+30"), "unit": "g"}, "too large"),
    (QuantityField(), "1 " + "x" * 50, "neither a unit"),
    (QuantityField(), 3, "quantity such as"),
    (QuantityField(), None, "null"),
    (MoneyField(), "10000000", "7 digits"),
    (MoneyField(), "0.00001", "4 decimal places"),
    (MoneyField(), "NaN", "number"),
    (MoneyField(), "1e30", "digits"),
    (MoneyField(), True, "number"),
    (MoneyField(min_value=0), "-1", "greater than or equal to 0"),
    (DayField(), "31.05.2026", "YYYY-MM-DD"),
    (DayField(), "2026-02-30", "YYYY-MM-DD"),
    (DayField(), "0001-01-01", "1970"),
    (DayField(), "9999-12-31", "2199"),
    (DayField(), 5, "YYYY-MM-DD"),
    (MomentField(), "2026-05-31T14:30:00", "offset"),
    (MomentField(), "2026-05-31", "Write the moment"),
    (MomentField(), "0001-01-01T00:00:00+14:00", "1970"),
    (MomentField(), "9999-12-31T23:59:59-12:00", "2199"),
    (MomentField(), "2026-05-31T14:30:61Z", "Write the moment"),
    (MomentField(), {}, "Write the moment"),
    (IdField(), 1.5, "whole number"),
    (IdField(), Decimal("1.5"), "whole number"),
    (IdField(), True, "whole number"),
    (IdField(), 2**63, "whole number"),
    (IdField(), 0, "whole number"),
    (IdField(), "9" * 5000, "whole number"),
]


@pytest.mark.parametrize(("field", "given", "meant"), ACCEPTED)
def test_what_is_understood(field, given, meant):
    assert field.run_validation(given) == meant


@pytest.mark.parametrize(("field", "given", "sentence"), REFUSED)
def test_what_is_refused_and_why(field, given, sentence):
    with pytest.raises(serializers.ValidationError) as refusal:
        field.run_validation(given)
    assert sentence in str(refusal.value.detail)


def test_an_ambiguous_unit_offers_the_two_it_may_be():
    with pytest.raises(serializers.ValidationError) as refusal:
        QuantityField().run_validation("3 oz")
    assert refusal.value.get_codes() == ["one_of:fl_oz,oz"]


def test_a_quantity_is_answered_in_its_unit_without_idle_zeros():
    class LotOut(serializers.Serializer):
        on_hand = QuantityField(unit="material.stock_unit")
        taken = QuantityField(source="usage")

    lot = SimpleNamespace(
        on_hand=Decimal("1500.500000"),
        material=SimpleNamespace(stock_unit="ml"),
        usage=Typed(Fraction(1, 3), "can"),
    )
    assert LotOut(lot).data == {
        "on_hand": {"amount": "1500.5", "unit": "ml"},
        "taken": {"amount": "0.333333", "unit": "can"},
    }
    lot.on_hand = None
    assert LotOut(lot).data["on_hand"] is None


def test_money_and_moments_are_answered_as_text():
    assert MoneyField().to_representation(Decimal("7260")) == "7260.0000"
    assert MomentField().to_representation(datetime(2026, 5, 31, 14, 30, tzinfo=UTC)) == "2026-05-31T14:30:00Z"
    assert plain(Decimal("100")) == "100"
    assert plain(Decimal("-0.10")) == "-0.1"


def test_a_period_has_its_days_in_order():
    query = PeriodQuery(data={"from": "2026-05-01", "to": "2026-05-31"})
    assert query.is_valid()
    assert {name: f"{day}" for name, day in query.validated_data.items()} == {
        "first_day": "2026-05-01",
        "last_day": "2026-05-31",
    }
    assert PeriodQuery(data={}).is_valid()
    assert not PeriodQuery(data={"from": "2026-05-31", "to": "2026-05-01"}).is_valid()
