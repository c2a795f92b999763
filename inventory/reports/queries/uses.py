"""Where a lot went: every pour, top, job, customer and sample board that holds any, and where the rest is."""

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal
from itertools import groupby, starmap
from operator import itemgetter
from typing import Any, NamedTuple

from inventory.calc.genealogy import Quantity
from inventory.calc.job_cost import piece_weights
from inventory.jobs.models import Purpose
from inventory.reports.queries.sql import among, as_day, fetch
from inventory.reports.queries.trace import (
    ON_HAND,
    Traced,
    arrived,
    lots_of_this_number,
    over_tops,
    trace_forward,
)
from inventory.shop.fields import to_decimal
from inventory.stock.book import as_moment
from inventory.stock.models import Kind

WASTED = Kind.WASTED.value


class LotName(NamedTuple):
    """A lot as a trace shows it."""

    id: int
    number: int
    lot_number: str
    status: str
    received_on: date
    material: int
    material_name: str
    unit: str


class PouredOn(NamedTuple):
    """A pour on one of its tops, with the top's job and customer. What is of a top is None of a pour on none."""

    pour: int
    pour_number: int
    layer: str
    is_redo: bool
    poured_at: Any
    piece: int
    number: int
    name: str
    is_scrapped: bool
    area: int
    share_percent: int | None
    job: int
    job_number: int
    title: str
    purpose: str
    customer: int
    customer_name: str

    @property
    def is_board(self) -> bool:
        """Whether the top is a sample board."""
        return self.purpose == Purpose.SAMPLE


class TopUse(NamedTuple):
    """A top, and how much of the lot is on it."""

    on: PouredOn
    millionths: int

    @property
    def quantity(self) -> Decimal:
        return to_decimal(self.millionths, 6)


class PourUse(NamedTuple):
    """A pour, and how much of the lot went into it, in millionths; of that, what was thrown away."""

    of: PouredOn
    millionths: int
    wasted_millionths: int
    tops: list[TopUse]

    @property
    def pour(self) -> int:
        return self.of.pour

    @property
    def poured_at(self) -> datetime:
        return as_moment(self.of.poured_at)

    @property
    def quantity(self) -> Decimal:
        return to_decimal(self.millionths, 6)

    @property
    def wasted(self) -> Decimal:
        return to_decimal(self.wasted_millionths, 6)


class JobUse(NamedTuple):
    """A job, by one of its tops, and how much of the lot is on how many of them."""

    of: PouredOn
    millionths: int
    tops: int

    @property
    def quantity(self) -> Decimal:
        return to_decimal(self.millionths, 6)


@dataclass(frozen=True, slots=True)
class RestOf:
    """What is not in a pour: on hand at a place, or written off, returned, sold or given away, counted off.

    lot: where it lies, or what it left: the lot itself, or one that it went into.
    """

    what: str
    lot: LotName
    place: str | None
    quantity: Decimal


@dataclass(frozen=True, slots=True)
class Through:
    """A lot that was opened or mixed from the traced ones. quantity: how much of them ever was in it."""

    lot: LotName
    quantity: Decimal


@dataclass(frozen=True, slots=True)
class Uses:
    """Where lots of one material went, in its stock unit, net of what was undone.

    total: all that ever came in: received, found, opened and mixed. The exact parts sum to it; each is shown to the
    millionth, so that those that went through a mix may miss it by half a millionth each.
    difference: total less what is traced, exactly; 0 unless the ledger is damaged.
    """

    lots: list[LotName]
    unit: str
    received: Decimal
    found: Decimal
    opened: Decimal
    blended: Decimal
    total: Decimal
    difference: Decimal
    pours: list[PourUse]
    jobs: list[JobUse]
    rest: list[RestOf]
    through: list[Through]


