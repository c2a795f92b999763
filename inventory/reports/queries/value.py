"""What the shelf was worth at the end of a day, by material and kind."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from inventory.catalog.models import MaterialKind
from inventory.reports.queries.sql import day_parameter, fetch
from inventory.shop.fields import to_decimal


@dataclass(frozen=True, slots=True)
class ValueRow:
    """What lay of a material, and what it had cost. movements: where the lines are that sum to both."""

    material: int
    code: str
    name: str
    kind: MaterialKind
    unit: str
    quantity: Decimal
    value: Decimal
    movements: str


@dataclass(frozen=True, slots=True)
class KindValue:
    kind: MaterialKind
    materials: int
    value: Decimal


@dataclass(frozen=True, slots=True)
class ShelfValue:
    """on: the day, its movements included. Later charges and credits count from the day of what they changed."""

    on: date
    rows: list[ValueRow]
    kinds: list[KindValue]
    total: Decimal


def value_on(day: date) -> ShelfValue:
    """What lay on the shelf when the day ended: what lies there now, less what happened since. One SQL statement."""
    found = fetch(
        """
        SELECT t.id, t.code, t.name, t.kind, t.stock_unit, SUM(part.quantity), SUM(part.value) FROM (
            SELECT l.material_id AS material, SUM(b.quantity) AS quantity, SUM(b.value) AS value
            FROM stock_balance b JOIN stock_lot l ON l.id = b.lot_id GROUP BY l.material_id
            UNION ALL
            SELECT material_id, -SUM(quantity), -SUM(value) FROM stock_movement
            WHERE happened_on > %s GROUP BY material_id
        ) part JOIN catalog_material t ON t.id = part.material
        GROUP BY t.id, t.code, t.name, t.kind, t.stock_unit
        HAVING SUM(part.quantity) <> 0 OR SUM(part.value) <> 0 ORDER BY t.name, t.id
        """,
        [day_parameter(day)],
    )
    rows = [
        ValueRow(
            material=material,
            code=code,
            name=name,
            kind=MaterialKind(kind),
            unit=unit,
            quantity=to_decimal(int(quantity), 6),
            value=to_decimal(int(value), 4),
            movements=f"/api/movements/?material={material}&happened_to={day.isoformat()}",
        )
        for material, code, name, kind, unit, quantity, value in found
    ]
    kinds = [
        KindValue(kind, len(of_kind), _sum(of_kind))
        for kind in MaterialKind
        if (of_kind := [row for row in rows if row.kind is kind])
    ]
    return ShelfValue(day, rows, kinds, _sum(rows))


def _sum(rows: list[ValueRow]) -> Decimal:
    return sum((row.value for row in rows), Decimal("0.0000"))
