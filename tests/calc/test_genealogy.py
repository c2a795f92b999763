"""Trace: what a lot went into and what a pour came from are one and the same book, read both ways."""

from __future__ import annotations

import random
from dataclasses import dataclass
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.calc.genealogy import Edge, Quantity, carried_into, sources_of, totals_of, uses_of

Parts = dict[int, list[tuple[str, int]]]


@dataclass(frozen=True)
class Book:
    """Lots numbered from the ground up: a lot only ever goes into a lot with a higher number."""

    edges: list[Edge]
    parts: Parts

    @property
    def totals(self) -> dict[int, int]:
        return totals_of(edges=self.edges, parts=self.parts)

    def uses_of(self, *lots: int) -> dict[str, Quantity]:
        return uses_of(lots, edges=self.edges, parts=self.parts)

    def sources_of(self, key: str) -> dict[int, Quantity]:
        return sources_of(self.taken_by(key), edges=self.edges, totals=self.totals)

    def taken_by(self, key: str) -> list[tuple[int, int]]:
        return [(lot, quantity) for lot, parts in self.parts.items() for name, quantity in parts if name == key]

    @property
    def keys(self) -> set[str]:
        return {key for parts in self.parts.values() for key, _ in parts}


@st.composite
def books(draw: st.DrawFn, depth: int = 9) -> Book:
    """Up to nine lots, each possibly made from any before it: eight blends deep at most."""
    lots = range(draw(st.integers(1, depth)))
    quantity = st.integers(1, 10**9)
    names = st.sampled_from(["pour 1", "pour 2", "pour 3", "shelf", "van", "written off"])
    parts = {lot: draw(st.lists(st.tuples(names, quantity), min_size=1, max_size=3)) for lot in lots}
    pairs = [(low, high) for high in lots for low in range(high)]
    ways = draw(st.lists(st.sampled_from(pairs), max_size=14)) if pairs else []
    return Book([Edge(low, high, draw(quantity)) for low, high in ways], parts)


def along_every_path(book: Book, lot: int) -> dict[str, Fraction]:
    """The same trace told naively: every path from the lot to a part is walked on its own."""
    found: dict[str, Fraction] = {}

    def walk(here: int, held: Fraction) -> None:
        total = sum(q for _, q in book.parts[here]) + sum(e.quantity for e in book.edges if e.source == here)
        for key, quantity in book.parts[here]:
            found[key] = found.get(key, Fraction(0)) + held * quantity / total
        for edge in book.edges:
            if edge.source == here:
                walk(edge.target, held * edge.quantity / total)

    walk(lot, Fraction(book.totals[lot]))
    return found


@given(books())
def test_what_is_traced_sums_to_all_that_ever_was_in_the_lot(book: Book) -> None:
    for lot, total in book.totals.items():
        assert sum(book.uses_of(lot).values()) == total


@given(books())
def test_a_pour_holds_of_a_lot_what_the_lot_s_uses_list_for_that_pour(book: Book) -> None:
    forward = {(lot, key): quantity for lot in book.parts for key, quantity in book.uses_of(lot).items()}
    backward = {(lot, key): quantity for key in book.keys for lot, quantity in book.sources_of(key).items()}
    assert forward == backward


@given(books())
def test_the_trace_agrees_with_walking_every_path(book: Book) -> None:
    for lot in book.parts:
        assert book.uses_of(lot) == along_every_path(book, lot)


@given(books(), st.randoms(use_true_random=False))
def test_the_order_of_the_book_does_not_matter(book: Book, chance: random.Random) -> None:
    lots = chance.sample(list(book.parts), len(book.parts))
    shuffled = Book(
        chance.sample(book.edges, len(book.edges)),
        {lot: chance.sample(book.parts[lot], len(book.parts[lot])) for lot in lots},
    )
    for lot in lots:
        assert shuffled.uses_of(lot) == book.uses_of(lot)
    for key in book.keys:
        assert shuffled.sources_of(key) == book.sources_of(key)


