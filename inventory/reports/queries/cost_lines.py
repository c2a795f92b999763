"""The ledger's lines behind a row of cost per square foot, each with the part of it that falls on the row's tops."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from typing import NamedTuple

from inventory.calc.apportion import apportion
from inventory.catalog.models import MaterialKind
from inventory.reports.queries.cost import group_of
from inventory.reports.queries.cost_sums import (
    IS_CONSUMED,
    IS_REDO,
    MARKED_LOTS,
    GroupBy,
    PieceShare,
    Question,
    Slot,
    chosen_jobs,
    parts_of,
    shares_of,
    slot_of,
)
from inventory.reports.queries.sql import among, as_day, fetch
from inventory.shop.fields import to_decimal


@dataclass(frozen=True, slots=True)
class CostLine:
    """What a pour took from a lot, with everything that later lines corrected of it.

    quantity, value: of the whole line. share: what of the value falls on the tops asked about.
    """

    movement: int
    pour: int
    pour_number: int
    layer: str
    is_redo: bool
    happened_on: date
    lot: int
    lot_number: str
    material: int
    material_name: str
    material_kind: MaterialKind
    unit: str
    kind: str
    quantity: Decimal
    value: Decimal
    share: Decimal


@dataclass(frozen=True, slots=True)
class MaterialCost:
    """What one material adds to a row."""

    material: int
    name: str
    kind: MaterialKind
    cost: Decimal
    redo_cost: Decimal


@dataclass(frozen=True, slots=True)
class CostLines:
    """cost, redo_cost: the row's own figures, the sums of the lines' shares. materials: the dearest first."""

    cost: Decimal
    redo_cost: Decimal
    materials: list[MaterialCost]
    lines: list[CostLine]


class _Line(NamedTuple):
    movement: int
    pour: int
    slot: int
    kind: str
    quantity: int
    value: int
    happened_on: date
    lot: int
    lot_number: str
    material: int
    material_name: str
    unit: str
    pour_number: int
    layer: str

    @property
    def what(self) -> Slot:
        return slot_of(self.slot)


def cost_lines(question: Question, key: str) -> CostLines:
    """The lines behind one row of `cost_per_sqft(question)`, by its key. Three SQL statements.

    question: asks for finished or for unfinished tops, not both. Raises ValueError for what is no key.
    """
    one_row = replace(question, group=group_of(question.group_by, key, question.state))
    pours = _pours(one_row)
    shares, by_pour = shares_of(one_row, pours), defaultdict(list)
    for line in _lines(pours):
        by_pour[line.pour].append(line)
    of_kind = MaterialKind(key) if question.group_by is GroupBy.MATERIAL_KIND else None
    lines = [
        _cost_line(line, share)
        for pour, rows in by_pour.items()
        for line, share in _shared(rows, shares[pour])
        if of_kind in (None, line.what.kind)
    ]
    lines.sort(key=lambda line: (line.happened_on, line.movement))
    return CostLines(
        cost=_sum(line.share for line in lines if not line.is_redo),
        redo_cost=_sum(line.share for line in lines if line.is_redo),
        materials=_by_material(lines),
        lines=lines,
    )


def _pours(question: Question) -> list[int]:
    condition, parameters = chosen_jobs(question)
    rows = fetch(
        "SELECT DISTINCT pp.pour_id FROM jobs_job j JOIN jobs_piece p ON p.job_id = j.id "
        f"JOIN pours_pourpiece pp ON pp.piece_id = p.id WHERE {condition}",
        parameters,
    )
    return [pour for (pour,) in rows]


def _lines(pours: Sequence[int]) -> list[_Line]:
    these, ids = among("m.cause", pours)
    rows = fetch(
        f"""
        WITH {MARKED_LOTS}, taken (movement, pour, lot, material, kind, quantity, value, day) AS (
            SELECT COALESCE(m.corrects_id, m.id), m.cause, m.lot_id, m.material_id, m.kind,
                -SUM(m.quantity), -SUM(m.value), MIN(m.happened_on)
            FROM stock_movement m WHERE {these} AND {IS_CONSUMED}
            GROUP BY COALESCE(m.corrects_id, m.id), m.cause, m.lot_id, m.material_id, m.kind
            HAVING SUM(m.quantity) <> 0 OR SUM(m.value) <> 0
        )
        SELECT taken.movement, taken.pour, lots.slot + CASE WHEN {IS_REDO} THEN 2 ELSE 0 END
                + CASE WHEN taken.kind = 'wasted' THEN 1 ELSE 0 END,
            taken.kind, taken.quantity, taken.value, taken.day, l.id, l.lot_number, t.id, t.name, t.stock_unit,
            o.number, o.layer
        FROM taken JOIN lots ON lots.lot = taken.lot JOIN stock_lot l ON l.id = taken.lot
        JOIN catalog_material t ON t.id = taken.material JOIN pours_pour o ON o.id = taken.pour
        """,
        [ids],
    )
    return [_Line._make((*row[:4], int(row[4]), int(row[5]), as_day(row[6]), *row[7:])) for row in rows]


def _shared(lines: Sequence[_Line], pieces: Sequence[PieceShare]) -> list[tuple[_Line, int]]:
    """Each line of a pour with what of its money falls on the tops asked about.

    The tops' part of each slot is divided over its lines, so that the shares sum to the row's figure.
    """
    by_slot: dict[Slot, list[_Line]] = defaultdict(list)
    for line in lines:
        by_slot[line.what].append(line)
    amounts = {slot: sum(line.value for line in rows) for slot, rows in by_slot.items()}
    ours: dict[Slot, int] = dict.fromkeys(amounts, 0)
    for piece, part in zip(pieces, parts_of(amounts, pieces), strict=True):
        if piece.group is not None:
            for slot, value in part.items():
                ours[slot] += value
    return [
        (line, share)
        for slot, rows in by_slot.items()
        for line, share in zip(rows, _over_lines(ours[slot], rows), strict=True)
    ]


def _over_lines(amount: int, lines: Sequence[_Line]) -> list[int]:
    values = [line.value for line in lines]
    return apportion(amount, values) if any(values) else [0] * len(values)


def _cost_line(line: _Line, share: int) -> CostLine:
    slot = line.what
    return CostLine(
        movement=line.movement,
        pour=line.pour,
        pour_number=line.pour_number,
        layer=line.layer,
        is_redo=slot.is_redo,
        happened_on=line.happened_on,
        lot=line.lot,
        lot_number=line.lot_number,
        material=line.material,
        material_name=line.material_name,
        material_kind=slot.kind,
        unit=line.unit,
        kind=line.kind,
        quantity=to_decimal(line.quantity, 6),
        value=to_decimal(line.value, 4),
        share=to_decimal(share, 4),
    )


def _by_material(lines: Sequence[CostLine]) -> list[MaterialCost]:
    sums: dict[int, list[Decimal]] = defaultdict(lambda: [Decimal(0), Decimal(0)])
    names: Mapping[int, CostLine] = {line.material: line for line in lines}
    for line in lines:
        sums[line.material][line.is_redo] += line.share
    rows = [
        MaterialCost(material, names[material].material_name, names[material].material_kind, cost, redo)
        for material, (cost, redo) in sums.items()
    ]
    return sorted(rows, key=lambda row: (-row.cost, -row.redo_cost, row.name, row.material))


def _sum(shares: Iterable[Decimal]) -> Decimal:
    return sum(shares, Decimal("0.0000"))
