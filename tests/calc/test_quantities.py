"""Reading quantities as people and programs give them, and writing them back."""

import time
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.calc.quantities import (
    MAX_QUANTITY,
    AmbiguousUnit,
    QuantityError,
    Typed,
    UnitMismatch,
    format_quantity,
    parse_quantity,
    parse_share_left,
    read_quantity,
)
from inventory.calc.units import AMBIGUOUS, SPOKEN, UNITS

MEASURES = {
    "pump": Typed(Fraction(30), "ml"),
    "small scoop": Typed(Fraction(4), "g"),
    "can": Typed(Fraction(340), "g"),
    "Dash": Typed(Fraction(1, 8), "tsp"),
}

amounts = st.one_of(
    st.decimals(0, MAX_QUANTITY, places=6, allow_nan=False).map(Fraction),
    st.fractions(0, 9_999_999, max_denominator=999_999),
)
units = st.sampled_from([*UNITS, *MEASURES])


class TestReading:
    @pytest.mark.parametrize(
        ("text", "amount", "unit"),
        [
            ("32 fl oz", "32", "fl_oz"),
            ("32 Fl. Oz.", "32", "fl_oz"),
            ("32 fl_oz", "32", "fl_oz"),
            ("32floz", "32", "fl_oz"),
            ("1 1/2 cups", "3/2", "cup"),
            ("1-1/2 cups", "3/2", "cup"),
            ("1½ cup", "3/2", "cup"),
            ("1 ½ CUPS", "3/2", "cup"),
            ("⅓ cup", "1/3", "cup"),
            ("1⁄4 cup", "1/4", "cup"),
            ("0.5 gal", "1/2", "gal"),
            (".5 gallons", "1/2", "gal"),
            ("2 tsp", "2", "tsp"),
            ("14 g", "14", "g"),
            ("14g", "14", "g"),
            ("1,250.5 ml", "1250.5", "ml"),
            ("1,000,000 ml", "1000000", "ml"),
            ("3 oz by weight", "3", "oz"),
            ("3 oz wt.", "3", "oz"),
            ("2 lbs", "2", "lb"),
            ("12 ft", "12", "ft"),
            ("1 foot", "1", "ft"),
            ('6"', "6", "in"),
            ("25 sq ft", "25", "sqft"),
            ("25 ft²", "25", "sqft"),
            ("2 m2", "2", "sqm"),
            ("3 each", "3", "each"),
            ("0 g", "0", "g"),
            ("1/4 can", "1/4", "can"),
            ("2 pumps", "2", "pump"),
            ("2 PUMPS", "2", "pump"),
            ("3 small scoops", "3", "small scoop"),
            ("3 dashes", "3", "Dash"),
        ],
    )
    def test_a_quantity_is_read_as_people_say_it(self, text: str, amount: str, unit: str) -> None:
        assert parse_quantity(text, measures=MEASURES) == Typed(Fraction(amount), unit)

    @pytest.mark.parametrize("text", ["~1/3 can", "~ 1/3 can", "about 1/3 can", "approx. 1/3 can", "≈ ⅓ cans"])
    def test_a_tilde_marks_a_quantity_as_rough(self, text: str) -> None:
        assert parse_quantity(text, measures=MEASURES) == Typed(Fraction(1, 3), "can", is_rough=True)

    @pytest.mark.parametrize("text", ["8 oz", "8 OZ.", "8 ounces"])
    def test_a_bare_ounce_is_refused_and_both_ounces_are_offered(self, text: str) -> None:
        with pytest.raises(AmbiguousUnit) as refusal:
            parse_quantity(text)

        assert refusal.value.choices == ("fl_oz", "oz")
        assert "fl_oz" in str(refusal.value)
        assert "oz by weight" in str(refusal.value)

    @pytest.mark.parametrize(
        ("text", "says"),
        [
            ("", "empty"),
            ("  \n", "empty"),
            ("1/0 cup", "divides by zero"),
            ("1 0/0 cup", "divides by zero"),
            ("1e999999 g", "exponent"),
            ("1e999999", "exponent"),
            ("1E-5 g", "exponent"),
            ("NaN", "not a number"),
            ("nan g", "not a number"),
            ("inf g", "not a number"),
            ("Infinity g", "not a number"),
            ("-inf ml", "not a number"),
            ("-5 g", "below zero"),
            ("−5 g", "below zero"),
            ("~-5 g", "below zero"),
            ("5", "no unit"),
            ("1 1/2", "no unit"),
            ("g", "does not begin with an amount"),
            ("a few cups", "does not begin with an amount"),
            ("1,5 g", "cannot be read"),
            ("1,00 g", "cannot be read"),
            ("1.2.3 g", "cannot be read"),
            ("2-3 cups", "cannot be read"),
            ("1/2/3 cup", "cannot be read"),
            ("½½ cup", "cannot be read"),
            (". g", "cannot be read"),
            ("+5 g", "cannot be read"),
            ("10000000 g", "at most"),
            ("99999999999999999999 g", "at most"),
            ("9" * 60 + " g", "cannot be read"),
            ("5 %", "percentage"),
            ("1/3 left", "share of what is there"),
            ("~1/3 can left", "share of what is there"),
            ("5 " + "g" * 10_000, "too long"),
            ("9" * 10_000, "too long"),
        ],
        ids=lambda value: repr(value)[:30],
    )
    def test_what_cannot_be_read_is_refused_with_a_sentence_that_mends_it(self, text: str, says: str) -> None:
        with pytest.raises(QuantityError, match=says) as refusal:
            parse_quantity(text, measures=MEASURES)

        assert str(refusal.value).endswith(".")
        assert len(str(refusal.value)) < 300

    @pytest.mark.parametrize("text", ["2 bananas", "2 drops", "1/4 jug", "2 smallscoops"])
    def test_an_unknown_unit_asks_for_a_measure(self, text: str) -> None:
        with pytest.raises(UnitMismatch, match="measures") as refusal:
            parse_quantity(text, measures=MEASURES)

        assert refusal.value.missing == "measure"

    @pytest.mark.parametrize(
        "text",
        ["1" * 100_000, "1/" * 50, " " * 5_000_000 + "1", "½" * 100, "1 " * 50, "1," * 50],
        ids=["digits", "slashes", "spaces", "halves", "ones", "commas"],
    )
    def test_a_hostile_text_is_refused_at_once(self, text: str) -> None:
        started = time.perf_counter()
        with pytest.raises(QuantityError):
            parse_quantity(text)

        assert time.perf_counter() - started < 0.25

    @given(st.text(max_size=120))
    def test_any_text_is_read_or_refused(self, text: str) -> None:
        for read in (lambda: parse_quantity(text, measures=MEASURES), lambda: parse_share_left(text)):
            try:
                read()
            except QuantityError as refusal:
                str(refusal).encode()  # what a message quotes can always be sent

    @given(st.text("0123456789 .,/-~e½⅓", max_size=24), st.sampled_from(["", "g", "fl oz", "cans", "left", "oz"]))
    def test_any_run_of_digits_is_read_or_refused(self, number: str, unit: str) -> None:
        try:
            typed = parse_quantity(f"{number} {unit}", measures=MEASURES)
        except QuantityError:
            return
        assert 0 <= typed.amount <= MAX_QUANTITY
        assert typed.unit in UNITS or typed.unit in MEASURES

    @pytest.mark.parametrize(("way", "code"), SPOKEN.items())
    def test_every_way_of_writing_a_unit_is_read(self, way: str, code: str) -> None:
        assert parse_quantity(f"3 {way}") == parse_quantity(f"3 {way.upper()}") == Typed(Fraction(3), code)

    def test_no_way_of_writing_means_two_units(self) -> None:
        ways = [way for unit in UNITS.values() for way in {unit.name, unit.label, unit.plural, *unit.spoken} - {""}]

        assert len(ways) == len(set(ways))
        assert not set(AMBIGUOUS) & set(SPOKEN)