def uses_of_lot(lot: int, *, all_of_this_number: bool = False) -> Uses:
    """Every use of a lot, or of all lots of its number, through any depth. Seven SQL statements at most."""
    lots = lots_of_this_number(lot) if all_of_this_number else [lot]
    traced = trace_forward(lots)
    came = arrived(lots)
    names = lot_names({*lots, *traced.carried, *(part.lot for part in traced.parts if part.lot)})
    pours = _pours(traced)
    return Uses(
        lots=[names[lot] for lot in lots],
        unit=names[lots[0]].unit,
        received=to_decimal(came.received, 6),
        found=to_decimal(came.found, 6),
        opened=to_decimal(came.opened, 6),
        blended=to_decimal(came.blended, 6),
        total=to_decimal(came.total, 6),
        difference=to_decimal(round(came.total - traced.total), 6),
        pours=pours,
        jobs=_jobs(pours),
        rest=_rest(traced, names),
        through=[
            Through(names[lot], to_decimal(round(quantity), 6))
            for lot, quantity in traced.carried.items()
            if lot not in lots
        ],
    )


def lot_names(lots: Iterable[int]) -> dict[int, LotName]:
    """These lots with what a trace shows of them. One SQL statement."""
    these, ids = among("l.id", lots)
    rows = fetch(
        "SELECT l.id, l.number, l.lot_number, l.status, l.received_on, t.id, t.name, t.stock_unit "
        f"FROM stock_lot l JOIN catalog_material t ON t.id = l.material_id WHERE {these}",
        [ids],
    )
    return {row[0]: LotName._make((*row[:4], as_day(row[4]), *row[5:])) for row in rows}


def _rest(traced: Traced, names: Mapping[int, LotName]) -> list[RestOf]:
    places = dict(fetch("SELECT id, name FROM stock_place"))
    order = [ON_HAND, *Kind.values]
    rest = [
        RestOf(part.kind, names[part.lot], places.get(part.place), to_decimal(round(quantity), 6))
        for part, quantity in traced.parts.items()
        if part.lot
    ]
    return sorted(rest, key=lambda row: (order.index(row.what), row.lot.number, row.place or ""))


def _pours(traced: Traced) -> list[PourUse]:
    """The pours, earliest first, each with its tops. One SQL statement."""
    whole: dict[int, Quantity] = {}
    wasted: dict[int, Quantity] = {}
    for part, quantity in traced.parts.items():
        if pour := part.cause:
            whole[pour] = whole[pour] + quantity if pour in whole else quantity
            if part.kind == WASTED:
                wasted[pour] = quantity
    found = []
    for pour, of_pour in groupby(_poured_on(whole), key=itemgetter(0)):
        on = list(of_pour)
        millionths = round(whole[pour])
        tops = list(map(TopUse, on, shares_of(millionths, on))) if on[0].piece else []
        found.append(PourUse(on[0], millionths, round(wasted[pour]) if pour in wasted else 0, tops))
    return found


def shares_of(quantity: int, on: Sequence[PouredOn]) -> list[int]:
    """What of a quantity in a pour is on each of its tops."""
    if len(on) == 1:
        return [quantity]
    return over_tops(quantity, piece_weights([top.area for top in on], [top.share_percent for top in on]))


def _jobs(pours: Iterable[PourUse]) -> list[JobUse]:
    on_job: dict[int, int] = defaultdict(int)
    tops: dict[int, dict[int, PouredOn]] = defaultdict(dict)
    for pour in pours:
        for on, millionths in pour.tops:
            on_job[on.job] += millionths
            tops[on.job][on.piece] = on
    return [
        JobUse(next(iter(tops[job].values())), millionths, len(tops[job])) for job, millionths in sorted(on_job.items())
    ]


def _poured_on(pours: Collection[int]) -> Iterator[PouredOn]:
    these, ids = among("o.id", pours)
    rows = fetch(
        "SELECT o.id, o.number, o.layer, o.is_redo, o.poured_at, p.id, p.number, p.name, p.is_scrapped, p.area_sqft, "
        "pp.share_percent, j.id, j.number, j.title, j.purpose, c.id, c.name FROM pours_pour o "
        "LEFT JOIN pours_pourpiece pp ON pp.pour_id = o.id LEFT JOIN jobs_piece p ON p.id = pp.piece_id "
        "LEFT JOIN jobs_job j ON j.id = p.job_id LEFT JOIN jobs_customer c ON c.id = j.customer_id "
        f"WHERE {these} ORDER BY o.poured_at, o.id, pp.id",
        [ids],
    )
    return starmap(PouredOn, rows)
