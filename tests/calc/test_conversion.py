"""Bringing a quantity to another unit: densities, spoon weights, a material's own measures, two weighings."""

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.calc.quantities import (
    MAX_QUANTITY,
    QuantityError,
    Typed,
    UnitMismatch,
    check_measure,
    check_measures,
    convert,
    convert_exactly,
    format_quantity,
    parse_quantity,
    weighed,
)
from inventory.calc.rounding import half_even
from inventory.calc.units import UNITS, Dimension

MEASURES = {
    "pump": Typed(Fraction(30), "ml"),
    "small scoop": Typed(Fraction(4), "g"),
    "can": Typed(Fraction(340), "g"),
    "Dash": Typed(Fraction(1, 8), "tsp"),
}
MILLIONTH = Fraction(1, 10**6)
amounts = st.fractions(0, 9_999_999, max_denominator=999_999)


class TestConverting:
    def test_volume_becomes_mass_through_density_and_back(self) -> None:
        density = Decimal("1.13")

        assert convert(Typed(Fraction(100), "ml"), to="g", density_g_per_ml=density) == Decimal("113.000000")
        assert convert(Typed(Fraction(113), "g"), to="ml", density_g_per_ml=density) == Decimal("100.000000")

    def test_a_powder_goes_by_its_spoon_weight_and_never_by_a_density(self) -> None:
        spoonfuls = Typed(Fraction(2), "tsp")
        mica, mineral = Decimal("1.7"), Decimal("2.9")

        assert convert(spoonfuls, to="g", grams_per_tsp=mica) == Decimal("3.4")
        assert convert(spoonfuls, to="g", grams_per_tsp=mica, density_g_per_ml=mineral) == Decimal("3.4")
        assert convert(Typed(Fraction("3.4"), "g"), to="tbsp", grams_per_tsp=mica) == Decimal("0.666667")
        with pytest.raises(UnitMismatch, match="teaspoon") as refusal:
            convert(spoonfuls, to="g", density_g_per_ml=mineral, is_powder=True)
        assert refusal.value.missing == "grams_per_tsp"

    @pytest.mark.parametrize(
        ("said", "to", "missing"),
        [
            ("32 fl oz", "g", "density_g_per_ml"),
            ("14 g", "ml", "density_g_per_ml"),
            ("2 pumps", "g", "density_g_per_ml"),
            ("3 ft", "g", "measure"),
            ("3 each", "g", "measure"),
            ("3 g", "each", "measure"),
            ("3 sq ft", "ft", "measure"),
        ],
    )
    def test_a_conversion_says_which_figure_it_lacks(self, said: str, to: str, missing: str) -> None:
        with pytest.raises(UnitMismatch) as refusal:
            convert(parse_quantity(said, measures=MEASURES), to=to, measures=MEASURES)

        assert refusal.value.missing == missing

    def test_a_measure_that_the_material_lacks_is_missing(self) -> None:
        with pytest.raises(UnitMismatch) as refusal:
            convert(Typed(Fraction(1), "jug"), to="ml", measures=MEASURES)

        assert refusal.value.missing == "measure"

    def test_a_measure_converts_both_ways(self) -> None:
        assert convert(Typed(Fraction(2), "pump"), to="ml", measures=MEASURES) == Decimal("60")
        assert convert(Typed(Fraction(85), "g"), to="can", measures=MEASURES) == Decimal("0.25")

    def test_three_thirds_of_a_can_are_a_can_exactly_and_within_a_millionth_when_rounded(self) -> None:
        third = Typed(Fraction(1, 3), "can")

        assert 3 * convert_exactly(third, to="g", measures=MEASURES) == 340
        assert convert(third, to="g", measures=MEASURES) == Decimal("113.333333")

    def test_a_tie_in_the_last_place_goes_to_the_even_digit(self) -> None:
        assert half_even(Fraction("0.0000005")) == Decimal("0.000000")
        assert half_even(Fraction("0.0000015")) == Decimal("0.000002")
        assert half_even(Fraction("0.0000025")) == Decimal("0.000002")

    def test_more_than_can_be_kept_is_refused_and_the_most_is_not(self) -> None:
        assert convert(Typed(Fraction("9999999.999999"), "g"), to="g") == MAX_QUANTITY
        with pytest.raises(QuantityError, match=r"9999999\.999999 ml"):
            convert(Typed(Fraction(5000), "gal"), to="ml")

    def test_less_than_can_be_kept_is_refused_and_nothing_is_not(self) -> None:
        assert convert(Typed(Fraction(0), "mm"), to="m") == 0
        with pytest.raises(QuantityError, match=r"less than 0\.000001 m"):
            convert(Typed(Fraction("0.0001"), "mm"), to="m")

    @pytest.mark.parametrize("density", ["0", "-1", "NaN", "Infinity"])
    def test_a_density_must_be_above_zero(self, density: str) -> None:
        with pytest.raises(ValueError, match="density_g_per_ml"):
            convert(Typed(Fraction(1), "ml"), to="g", density_g_per_ml=Decimal(density))

    same_dimension = st.sampled_from(list(Dimension)).flatmap(
        lambda dimension: st.tuples(
            *[st.sampled_from([u.code for u in UNITS.values() if u.dimension is dimension])] * 2
        )
    )
    small = st.fractions(0, 1000, max_denominator=1000)

    @given(small, same_dimension)
    def test_there_and_back_is_the_same(self, amount: Fraction, pair: tuple[str, str]) -> None:
        there = convert_exactly(Typed(amount, pair[0]), to=pair[1])

        assert there / convert_exactly(Typed(Fraction(1), pair[0]), to=pair[1]) == amount
        assert there * convert_exactly(Typed(Fraction(1), pair[1]), to=pair[0]) == amount

    @given(small, st.sampled_from(["ml", "cup", "gal", "pump"]), st.sampled_from(["g", "oz", "lb", "can"]))
    def test_volume_to_mass_and_back_is_the_same(self, amount: Fraction, volume: str, mass: str) -> None:
        figures = {"density_g_per_ml": Decimal("1.13"), "measures": MEASURES}
        there = convert_exactly(Typed(amount, volume), to=mass, **figures)

        assert convert_exactly(Typed(there, mass), to=volume, **figures) == amount

    @given(small, small, st.sampled_from(["fl_oz", "tsp", "pump", "can", "oz"]))
    def test_converting_is_linear_up_to_the_last_place(self, one: Fraction, other: Fraction, unit: str) -> None:
        figures = {"to": "g", "density_g_per_ml": Decimal("0.96"), "measures": MEASURES}
        apart = [convert_exactly(Typed(amount, unit), **figures) for amount in (one, other)]
        together = convert_exactly(Typed(one + other, unit), **figures)

        assert sum(apart) == together
        rounded = sum(Fraction(half_even(part)) for part in apart)
        assert abs(rounded - Fraction(half_even(together))) <= Fraction(3, 2) * MILLIONTH


