"""What somebody says of a pour, before it is compared with the book."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import datetime
from decimal import Decimal
from typing import Any

from inventory.calc.quantities import Typed


@dataclass(frozen=True, slots=True, kw_only=True)
class Entered:
    """One amount of one material. Give `quantity`, or both weighings of its container.

    material, lot, place: ids. lot: None lets the tool choose. place: where a named lot was taken from; None is the
    pour's own place. reason: why it was wasted, or why an expired lot or one on hold was right.
    provenance, lot_provenance: how amount and lot are known; None is the usual for where it was entered.
    """

    material: int
    quantity: Typed | None = None
    weighed_before: Typed | None = None
    weighed_after: Typed | None = None
    lot: int | None = None
    place: int | None = None
    bucket: int | None = None
    is_waste: bool = False
    reason: str = ""
    provenance: str | None = None
    lot_provenance: str | None = None


@dataclass(frozen=True, slots=True)
class PieceShare:
    """A piece under a pour by its id, and its share of the cost in percent where somebody typed one."""

    piece: int
    share_percent: Decimal | None = None


@dataclass(frozen=True, slots=True)
class Leftover:
    """Mixed resin that did not go onto the pour's own pieces.

    went_to: the id of the pour it went to; None is the bin. bucket: which bucket it was left in; None is all of them.
    """

    quantity: Typed
    went_to: int | None = None
    bucket: int | None = None


@dataclass(frozen=True, slots=True)
class Found:
    """There was more of a lot, at the pour's place, than the book said. quantity: how much more."""

    lot: int
    quantity: Typed
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Account:
    """What really happened: amounts, left-over, finds, and beside them what was seen and done.

    usages: None takes what was planned. people (ids), conditions, ticks, note: None leaves what the pour has.
    poured_at: None is the planned time where that had passed when it was put down, else now.
    """

    usages: Sequence[Entered] | None = None
    poured_at: datetime | None = None
    leftover: Leftover | None = None
    found: Sequence[Found] = ()
    people: Sequence[int] | None = None
    conditions: dict[str, Any] | None = None
    ticks: dict[str, Any] | None = None
    note: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """A pour that is to be, or that is put down before it is completed. place, people: ids."""

    pieces: Sequence[PieceShare]
    layer: str
    place: int | None = None
    planned_for: datetime | None = None
    is_redo: bool = False
    people: Sequence[int] = ()
    conditions: dict[str, Any] = field(default_factory=dict)
    ticks: dict[str, Any] = field(default_factory=dict)
    note: str = ""
    usages: Sequence[Entered] = ()
