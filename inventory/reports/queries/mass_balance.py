"""Mass balance: what came in is what is here and what went, in quantity and in money, to the last digit."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from typing import Any, NamedTuple
from urllib.parse import urlencode

from inventory.catalog.models import Material
from inventory.reports.queries.sql import among, day_parameter, fetch
from inventory.reports.queries.uses import LotName, lot_names
from inventory.shop.fields import to_decimal
from inventory.stock.lines import IS_GAIN
from inventory.stock.models import Kind, Lot

CAME = ("received", "charged", "opened_in", "blended_in", "counted_up")
WENT = (
    "used", "wasted", "written_off", "counted_off", "returned", "given", "opened_on", "blended_on",
)  # fmt: skip
OPENING, LATER, CLOSING = "opening", "later", "on_hand"
FIGURES = (OPENING, *CAME, *WENT, CLOSING)

WHAT = f"""CASE
    WHEN kind = 'opened' THEN CASE WHEN into_lot_id IS NULL THEN 'opened_in' ELSE 'opened_on' END
    WHEN kind = 'blended' THEN CASE WHEN into_lot_id IS NULL THEN 'blended_in' ELSE 'blended_on' END
    WHEN kind = 'counted' THEN CASE WHEN {IS_GAIN} THEN 'counted_up' ELSE 'counted_off' END
    ELSE kind END"""
KIND_OF = {
    **{name: Kind(name) for name in (*CAME, *WENT) if name in Kind.values},
    "opened_in": Kind.OPENED, "opened_on": Kind.OPENED, "blended_in": Kind.BLENDED, "blended_on": Kind.BLENDED,
    "counted_up": Kind.COUNTED, "counted_off": Kind.COUNTED,
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Scope:
    """Which lots: one, all of a number, all of a material, or, with nothing named, all lots by material.

    first_day, last_day: days of the shop, both included; without them from the beginning, until now.
    """

    lot: Lot | None = None
    lot_number: str | None = None
    material: Material | None = None
    first_day: date | None = None
    last_day: date | None = None

    @property
    def is_by_lot(self) -> bool:
        return not (self.lot is None and self.lot_number is None and self.material is None)


class Amount(NamedTuple):
    """Quantity in millionths of the stock unit, money in ten-thousandths."""

    quantity: int = 0
    value: int = 0

    def plus(self, other: "Amount") -> "Amount":
        return Amount(self.quantity + other.quantity, self.value + other.value)

    def minus(self, other: "Amount") -> "Amount":
        return Amount(self.quantity - other.quantity, self.value - other.value)


@dataclass(frozen=True, slots=True)
class Figure:
    """quantity: None where materials of several units are summed. movements: where the lines are that sum to it."""

    quantity: Decimal | None
    unit: str | None
    value: Decimal
    movements: str | None = None


@dataclass(frozen=True, slots=True)
class BalanceRow:
    """A lot's or material's balance. figures: by name, all of FIGURES, positive either way.

    difference: opening and what came in, less what went and what is on hand; 0 unless the ledger is damaged.
    """

    lot: LotName | None
    material: int | None
    material_name: str | None
    unit: str | None
    figures: Mapping[str, Figure]
    difference: Figure


@dataclass(frozen=True, slots=True)
class MassBalance:
    scope: Scope
    rows: list[BalanceRow]
    total: BalanceRow


def mass_balance(scope: Scope) -> MassBalance:
    """The balance of each lot in scope, or of each material where nothing is named. Three SQL statements."""
    by_key: dict[int, dict[str, Amount]] = {}
    for key, what, quantity, value in [*_moved(scope), *_on_hand(scope)]:
        by_key.setdefault(key, {})[what] = Amount(int(quantity), int(value))
    for amounts in by_key.values():
        settle(amounts)
    rows = list(_rows(scope, by_key))
    return MassBalance(scope, rows, _total(rows, by_key))


def settle(amounts: dict[str, Amount]) -> None:
    """Turn sums of signed lines into figures: what went is positive, what is on hand stands at the last day."""
    amounts[CLOSING] = amounts.get(CLOSING, Amount()).minus(amounts.pop(LATER, Amount()))
    for what in WENT:
        amounts[what] = Amount().minus(amounts.get(what, Amount()))


def difference(amounts: Mapping[str, Amount]) -> Amount:
    whole = Amount()
    for what in (OPENING, *CAME):
        whole = whole.plus(amounts.get(what, Amount()))
    for what in (*WENT, CLOSING):
        whole = whole.minus(amounts.get(what, Amount()))
    return whole


def _moved(scope: Scope) -> list[tuple[Any, ...]]:
    """Sums of the lines by key and what they count as; those before the first day and after the last apart."""
    condition, parameters = _in_scope(scope, lot="lot_id", material="material_id")
    what = WHAT
    days: list[date] = []
    if scope.last_day:
        what, days = f"CASE WHEN happened_on > %s THEN '{LATER}' ELSE {what} END", [scope.last_day, *days]
    if scope.first_day:
        what, days = f"CASE WHEN happened_on < %s THEN '{OPENING}' ELSE {what} END", [scope.first_day, *days]
    key = "lot_id" if scope.is_by_lot else "material_id"
    return fetch(
        f"SELECT {key}, {what}, SUM(quantity), SUM(value) FROM stock_movement WHERE {condition} GROUP BY 1, 2",
        [*map(day_parameter, days), *parameters],
    )


def _on_hand(scope: Scope) -> list[tuple[Any, ...]]:
    condition, parameters = _in_scope(scope, lot="l.id", material="l.material_id")
    key = "l.id" if scope.is_by_lot else "l.material_id"
    return fetch(
        f"SELECT {key}, '{CLOSING}', SUM(b.quantity), SUM(b.value) "
        f"FROM stock_balance b JOIN stock_lot l ON l.id = b.lot_id WHERE {condition} GROUP BY {key}",
        parameters,
    )


def _in_scope(scope: Scope, *, lot: str, material: str) -> tuple[str, list[Any]]:
    conditions, parameters = ["1 = 1"], list[Any]()
    if scope.lot is not None:
        conditions.append(f"{lot} = %s")
        parameters.append(scope.lot.pk)
    if scope.lot_number is not None:
        conditions.append(f"{lot} IN (SELECT id FROM stock_lot WHERE lot_number = %s)")
        parameters.append(scope.lot_number)
    if scope.material is not None:
        conditions.append(f"{material} = %s")
        parameters.append(scope.material.pk)
    return " AND ".join(conditions), parameters


def _rows(scope: Scope, by_key: Mapping[int, Mapping[str, Amount]]) -> Iterator[BalanceRow]:
    if scope.is_by_lot:
        lots = lot_names(by_key)
        for key, lot in sorted(lots.items(), key=lambda item: item[1].number):
            yield _row(scope, by_key[key], f"lot={key}", lot, (lot.material, lot.material_name, lot.unit))
        return
    these, ids = among("id", by_key)
    materials = fetch(f"SELECT id, name, stock_unit FROM catalog_material WHERE {these} ORDER BY name, id", [ids])
    for material in materials:
        yield _row(scope, by_key[material[0]], f"material={material[0]}", None, material)


def _row(
    scope: Scope, amounts: Mapping[str, Amount], of: str, lot: LotName | None, material: tuple[Any, ...]
) -> BalanceRow:
    number, name, unit = material
    figures = {
        what: _figure(amounts.get(what, Amount()), unit, f"/api/movements/?{of}&{_lines(scope, what)}".rstrip("&"))
        for what in FIGURES
    }
    return BalanceRow(lot, number, name, unit, figures, _figure(difference(amounts), unit))


def _lines(scope: Scope, what: str) -> str:
    """The filters of the ledger's lines that sum to a figure."""
    if what == OPENING:
        before = scope.first_day - timedelta(days=1) if scope.first_day else date(1970, 1, 1)
        return urlencode({"happened_to": before.isoformat()})
    query: dict[str, str] = {}
    if what != CLOSING:
        query = {"kind": KIND_OF[what].value, "direction": "in" if what in CAME else "out"}
        if scope.first_day:
            query["happened_from"] = scope.first_day.isoformat()
    if scope.last_day:
        query["happened_to"] = scope.last_day.isoformat()
    return urlencode(query)


def _total(rows: list[BalanceRow], by_key: Mapping[int, Mapping[str, Amount]]) -> BalanceRow:
    """The sum of all rows; of quantities only where all are of one material."""
    materials = {(row.material, row.material_name, row.unit) for row in rows}
    sums: dict[str, Amount] = dict.fromkeys(FIGURES, Amount())
    for amounts in by_key.values():
        for what in FIGURES:
            sums[what] = sums[what].plus(amounts.get(what, Amount()))
    material, name, unit = materials.pop() if len(materials) == 1 else (None, None, None)
    figures = {what: _figure(amount, unit) for what, amount in sums.items()}
    return BalanceRow(None, material, name, unit, figures, _figure(difference(sums), unit))


def _figure(amount: Amount, unit: str | None, movements: str | None = None) -> Figure:
    quantity = None if unit is None else to_decimal(amount.quantity, 6)
    return Figure(quantity, unit, to_decimal(amount.value, 4), movements)