class TestMeasures:
    @pytest.mark.parametrize("name", ["pump", "small scoop", "Dash", "jigger-2", "can (large)", "löffel"])
    def test_a_good_name_is_taken(self, name: str) -> None:
        check_measure(name, Typed(Fraction(30), "ml"))
        assert parse_quantity(f"2 {name}", measures={name: Typed(Fraction(30), "ml")}).unit == name

    @given(st.from_regex(r"\A\w[\w ()½.-]{0,12}\Z"), amounts)
    def test_any_name_that_is_taken_reads_back(self, name: str, amount: Fraction) -> None:
        measures = {name: Typed(Fraction(30), "ml")}
        try:
            check_measure(name, measures[name])
        except QuantityError:
            return
        assert parse_quantity(format_quantity(amount, name), measures=measures) == Typed(amount, name)

    @pytest.mark.parametrize(
        "name",
        [
            "",
            "e5",
            "½",
            "_pump",
            "pump_",
            "pump -",
            " ",
            "2 pump",
            "oz",
            "OZ",
            "fl oz",
            "Cup",
            "cups",
            "gal",
            "left",
            "half left",
            "x" * 41,
            "a  b",
            "a\nb",
            "a/b",
        ],
    )
    def test_a_name_that_is_a_unit_or_unreadable_is_refused(self, name: str) -> None:
        with pytest.raises(QuantityError):
            check_measure(name, Typed(Fraction(30), "ml"))

    def test_a_measure_equals_a_unit_and_never_another_measure(self) -> None:
        circle = {"pump": Typed(Fraction(2), "squirt"), "squirt": Typed(Fraction(1, 2), "pump")}

        with pytest.raises(QuantityError, match="is not a unit"):
            check_measures(circle)
        with pytest.raises(QuantityError, match="is not a unit"):
            convert(Typed(Fraction(1), "pump"), to="ml", measures=circle)

    def test_a_measure_equals_more_than_nothing(self) -> None:
        with pytest.raises(QuantityError, match="more than nothing"):
            check_measure("pump", Typed(Fraction(0), "ml"))

    def test_two_measures_that_read_alike_are_refused(self) -> None:
        check_measures(MEASURES)
        with pytest.raises(QuantityError, match="read alike"):
            check_measures({"pump": Typed(Fraction(1), "ml"), "Pumps": Typed(Fraction(2), "ml")})


class TestWeighed:
    def test_what_was_used_is_the_difference_of_two_weighings(self) -> None:
        assert weighed(parse_quantity("435 g"), parse_quantity("380 g")) == Typed(Fraction(55), "g")

    def test_the_weighings_may_be_in_two_units(self) -> None:
        assert weighed(parse_quantity("1 kg"), parse_quantity("900 g")) == Typed(Fraction(1, 10), "kg")

    @pytest.mark.parametrize(
        ("before", "after", "is_rough"),
        [("435 g", "380 g", False), ("~435 g", "380 g", True), ("435 g", "~380 g", True)],
    )
    def test_a_rough_weighing_makes_a_rough_difference(self, before: str, after: str, is_rough: bool) -> None:
        assert weighed(parse_quantity(before), parse_quantity(after)).is_rough is is_rough

    @pytest.mark.parametrize(("before", "after"), [("380 g", "435 g"), ("380 g", "380 g")])
    def test_nothing_used_is_refused(self, before: str, after: str) -> None:
        with pytest.raises(QuantityError, match="nothing was used"):
            weighed(parse_quantity(before), parse_quantity(after))

    @pytest.mark.parametrize(("before", "after"), [("435 ml", "380 g"), ("435 g", "380 ml")])
    def test_only_weights_are_weighed(self, before: str, after: str) -> None:
        with pytest.raises(QuantityError, match="is not a weight"):
            weighed(parse_quantity(before), parse_quantity(after))
