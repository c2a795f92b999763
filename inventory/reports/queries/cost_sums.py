"""The statements behind cost per square foot: what tops there are, what went into their pours, and what that rests on.

Whatever lies in one group is summed by the database. Only a pour whose tops belong to different groups (or partly to
none) comes here whole, apart by what it took, to be divided exactly.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from enum import IntFlag
from functools import cache
from typing import Any, NamedTuple

from django.db.models import TextChoices

from inventory.calc.job_cost import piece_weights, share_out
from inventory.catalog.models import MaterialKind
from inventory.jobs.models import Purpose
from inventory.pours.models import REDO_LAYERS, PourStatus
from inventory.reports.queries.sql import among, as_day, day_parameter, fetch, month_number
from inventory.stock.models import Basis, Kind

EVERY_PURPOSE = "all"
KINDS = tuple(MaterialKind)
SLOTS = 256
"""Room for the slots of one group: the material's kind × 16, + what it rests on × 4, + 2 if redone, + 1 if wasted."""


class GroupBy(TextChoices):
    JOB = "job", "Job"
    PIECE = "piece", "Top"
    MONTH = "month", "Month"
    CUSTOMER = "customer", "Customer"
    MATERIAL_KIND = "material_kind", "Kind of material"


class State(TextChoices):
    FINISHED = "finished", "Finished"
    UNFINISHED = "unfinished", "Not finished yet"
    ALL = "all", "Both"


class RestsOn(IntFlag):
    """What a cost rests on beside prices that were paid."""

    FREE_GOODS = 1
    PROVISIONAL_PRICES = 2


@dataclass(frozen=True, slots=True)
class Question:
    """Which jobs' tops, grouped how. The days are those on which jobs were finished; unfinished jobs have none.

    group: the number of one group, to look at it alone.
    """

    group_by: GroupBy = GroupBy.JOB
    first_day: date | None = None
    last_day: date | None = None
    purpose: str = Purpose.CUSTOMER
    state: State = State.FINISHED
    group: int | None = None


class Slot(NamedTuple):
    """What money went for: which kind of material, resting on what, in a redone coat or not, wasted or not."""

    kind: MaterialKind
    rests_on: RestsOn
    is_redo: bool
    is_waste: bool


class Tops(NamedTuple):
    """The tops of one group. area: of those not scrapped, in millionths of a square foot.

    poured: tops with a completed coat, not a redone one. unpoured: tops without, not scrapped.
    first_*: of the first job or top of the group.
    """

    group: int
    pieces: int
    scrapped: int
    poured: int
    unpoured: int
    area: int
    first_job: int | None
    first_job_number: int
    first_title: str
    finished_on: date | None
    first_customer: int
    first_customer_name: str
    first_piece: int | None
    first_piece_number: int | None
    first_piece_name: str | None


IS_REDO = f"(o.is_redo OR o.layer IN ({', '.join(repr(layer.value) for layer in REDO_LAYERS)}))"
IS_CONSUMED = f"m.kind IN ('{Kind.USED.value}', '{Kind.WASTED.value}')"
HAS_A_COAT = (
    "EXISTS (SELECT 1 FROM pours_pourpiece pp CROSS JOIN pours_pour o "  # in that order: few pours are on a top
    f"WHERE pp.piece_id = p.id AND o.id = pp.pour_id AND o.status = '{PourStatus.COMPLETED.value}' AND NOT {IS_REDO})"
)
KIND_INDEX = f"CASE t.kind {' '.join(f'WHEN {kind.value!r} THEN {at}' for at, kind in enumerate(KINDS))} END"
MARKED_LOTS = f"""
    lots (lot, slot) AS MATERIALIZED (
        SELECT l.id, {KIND_INDEX} * 16
            + CASE WHEN l.basis <> '{Basis.PAID.value}' THEN {RestsOn.FREE_GOODS.value * 4} ELSE 0 END
            + CASE WHEN l.is_provisional THEN {RestsOn.PROVISIONAL_PRICES.value * 4} ELSE 0 END
        FROM stock_lot l JOIN catalog_material t ON t.id = l.material_id
    )
"""
"""Each lot's part of the slot. What a lot rests on is kept on the lot, also through mixes and openings."""


