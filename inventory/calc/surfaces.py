"""How many square feet a piece has: its top, its edges, its splash and its cut-outs, apart and as the shop counts them.

Lengths are inches as a tape measure shows them, areas are square feet, and everything stays an exact fraction until
`counted_area` rounds. What cannot be measured is told as a list of faults, each with the field it lies in.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from inventory.calc.rounding import half_even

SQIN_PER_SQFT = 144
# π to 50 decimals; OEIS A000796.
PI = Fraction("3.14159265358979323846264338327950288419716939937510")

LONGEST_IN = Decimal(12000)
"""The longest side that a piece may have, in inches: a thousand feet."""

LARGEST_SQFT = Decimal(1_000_000)
"""The largest face that a piece may have, in square feet."""

FieldPath = tuple[str | int, ...]


@dataclass(frozen=True)
class Rectangle:
    """A rectangle lying flat, a leg of an L or a cut-out, in inches. A leg's width is its depth."""

    length_in: Decimal
    width_in: Decimal

    @property
    def sqin(self) -> Fraction:
        return Fraction(self.length_in) * Fraction(self.width_in)


@dataclass(frozen=True)
class Strip:
    """A coated upright face, an edge or a splash, in inches."""

    length_in: Decimal
    height_in: Decimal

    @property
    def sqin(self) -> Fraction:
        return Fraction(self.length_in) * Fraction(self.height_in)


@dataclass(frozen=True)
class Piece:
    """The measures of one piece. The shape of its top is given in exactly one of four ways.

    area_sqft: the area of the top itself, as a template or drawing gave it.
    length_in, width_in: a rectangle.
    legs: the two legs of an L, each measured over its full length with the corner in it.
    diameter_in: a round.
    cutouts: holes for sinks and hobs. edges, splash: the upright faces that are coated.
    """

    area_sqft: Decimal | None = None
    length_in: Decimal | None = None
    width_in: Decimal | None = None
    legs: tuple[Rectangle, ...] = ()
    diameter_in: Decimal | None = None
    cutouts: tuple[Rectangle, ...] = ()
    edges: tuple[Strip, ...] = ()
    splash: tuple[Strip, ...] = ()


@dataclass(frozen=True)
class Fault:
    """What is wrong with a measure: where, as a path of field names and positions, and a sentence that mends it.

    An empty path means the piece as a whole.
    """

    path: FieldPath
    sentence: str

    @property
    def pointer(self) -> str:
        """The path as a JSON pointer (RFC 6901): `/legs/0/width_in`."""
        return "".join(f"/{step}" for step in self.path)


class UnmeasurablePiece(ValueError):
    """A piece whose measures have faults; `faults` lists them."""

    def __init__(self, faults: list[Fault]) -> None:
        super().__init__(" ".join(fault.sentence for fault in faults))
        self.faults = faults


@dataclass(frozen=True)
class Faces:
    """The areas of a piece in square feet, exact. `top_sqft` is the whole top, with the cut-outs still in it."""

    top_sqft: Fraction
    edge_sqft: Fraction
    splash_sqft: Fraction
    cutout_sqft: Fraction


@dataclass(frozen=True)
class CountingRule:
    """Which faces count as a piece's area. Raises ValueError where none does."""

    counts_top: bool = True
    counts_edges: bool = True
    counts_splash: bool = True
    deducts_cutouts: bool = False

    def __post_init__(self) -> None:
        if not (self.counts_top or self.counts_edges or self.counts_splash):
            raise ValueError("at least one of top, edges and splash must count as area")


def faults_in(piece: Piece) -> list[Fault]:
    """Everything that keeps a piece from being measured; empty where nothing does.

    Faults: no shape or more than one, a measure that is not above zero or too large, an L without two legs or with a
    leg no longer than the other is deep, cut-outs that leave nothing of the top.
    """
    faults = [*_shape_faults(piece), *_size_faults(piece)]
    if faults:
        return faults
    faults = list(_leg_faults(piece.legs))
    if faults:
        return faults
    return list(_area_faults(_faces(piece)))


def measure(piece: Piece) -> Faces:
    """The areas of a piece's faces.

    Rectangle length × width; round π/4 × diameter²; L both legs less the corner that they share, which is as large as
    one depth by the other.
    Raises UnmeasurablePiece with every fault of `faults_in`.

    >>> legs = (Rectangle(Decimal(120), Decimal("25.5")), Rectangle(Decimal(60), Decimal("25.5")))
    >>> measure(Piece(legs=legs)).top_sqft
    Fraction(1751, 64)
    """
    faults = faults_in(piece)
    if faults:
        raise UnmeasurablePiece(faults)
    return _faces(piece)