class TestStructured:
    @pytest.mark.parametrize(
        ("amount", "exact"),
        [
            ("32", "32"),
            (" 1 1/2 ", "3/2"),
            ("1,250", "1250"),
            (32, "32"),
            (0.1, "1/10"),
            (1e2, "100"),
            (Decimal("1E+2"), "100"),
            (Fraction(1, 3), "1/3"),
        ],
    )
    def test_an_amount_is_taken_exactly_as_given(self, amount: object, exact: str) -> None:
        assert read_quantity(amount, "ml") == Typed(Fraction(exact), "ml")

    def test_an_ounce_is_a_weight_in_the_structured_form_only(self) -> None:
        assert read_quantity("8", "oz") == Typed(Fraction(8), "oz")
        with pytest.raises(AmbiguousUnit):
            read_quantity("8", "ounces")

    def test_a_measure_or_a_spoken_unit_is_taken_too(self) -> None:
        assert read_quantity("2", "pumps", measures=MEASURES) == Typed(Fraction(2), "pump")
        assert read_quantity("2", "fl oz") == Typed(Fraction(2), "fl_oz")

    @pytest.mark.parametrize(
        ("amount", "unit"),
        [
            (None, "g"),
            (True, "g"),
            ([], "g"),
            ({}, "g"),
            ("", "g"),
            ("5 g", "g"),
            ("~5", "g"),
            ("1/0", "g"),
            ("NaN", "g"),
            ("1e999999", "g"),
            (float("nan"), "g"),
            (float("inf"), "g"),
            (1e300, "g"),
            (1e-300, "g"),
            (-1, "g"),
            (10**4000, "g"),
            (-(10**4000), "g"),
            (Decimal("1E+999999"), "g"),
            (Decimal("1E-999999"), "g"),
            (Decimal("sNaN"), "g"),
            (Decimal("-0.5"), "g"),
            (Decimal("1." + "3" * 5000), "g"),
            ("5", None),
            ("5", 7),
            ("5", ""),
            ("5", "g" * 10_000),
            ("5", "\ud800"),
            ("5", "jug"),
        ],
        ids=lambda value: repr(value)[:30],
    )
    def test_a_bad_amount_or_unit_is_refused_at_once(self, amount: object, unit: object) -> None:
        started = time.perf_counter()
        with pytest.raises(QuantityError) as refusal:
            read_quantity(amount, unit, measures=MEASURES)

        assert time.perf_counter() - started < 0.25
        assert str(refusal.value).encode()

    def test_the_largest_amount_is_taken_and_one_millionth_more_is_not(self) -> None:
        assert read_quantity("9999999.999999", "g").amount == Fraction(MAX_QUANTITY)
        with pytest.raises(QuantityError, match="at most"):
            read_quantity("10000000", "g")


