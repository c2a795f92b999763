"""What a piece's area is, and what keeps it from being measured."""

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.calc.surfaces import (
    CountingRule,
    Faces,
    Piece,
    Rectangle,
    Strip,
    UnmeasurablePiece,
    counted_area,
    faults_in,
    measure,
)

inches = st.decimals(Decimal("0.125"), 400, places=3)


def rectangle(length: object, width: object) -> Rectangle:
    return Rectangle(Decimal(str(length)), Decimal(str(width)))


def strip(length: object, height: object) -> Strip:
    return Strip(Decimal(str(length)), Decimal(str(height)))


def faults(piece: Piece) -> list[str]:
    return [fault.pointer for fault in faults_in(piece)]


FACES = Faces(Fraction(20), Fraction(2), Fraction(3), Fraction(4))


@pytest.mark.parametrize(
    ("rule", "area"),
    [
        (None, 25),
        (CountingRule(), 25),
        (CountingRule(deducts_cutouts=True), 21),
        (CountingRule(counts_splash=False), 22),
        (CountingRule(counts_edges=False), 23),
        (CountingRule(counts_edges=False, counts_splash=False), 20),
        (CountingRule(counts_edges=False, counts_splash=False, deducts_cutouts=True), 16),
        (CountingRule(counts_top=False), 5),
        (CountingRule(counts_top=False, deducts_cutouts=True), 5),
    ],
)
def test_the_rule_says_which_faces_count(rule: CountingRule | None, area: int) -> None:
    assert counted_area(FACES, rule) == area


def test_a_rule_counts_some_face() -> None:
    with pytest.raises(ValueError, match="at least one"):
        CountingRule(counts_top=False, counts_edges=False, counts_splash=False)


def test_an_area_is_rounded_only_when_it_is_counted() -> None:
    faces = measure(Piece(length_in=Decimal(10), width_in=Decimal(10)))

    assert faces.top_sqft == Fraction(25, 36)
    assert counted_area(faces) == Decimal("0.694444")


@pytest.mark.parametrize(
    ("piece", "top"),
    [
        (Piece(area_sqft=Decimal("12.5")), Fraction("12.5")),
        (Piece(length_in=Decimal(48), width_in=Decimal(36)), Fraction(12)),
        (Piece(legs=(rectangle(48, 24), rectangle(36, 12))), Fraction(48 * 24 + 36 * 12 - 24 * 12, 144)),
    ],
)
def test_a_top_is_measured_in_one_of_four_ways(piece: Piece, top: Fraction) -> None:
    assert faults(piece) == []
    assert measure(piece).top_sqft == top


@pytest.mark.parametrize(
    ("piece", "where"),
    [
        (Piece(), [""]),
        (Piece(area_sqft=Decimal(1), diameter_in=Decimal(1)), [""]),
        (Piece(area_sqft=Decimal(1), length_in=Decimal(1), width_in=Decimal(1)), [""]),
        (Piece(diameter_in=Decimal(1), legs=(rectangle(9, 2), rectangle(9, 2))), [""]),
        (Piece(length_in=Decimal(1)), ["/width_in"]),
        (Piece(width_in=Decimal(1)), ["/length_in"]),
        (Piece(area_sqft=Decimal(0)), ["/area_sqft"]),
        (Piece(area_sqft=Decimal("1000000.000001")), ["/area_sqft"]),
        (Piece(length_in=Decimal(-1), width_in=Decimal(0)), ["/length_in", "/width_in"]),
        (Piece(diameter_in=Decimal("NaN")), ["/diameter_in"]),
        (Piece(diameter_in=Decimal("Infinity")), ["/diameter_in"]),
        (Piece(diameter_in=Decimal("1E+999999")), ["/diameter_in"]),
        (Piece(legs=(rectangle(9, 2),)), ["/legs"]),
        (Piece(legs=(rectangle(9, 2),) * 3), ["/legs"]),
        (Piece(legs=(rectangle(9, 0), rectangle(9, 2))), ["/legs/0/width_in"]),
        (Piece(legs=(rectangle(20, 25.5), rectangle(60, 25.5))), ["/legs/0/length_in"]),
        (Piece(legs=(rectangle(120, 25.5), rectangle(25.5, 25.5))), ["/legs/1/length_in"]),
        (Piece(area_sqft=Decimal(2), cutouts=(rectangle(12, 12), rectangle(12, 12))), ["/cutouts"]),
        (Piece(area_sqft=Decimal(2), cutouts=(rectangle(12, 12), rectangle(-1, 12))), ["/cutouts/1/length_in"]),
        (Piece(area_sqft=Decimal(2), edges=(strip(12, 0),)), ["/edges/0/height_in"]),
        (Piece(area_sqft=Decimal(2), splash=(strip(0, 4),)), ["/splash/0/length_in"]),
        (Piece(area_sqft=Decimal(2), edges=(strip(12000, 12000),) * 2), ["/edges"]),
    ],
)
def test_a_piece_that_cannot_be_measured_says_where(piece: Piece, where: list[str]) -> None:
    assert faults(piece) == where
    with pytest.raises(UnmeasurablePiece) as refusal:
        measure(piece)
    assert refusal.value.faults == faults_in(piece)
    assert all(fault.sentence.endswith(".") for fault in refusal.value.faults)


def test_cutouts_may_take_nearly_all_of_a_top_but_not_all() -> None:
    assert faults(Piece(area_sqft=Decimal(1), cutouts=(rectangle(12, "11.999"),))) == []
    assert faults(Piece(area_sqft=Decimal(1), cutouts=(rectangle(12, 12),))) == ["/cutouts"]


@given(inches, inches, inches, inches)
def test_an_l_is_as_large_whichever_leg_is_named_first(a: Decimal, b: Decimal, c: Decimal, d: Decimal) -> None:
    one, other = Rectangle(a + d, b), Rectangle(b + c, d)

    assert measure(Piece(legs=(one, other))) == measure(Piece(legs=(other, one)))


@given(inches, inches, inches, inches)
def test_an_l_is_its_bounding_rectangle_less_the_missing_corner(a: Decimal, b: Decimal, c: Decimal, d: Decimal) -> None:
    long_leg, short_leg = Rectangle(a + d, b), Rectangle(b + c, d)
    around = measure(Piece(length_in=a + d, width_in=b + c)).top_sqft

    assert measure(Piece(legs=(long_leg, short_leg))).top_sqft == around - Fraction(a) * Fraction(c) / 144


@given(inches)
def test_a_round_fills_between_three_and_four_fifths_of_its_square(diameter: Decimal) -> None:
    around = measure(Piece(diameter_in=diameter)).top_sqft
    square = measure(Piece(length_in=diameter, width_in=diameter)).top_sqft

    assert square * Fraction(3, 4) < around < square * Fraction(4, 5)


@given(st.lists(st.tuples(inches, inches), min_size=1, max_size=6))
def test_edges_and_splash_add_up_apart(sizes: list[tuple[Decimal, Decimal]]) -> None:
    strips = tuple(Strip(length, height) for length, height in sizes)
    whole = measure(Piece(area_sqft=Decimal(1), edges=strips, splash=strips[:1]))

    assert whole.edge_sqft == sum(Fraction(length) * Fraction(height) for length, height in sizes) / 144
    assert whole.splash_sqft == Fraction(sizes[0][0]) * Fraction(sizes[0][1]) / 144