@given(books(), st.data())
def test_lots_traced_together_are_counted_once(book: Book, data: st.DataObject) -> None:
    """Each traced lot stands for itself: what another of them put into it is not counted a second time."""
    traced = data.draw(st.sets(st.sampled_from(sorted(book.parts)), min_size=1))
    ends = {lot: list(parts) for lot, parts in book.parts.items()}
    for edge in book.edges:
        if edge.target in traced:
            ends[edge.source].append(("went into a traced lot", edge.quantity))
    cut = Book([edge for edge in book.edges if edge.target not in traced], ends)
    expected: dict[str, Quantity] = {}
    for lot in traced:
        for key, quantity in cut.uses_of(lot).items():
            expected[key] = expected.get(key, 0) + quantity
    expected.pop("went into a traced lot", None)
    assert book.uses_of(*traced) == expected


@given(books())
def test_no_more_of_a_lot_is_in_a_pour_than_the_pour_and_the_lot_can_hold(book: Book) -> None:
    for key in book.keys:
        for lot, quantity in book.sources_of(key).items():
            assert 0 < quantity <= book.totals[lot]


def test_a_jug_of_two_lots_gives_each_pour_its_share_of_both() -> None:
    """600 of lot 1 and 300 of lot 2 make 900; 450 are poured, 150 spilled, 300 stand in the van."""
    book = Book(
        [Edge(1, 3, 600), Edge(2, 3, 300)],
        {1: [("shelf", 400)], 2: [], 3: [("pour", 450), ("spilled", 150), ("van", 300)]},
    )
    assert book.uses_of(1) == {"shelf": 400, "pour": 300, "spilled": 100, "van": 200}
    assert book.uses_of(2) == {"pour": 150, "spilled": 50, "van": 100}
    assert book.sources_of("pour") == {3: 450, 1: 300, 2: 150}


def test_what_was_found_in_a_jug_thins_the_share_and_loses_nothing() -> None:
    """100 went in, 125 became of it: a count found 25 more."""
    book = Book([Edge(1, 2, 100)], {1: [], 2: [("pour", 50), ("shelf", 75)]})
    assert book.uses_of(1) == {"pour": 40, "shelf": 60}
    assert book.sources_of("pour") == {2: 50, 1: 40}


def test_a_blend_counted_in_another_unit_than_its_input_is_traced_in_the_input_s_unit() -> None:
    """90 g of powder in 1,000 mL of a jug, a tenth of it poured: 9 g."""
    book = Book([Edge(1, 2, 90)], {1: [], 2: [("pour", 100), ("shelf", 900)]})
    assert book.uses_of(1) == {"pour": 9, "shelf": 81}


def test_a_jug_decanted_whole_hands_on_just_what_was_in_it() -> None:
    """Half of jug 3 is lot 1; all of it goes into bottle 4, of which a tenth is poured."""
    book = Book([Edge(1, 3, 500), Edge(2, 3, 500), Edge(3, 4, 1000)], {3: [], 4: [("pour", 100), ("shelf", 900)]})
    assert book.uses_of(1) == {"pour": 50, "shelf": 450}
    assert book.uses_of(3) == {"pour": 100, "shelf": 900}
    assert book.sources_of("pour") == {4: 100, 3: 100, 1: 50, 2: 50}


def test_a_transfer_undone_leaves_no_trace() -> None:
    book = Book([Edge(1, 2, 0)], {1: [("shelf", 10), ("pour", 0)], 2: [("pour", 5)]})
    assert book.uses_of(1) == {"shelf": 10}
    assert book.sources_of("pour") == {2: 5}


def test_a_lot_of_which_nothing_is_left_in_the_book_has_no_uses() -> None:
    assert uses_of([1], edges=[], parts={1: []}) == {}
    assert sources_of([], edges=[], totals={}) == {}


