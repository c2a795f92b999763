"""Lots that are about to pass their use-by, or lie on the shelf past it."""

from collections import defaultdict
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from typing import Any

from inventory.reports.queries.sql import as_day, day_parameter, fetch
from inventory.shop.clock import today
from inventory.shop.fields import to_decimal

USUAL_DAYS = 60


@dataclass(frozen=True, slots=True)
class AtPlace:
    place: str
    on_hand: Decimal
    unit: str


@dataclass(frozen=True, slots=True)
class ExpiringLot:
    """days_left: until the last good day, 0 on it, below 0 past it. opened_on: None while it is closed.

    movements: where the lines are that sum to what is on hand and its value.
    """

    lot: int
    number: int
    lot_number: str
    status: str
    material: int
    material_name: str
    unit: str
    use_by: date
    days_left: int
    is_expired: bool
    opened_on: date | None
    on_hand: Decimal
    value: Decimal
    places: list[AtPlace]
    movements: str


@dataclass(frozen=True, slots=True)
class Expiring:
    """rows: the earliest use-by first. value: of all; expired_value: of those past it."""

    on: date
    days: int
    rows: list[ExpiringLot]
    value: Decimal
    expired_value: Decimal


def expiring(*, days: int = USUAL_DAYS, on: date | None = None) -> Expiring:
    """Lots of which something is left and whose use-by lies at most so many days ahead. Two SQL statements."""
    on = on or today()
    found = fetch(
        "SELECT l.id, l.number, l.lot_number, l.status, t.id, t.name, t.stock_unit, l.use_by, l.opened_on, "
        "p.name, b.quantity, b.value FROM stock_lot l JOIN stock_balance b ON b.lot_id = l.id AND b.quantity > 0 "
        "JOIN catalog_material t ON t.id = l.material_id JOIN stock_place p ON p.id = b.place_id "
        "WHERE l.use_by <= %s ORDER BY l.use_by, l.number, p.id",
        [day_parameter(on + timedelta(days=days))],
    )
    by_lot: dict[int, list[tuple[Any, ...]]] = defaultdict(list)
    for row in found:
        by_lot[row[0]].append(row)
    rows = [_lot(parts, on) for parts in by_lot.values()]
    value, expired = (sum((row.value for row in part), Decimal("0.0000")) for part in (rows, _expired(rows)))
    return Expiring(on, days, rows, value, expired)


def _expired(rows: list[ExpiringLot]) -> list[ExpiringLot]:
    return [row for row in rows if row.is_expired]


def _lot(parts: list[tuple[Any, ...]], on: date) -> ExpiringLot:
    lot, number, lot_number, status, material, material_name, unit, last_good, opened, *_ = parts[0]
    use_by = as_day(last_good)
    assert use_by is not None
    return ExpiringLot(
        lot=lot,
        number=number,
        lot_number=lot_number,
        status=status,
        material=material,
        material_name=material_name,
        unit=unit,
        use_by=use_by,
        days_left=(use_by - on).days,
        is_expired=use_by < on,
        opened_on=as_day(opened),
        on_hand=to_decimal(sum(part[10] for part in parts), 6),
        value=to_decimal(sum(part[11] for part in parts), 4),
        places=[AtPlace(part[9], to_decimal(part[10], 6), unit) for part in parts],
        movements=f"/api/movements/?lot={lot}",
    )
