"""Where a lot went: every pour, top, job, customer and sample board that holds any, and where the rest is."""

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal
from typing import Any, NamedTuple

from inventory.jobs.models import Purpose
from inventory.reports.queries.sql import among, as_day, fetch
from inventory.reports.queries.trace import (
    ON_HAND,
    Traced,
    arrived,
    lots_of_this_number,
    over_tops,
    tops_under,
    trace_forward,
)
from inventory.shop.fields import to_decimal
from inventory.stock.book import as_moment
from inventory.stock.models import Kind


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


@dataclass(frozen=True, slots=True)
class TopUse:
    """A top, and how much of the lot is on it. is_board: whether it is a sample board."""

    piece: int
    number: int
    name: str
    job: int
    quantity: Decimal
    is_board: bool
    is_scrapped: bool


@dataclass(frozen=True, slots=True)
class PourUse:
    """A pour, and how much of the lot went into it. wasted: of that, what was thrown away."""

    pour: int
    number: int
    layer: str
    is_redo: bool
    poured_at: datetime
    quantity: Decimal
    wasted: Decimal
    tops: list[TopUse]


@dataclass(frozen=True, slots=True)
class JobUse:
    """A job, and how much of the lot is on its tops."""

    job: int
    number: int
    title: str
    customer: int
    customer_name: str
    purpose: str
    quantity: Decimal
    tops: int


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
    """Every use of a lot, or of all lots of its number, through any depth. Nine SQL statements at most."""
    lots = lots_of_this_number(lot) if all_of_this_number else [lot]
    traced = trace_forward(lots)
    came = arrived(lots)
    names = lot_names({*lots, *traced.carried, *(part.lot for part in traced.parts if part.lot)})
    pours, jobs = _pours(traced)
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
        jobs=jobs,
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


class _Pour(NamedTuple):
    id: int
    number: int
    layer: str
    is_redo: bool
    poured_at: datetime


class _Top(NamedTuple):
    id: int
    number: int
    name: str
    is_scrapped: bool
    job: int
    job_number: int
    title: str
    purpose: str
    customer: int
    customer_name: str


def _pours(traced: Traced) -> tuple[list[PourUse], list[JobUse]]:
    """The pours, earliest first, and the jobs that any of their tops belong to."""
    whole: dict[int, Any] = defaultdict(int)
    wasted: dict[int, Any] = defaultdict(int)
    for part, quantity in traced.parts.items():
        if part.cause:
            whole[part.cause] += quantity
            if part.kind == Kind.WASTED:
                wasted[part.cause] += quantity
    tops_of = tops_under(whole)
    tops = _tops({top.piece for under in tops_of.values() for top in under})
    on_job: dict[int, int] = defaultdict(int)
    on_tops: dict[int, set[int]] = defaultdict(set)
    found = []
    for pour in _named_pours(whole):
        quantity, under = round(whole[pour.id]), tops_of.get(pour.id, [])
        shares = list(zip((tops[top.piece] for top in under), over_tops(quantity, under), strict=True)) if under else []
        for top, share in shares:
            on_job[top.job] += share
            on_tops[top.job].add(top.id)
        found.append(
            PourUse(
                pour.id,
                pour.number,
                pour.layer,
                pour.is_redo,
                pour.poured_at,
                to_decimal(quantity, 6),
                to_decimal(round(wasted[pour.id]), 6),
                [_top_use(top, share) for top, share in shares],
            )
        )
    jobs = {top.job: top for top in tops.values()}
    return found, [
        JobUse(
            job,
            jobs[job].job_number,
            jobs[job].title,
            jobs[job].customer,
            jobs[job].customer_name,
            jobs[job].purpose,
            to_decimal(quantity, 6),
            len(on_tops[job]),
        )
        for job, quantity in sorted(on_job.items())
    ]


def _top_use(top: _Top, share: int) -> TopUse:
    is_board = top.purpose == Purpose.SAMPLE
    return TopUse(top.id, top.number, top.name, top.job, to_decimal(share, 6), is_board, bool(top.is_scrapped))


def _named_pours(pours: Collection[int]) -> list[_Pour]:
    these, ids = among("id", pours)
    rows = fetch(
        f"SELECT id, number, layer, is_redo, poured_at FROM pours_pour WHERE {these} ORDER BY poured_at, id", [ids]
    )
    return [_Pour(pour, number, layer, bool(redo), as_moment(at)) for pour, number, layer, redo, at in rows]


def _tops(pieces: Collection[int]) -> dict[int, _Top]:
    these, ids = among("p.id", pieces)
    rows = fetch(
        "SELECT p.id, p.number, p.name, p.is_scrapped, j.id, j.number, j.title, j.purpose, c.id, c.name "
        "FROM jobs_piece p JOIN jobs_job j ON j.id = p.job_id JOIN jobs_customer c ON c.id = j.customer_id "
        f"WHERE {these}",
        [ids],
    )
    return {row[0]: _Top._make(row) for row in rows}