def test_what_a_lot_went_into_is_listed_with_how_much_of_it_was_there() -> None:
    book = Book([Edge(1, 2, 60), Edge(2, 3, 30)], {1: [("shelf", 40)], 2: [("pour", 90)], 3: [("pour", 45)]})
    assert carried_into([1], edges=book.edges, totals=book.totals) == {1: 100, 2: 60, 3: 15}


def test_only_a_mixed_lot_makes_fractions() -> None:
    """A pail opened, used thousands of times, and a little of it put into a jug: only the jug's pours are fractions."""
    uses = [(f"pour {number}", 7) for number in range(10_000)]
    book = Book(
        [Edge(1, 2, 70_030), Edge(2, 3, 30), Edge(4, 3, 30)],
        {1: [("shelf", 5)], 2: uses, 3: [("jug 1", 59), ("jug 2", 1)], 4: []},
    )
    traced = book.uses_of(1)
    assert {key: traced[key] for key, _ in uses} == dict(uses)
    assert {key for key, quantity in traced.items() if isinstance(quantity, Fraction)} == {"jug 1", "jug 2"}
    assert traced["jug 2"] == Fraction(1, 2)


def test_a_thousand_blends_deep_is_no_harder_than_one() -> None:
    depth = 1_000
    edges = [Edge(lot, lot + 1, 500_000) for lot in range(depth)]
    book = Book(edges, {lot: [(f"pour {lot}", 500_001)] for lot in range(depth + 1)})
    uses = book.uses_of(0)
    assert len(uses) == depth + 1
    assert sum(uses.values()) == 1_000_001
    assert book.sources_of(f"pour {depth}")[0] == uses[f"pour {depth}"]


def test_many_ways_between_two_lots_are_not_walked_one_by_one() -> None:
    """Sixty layers of three lots, each poured into all three of the next: 3**60 paths."""
    layers = range(60)
    edges = [Edge(3 * layer + i, 3 * layer + 3 + j, 10) for layer in layers for i in range(3) for j in range(3)]
    parts = {lot: [("shelf", 1)] for lot in range(3 * 61)}
    assert sum(Book(edges, parts).uses_of(0).values()) == 31


@pytest.mark.parametrize("edges", [[(1, 1, 5)], [(1, 2, 5), (2, 1, 5)], [(1, 2, 5), (2, 3, 5), (3, 2, 5)]])
def test_lots_that_went_into_each_other_in_a_circle_are_refused(edges: list[tuple[int, int, int]]) -> None:
    parts = {1: [("pour", 5)], 2: [("pour", 5)], 3: [("pour", 5)]}
    with pytest.raises(ValueError, match="circle"):
        uses_of([1], edges=edges, parts=parts)
    with pytest.raises(ValueError, match="circle"):
        sources_of([(lot, 5) for lot in parts], edges=edges, totals=dict.fromkeys(parts, 10))


def test_a_blend_of_which_nothing_is_known_is_refused() -> None:
    with pytest.raises(ValueError, match="lot 2"):
        uses_of([1], edges=[(1, 2, 5)], parts={1: [("pour", 5)]})
    with pytest.raises(ValueError, match="lot 2"):
        sources_of([(2, 5)], edges=[(1, 2, 5)], totals={})


def test_more_than_ever_was_there_cannot_have_been_taken() -> None:
    assert sources_of([(2, 8)], edges=[(1, 2, 4)], totals={2: 8}) == {2: 8, 1: 4}
    with pytest.raises(ValueError, match="lot 2"):
        sources_of([(2, 9)], edges=[(1, 2, 4)], totals={2: 8})


def test_negative_quantities_are_refused() -> None:
    with pytest.raises(ValueError, match="negative"):
        uses_of([1], edges=[], parts={1: [("pour", -5), ("shelf", 9)]})
    with pytest.raises(ValueError, match="negative"):
        uses_of([1], edges=[(1, 2, -5)], parts={1: [("pour", 9)]})
    with pytest.raises(ValueError, match="negative"):
        sources_of([(1, -5)], edges=[], totals={})