class TestShareLeft:
    @pytest.mark.parametrize(
        ("text", "share", "is_rough"),
        [
            ("~1/3 left", "1/3", True),
            ("1/3 left", "1/3", False),
            ("1/4", "1/4", False),
            ("40 % left", "2/5", False),
            ("40%", "2/5", False),
            ("about a third left", "1/3", True),
            ("⅔ left", "2/3", False),
            ("half", "1/2", False),
            ("empty", "0", False),
            ("Full", "1", False),
            ("0.75 left", "3/4", False),
        ],
    )
    def test_a_share_is_read(self, text: str, share: str, is_rough: bool) -> None:
        left = parse_share_left(text)

        assert (left.share, left.is_rough) == (Fraction(share), is_rough)

    @pytest.mark.parametrize(
        "text", ["", "left", "1/3 can left", "4/3 left", "120 %", "-1/3 left", "1/0 left", "some left"]
    )
    def test_what_is_no_share_is_refused(self, text: str) -> None:
        with pytest.raises(QuantityError):
            parse_share_left(text)

    def test_a_share_is_taken_of_what_is_there(self) -> None:
        assert parse_share_left("~1/3 left").of(Decimal("100")) == Decimal("33.333333")


class TestWriting:
    @pytest.mark.parametrize(
        ("amount", "unit", "text"),
        [
            (Decimal("32.000000"), "fl_oz", "32 fl oz"),
            (Decimal("1.500000"), "gal", "1.5 gal"),
            (Decimal("100"), "g", "100 g"),
            (Decimal("0.000001"), "g", "0.000001 g"),
            (Decimal("1E+3"), "ml", "1000 ml"),
            (Decimal("0"), "cup", "0 cups"),
            (Decimal("-2.50"), "ml", "-2.5 ml"),
            (Decimal("1"), "cup", "1 cup"),
            (Decimal("2"), "cup", "2 cups"),
            (Decimal("3"), "oz", "3 oz by weight"),
            (Fraction(1, 3), "can", "1/3 can"),
            (Fraction(4, 3), "can", "1 1/3 cans"),
            (Fraction(2), "Dash", "2 Dashes"),
        ],
    )
    def test_a_quantity_is_written_as_people_do(self, amount: Decimal | Fraction, unit: str, text: str) -> None:
        assert format_quantity(amount, unit) == text

    @given(amounts, units, st.booleans())
    def test_what_is_written_reads_back_the_same(self, amount: Fraction, unit: str, is_rough: bool) -> None:
        typed = Typed(amount, unit, is_rough)

        assert parse_quantity(str(typed), measures=MEASURES) == typed
