"""A piece's measures between the JSON that is kept and the plain values that `calc.surfaces` measures."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

from inventory.calc import surfaces
from inventory.calc.rounding import half_even
from inventory.jobs.models import Job, Piece

TOP_KEYS = ("area_sqft", "length_in", "width_in", "legs", "diameter_in")
"""The keys that say the shape of the top; given again, they replace one another."""

PART_KEYS = ("cutouts", "edges", "splash")
MEASURE_KEYS = (*TOP_KEYS, *PART_KEYS)


@dataclass(frozen=True)
class PieceDraft:
    """A piece to be made, `count` times.

    measures: the keys of MEASURE_KEYS; lengths in inches, areas in square feet.
    """

    name: str
    measures: Mapping[str, Any]
    count: int = 1
    area_source: str = Piece.AreaSource.QUOTED


def measured_piece(measures: Mapping[str, Any]) -> surfaces.Piece:
    """The plain value of measures given as Decimals or as the strings that are kept."""
    return surfaces.Piece(
        area_sqft=_length(measures.get("area_sqft")),
        length_in=_length(measures.get("length_in")),
        width_in=_length(measures.get("width_in")),
        diameter_in=_length(measures.get("diameter_in")),
        legs=_rectangles(measures.get("legs")),
        cutouts=_rectangles(measures.get("cutouts")),
        edges=_strips(measures.get("edges")),
        splash=_strips(measures.get("splash")),
    )


def kept_shape(measures: Mapping[str, Any]) -> dict[str, Any]:
    """The measures as JSON, without the ones that were not given; decimals as strings."""
    shape: dict[str, Any] = {}
    for key in MEASURE_KEYS:
        given = measures.get(key)
        if given is None or given == []:
            continue
        if isinstance(given, Sequence) and not isinstance(given, str):
            shape[key] = [{side: _written(size) for side, size in part.items()} for part in given]
        else:
            shape[key] = _written(given)
    return shape


def changed_shape(shape: Mapping[str, Any], changes: Mapping[str, Any]) -> dict[str, Any]:
    """The kept shape after an edit. A new way of giving the top replaces the old one whole, each part only itself."""
    kept = dict(shape)
    if any(key in changes for key in TOP_KEYS):
        kept = {key: given for key, given in kept.items() if key not in TOP_KEYS}
    return kept_shape({**kept, **{key: changes[key] for key in MEASURE_KEYS if key in changes}})


def counting_rule(job: Job) -> surfaces.CountingRule:
    """The rule that the job was made under."""
    return surfaces.CountingRule(
        counts_top=job.counts_top,
        counts_edges=job.counts_edges,
        counts_splash=job.counts_splash,
        deducts_cutouts=job.deducts_cutouts,
    )


def areas(measures: Mapping[str, Any], rule: surfaces.CountingRule) -> dict[str, Decimal]:
    """The area fields of a piece, in square feet to six places. Raises surfaces.UnmeasurablePiece."""
    faces = surfaces.measure(measured_piece(measures))
    return {
        "top_sqft": half_even(faces.top_sqft),
        "edge_sqft": half_even(faces.edge_sqft),
        "splash_sqft": half_even(faces.splash_sqft),
        "cutout_sqft": half_even(faces.cutout_sqft),
        "area_sqft": surfaces.counted_area(faces, rule),
    }


def _length(given: Any) -> Decimal | None:
    return None if given is None else Decimal(given)


def _rectangles(given: Any) -> tuple[surfaces.Rectangle, ...]:
    return tuple(surfaces.Rectangle(Decimal(part["length_in"]), Decimal(part["width_in"])) for part in given or ())


def _strips(given: Any) -> tuple[surfaces.Strip, ...]:
    return tuple(surfaces.Strip(Decimal(part["length_in"]), Decimal(part["height_in"])) for part in given or ())


def _written(size: Any) -> str:
    """A decimal without idle zeros."""
    text = f"{Decimal(size):f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def finished_area(pieces: Iterable[Piece]) -> Decimal:
    """The area in square feet of the pieces that are not scrapped."""
    return sum((piece.area_sqft for piece in pieces if not piece.is_scrapped), Decimal(0))