def counted_area(faces: Faces, rule: CountingRule | None = None) -> Decimal:
    """A piece's area in square feet by the shop's counting rule, rounded half-even to six places.

    rule: without one, top, edges and splash count and cut-outs are not deducted.
    """
    rule = rule or CountingRule()
    top = faces.top_sqft - (faces.cutout_sqft if rule.deducts_cutouts else 0)
    return half_even(
        (top if rule.counts_top else Fraction(0))
        + (faces.edge_sqft if rule.counts_edges else 0)
        + (faces.splash_sqft if rule.counts_splash else 0)
    )


def _faces(piece: Piece) -> Faces:
    return Faces(
        top_sqft=_top_sqft(piece),
        edge_sqft=_sqft(piece.edges),
        splash_sqft=_sqft(piece.splash),
        cutout_sqft=_sqft(piece.cutouts),
    )


def _top_sqft(piece: Piece) -> Fraction:
    if piece.area_sqft is not None:
        return Fraction(piece.area_sqft)
    if piece.diameter_in is not None:
        return PI / 4 * Fraction(piece.diameter_in) ** 2 / SQIN_PER_SQFT
    if piece.legs:
        one, other = piece.legs
        corner = Fraction(one.width_in) * Fraction(other.width_in)
        return (one.sqin + other.sqin - corner) / SQIN_PER_SQFT
    assert piece.length_in is not None
    assert piece.width_in is not None
    return Rectangle(piece.length_in, piece.width_in).sqin / SQIN_PER_SQFT


def _sqft(parts: tuple[Rectangle, ...] | tuple[Strip, ...]) -> Fraction:
    return sum((part.sqin for part in parts), Fraction(0)) / SQIN_PER_SQFT


def _shape_faults(piece: Piece) -> Iterator[Fault]:
    is_rectangle = piece.length_in is not None or piece.width_in is not None
    ways = [piece.area_sqft is not None, is_rectangle, bool(piece.legs), piece.diameter_in is not None]
    if not any(ways):
        yield Fault((), "Give the top's area_sqft, its length_in and width_in, its two legs, or its diameter_in.")
    if sum(ways) > 1:
        yield Fault((), "Give the top in one way only: area_sqft, or length_in and width_in, or legs, or diameter_in.")
    if is_rectangle and piece.length_in is None:
        yield Fault(("length_in",), "A width needs its length beside it.")
    if is_rectangle and piece.width_in is None:
        yield Fault(("width_in",), "A length needs its width beside it.")
    if piece.legs and len(piece.legs) != 2:
        yield Fault(("legs",), "An L has two legs; give a longer run as pieces of its own, or its whole area_sqft.")


def _size_faults(piece: Piece) -> Iterator[Fault]:
    for path, size in _sizes(piece):
        most, unit = (LARGEST_SQFT, "square feet") if path == ("area_sqft",) else (LONGEST_IN, "inches")
        if not size.is_finite() or size <= 0:
            yield Fault(path, "A measure must be above zero.")
        elif size > most:
            yield Fault(path, f"At most {most:,} {unit} can be given here.")


def _sizes(piece: Piece) -> Iterator[tuple[FieldPath, Decimal]]:
    """Every measure that was given, with its path."""
    for name in ("area_sqft", "length_in", "width_in", "diameter_in"):
        size = getattr(piece, name)
        if size is not None:
            yield (name,), size
    for field, flats in (("legs", piece.legs), ("cutouts", piece.cutouts)):
        for position, flat in enumerate(flats):
            yield (field, position, "length_in"), flat.length_in
            yield (field, position, "width_in"), flat.width_in
    for field, strips in (("edges", piece.edges), ("splash", piece.splash)):
        for position, strip in enumerate(strips):
            yield (field, position, "length_in"), strip.length_in
            yield (field, position, "height_in"), strip.height_in


def _leg_faults(legs: tuple[Rectangle, ...]) -> Iterator[Fault]:
    for position, leg in enumerate(legs):
        other = legs[1 - position]
        if leg.length_in <= other.width_in:
            yield Fault(
                ("legs", position, "length_in"),
                f"This leg of {leg.length_in:f} in is no longer than the other is deep ({other.width_in:f} in), so the"
                " two make no L: measure each leg over its full length, with the corner in it.",
            )


def _area_faults(faces: Faces) -> Iterator[Fault]:
    if faces.cutout_sqft >= faces.top_sqft:
        yield Fault(
            ("cutouts",),
            f"The cut-outs come to {half_even(faces.cutout_sqft, 2)} sq ft and the top to"
            f" {half_even(faces.top_sqft, 2)} sq ft: they must leave some of it.",
        )
    for name, area in (("edges", faces.edge_sqft), ("splash", faces.splash_sqft)):
        if area > LARGEST_SQFT:
            yield Fault((name,), f"Together these are more than {LARGEST_SQFT:,} square feet.")