def group_number(group_by: GroupBy) -> str:
    """SQL for the number of the group that a top lies in; even for finished jobs, odd for unfinished ones."""
    base = {
        GroupBy.JOB: "j.id",
        GroupBy.PIECE: "p.id",
        GroupBy.MONTH: f"COALESCE({month_number('j.finished_on')}, 0)",
        GroupBy.CUSTOMER: "j.customer_id",
        GroupBy.MATERIAL_KIND: "0",
    }[group_by]
    return f"({base} * 2 + CASE WHEN j.finished_on IS NULL THEN 1 ELSE 0 END)"


def chosen_jobs(question: Question) -> tuple[str, list[Any]]:
    """The condition that a top is asked about, and its parameters."""
    period, parameters = ["j.finished_on IS NOT NULL"], []
    for day, sign in ((question.first_day, ">="), (question.last_day, "<=")):
        if day is not None:
            period.append(f"j.finished_on {sign} %s")
            parameters.append(day_parameter(day))
    finished = f"({' AND '.join(period)})"
    match question.state:
        case State.FINISHED:
            condition = finished
        case State.UNFINISHED:
            condition, parameters = "j.finished_on IS NULL", []
        case _:
            condition = f"(j.finished_on IS NULL OR {finished})"
    if question.purpose != EVERY_PURPOSE:
        condition += " AND j.purpose = %s"
        parameters.append(question.purpose)
    if question.group is not None:
        condition += f" AND {group_number(question.group_by)} = %s"
        parameters.append(question.group)
    return condition, parameters


def tops(question: Question) -> list[Tops]:
    """The groups with their tops; a job without tops is a group of none. One SQL statement."""
    condition, parameters = chosen_jobs(question)
    join = "JOIN" if question.group_by is GroupBy.PIECE else "LEFT JOIN"
    rows = fetch(
        f"""
        SELECT {group_number(question.group_by)},
            COUNT(p.id), COUNT(CASE WHEN p.is_scrapped THEN 1 END), COUNT(CASE WHEN {HAS_A_COAT} THEN 1 END),
            COUNT(CASE WHEN NOT p.is_scrapped AND NOT {HAS_A_COAT} THEN 1 END),
            COALESCE(SUM(CASE WHEN p.is_scrapped THEN 0 ELSE p.area_sqft END), 0),
            MIN(j.id), MIN(j.number), MIN(j.title), MIN(j.finished_on), MIN(c.id), MIN(c.name),
            MIN(p.id), MIN(p.number), MIN(p.name)
        FROM jobs_job j JOIN jobs_customer c ON c.id = j.customer_id {join} jobs_piece p ON p.job_id = j.id
        WHERE {condition} GROUP BY 1 ORDER BY 1
        """,
        parameters,
    )
    return [Tops._make((*map(int, row[:6]), *row[6:9], as_day(row[9]), *row[10:])) for row in rows]


def costs(question: Question) -> dict[int, dict[Slot, int]]:
    """What each group's tops cost, in ten-thousandths, apart by slot; what was taken back is not there.

    A pour that lies in one group is summed with the rest of it (numbered from 0); any other keeps its own sums, under
    its id with a minus sign, until its tops' shares are known. Two SQL statements.
    """
    condition, parameters = chosen_jobs(question)
    sums = fetch(
        f"""
        WITH {MARKED_LOTS}, asked (piece, number) AS MATERIALIZED (
            SELECT p.id, {group_number(question.group_by)}
            FROM jobs_job j JOIN jobs_piece p ON p.job_id = j.id WHERE {condition}
        ), chosen (pour, low, high, pieces) AS MATERIALIZED (
            SELECT pp.pour_id, MIN(asked.number), MAX(asked.number), COUNT(*)
            FROM asked CROSS JOIN pours_pourpiece pp WHERE pp.piece_id = asked.piece GROUP BY pp.pour_id
        ), grouped (pour, slots) AS MATERIALIZED (
            SELECT chosen.pour, {SLOTS} * CASE WHEN low = high AND pieces = (
                SELECT COUNT(*) FROM pours_pourpiece w WHERE w.pour_id = chosen.pour
            ) THEN low ELSE -chosen.pour END + CASE WHEN {IS_REDO} THEN 2 ELSE 0 END
            FROM chosen CROSS JOIN pours_pour o WHERE o.id = chosen.pour
        )
        SELECT grouped.slots + lots.slot + CASE WHEN m.kind = '{Kind.WASTED.value}' THEN 1 ELSE 0 END, -SUM(m.value)
        FROM grouped CROSS JOIN stock_movement m CROSS JOIN lots
        WHERE m.cause = grouped.pour AND lots.lot = m.lot_id AND {IS_CONSUMED}
        GROUP BY 1 HAVING SUM(m.quantity) <> 0 OR SUM(m.value) <> 0
        """,
        parameters,
    )
    found: dict[int, dict[Slot, int]] = defaultdict(dict)
    shared: dict[int, dict[Slot, int]] = defaultdict(dict)
    for packed, value in sums:
        group, slot = divmod(int(packed), SLOTS)
        into, key = (found, group) if group >= 0 else (shared, -group)
        into[key][slot_of(slot)] = int(value)
    if shared:
        _divide(question, shared, found)
    return found


@cache
def slot_of(packed: int) -> Slot:
    """
    >>> slot_of(17)
    Slot(kind=MaterialKind.HARDENER, rests_on=<RestsOn: 0>, is_redo=False, is_waste=True)
    """
    return Slot(KINDS[packed // 16], RestsOn(packed // 4 % 4), bool(packed & 2), bool(packed & 1))


class PieceShare(NamedTuple):
    """A top under a pour. group: None where it is not asked about. weight: its part of the pour's cost."""

    group: int | None
    weight: int


def shares_of(question: Question, pours: Iterable[int]) -> dict[int, list[PieceShare]]:
    """By what each of these pours is divided over its tops. One SQL statement."""
    condition, parameters = chosen_jobs(question)
    these, ids = among("pp.pour_id", pours)
    rows = fetch(
        f"""
        SELECT pp.pour_id, CASE WHEN {condition} THEN {group_number(question.group_by)} END,
            p.area_sqft, pp.share_percent
        FROM pours_pourpiece pp JOIN jobs_piece p ON p.id = pp.piece_id JOIN jobs_job j ON j.id = p.job_id
        WHERE {these} ORDER BY pp.id
        """,
        [*parameters, ids],
    )
    by_pour: dict[int, list[tuple[Any, ...]]] = defaultdict(list)
    for pour, *piece in rows:
        by_pour[pour].append(tuple(piece))
    return {
        pour: [
            PieceShare(group, weight)
            for (group, _, _), weight in zip(
                pieces, piece_weights([row[1] for row in pieces], [row[2] for row in pieces]), strict=True
            )
        ]
        for pour, pieces in by_pour.items()
    }


def _divide(question: Question, shared: Mapping[int, Mapping[Slot, int]], found: dict[int, dict[Slot, int]]) -> None:
    """Add to each group what falls on its tops of the pours that it shares."""
    for pour, pieces in shares_of(question, shared).items():
        for piece, part in zip(pieces, parts_of(shared[pour], pieces), strict=True):
            if piece.group is None or not piece.weight:
                continue
            sums = found[piece.group]
            for slot, value in part.items():
                sums[slot] = sums.get(slot, 0) + value


def parts_of(amounts: Mapping[Slot, int], pieces: Sequence[PieceShare]) -> list[dict[Slot, int]]:
    """What of a pour's amounts falls on each of its tops, to the last ten-thousandth."""
    slots = sorted(amounts)
    parts = share_out([amounts[slot] for slot in slots], [piece.weight for piece in pieces])
    return [dict(zip(slots, part, strict=True)) for part in parts]
