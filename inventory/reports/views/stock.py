"""Reports about the shelf over HTTP: reorder, expiring, value, mass balance."""

from collections.abc import Iterator
from typing import Any

from inventory.reports.queries.expiring import Expiring, expiring
from inventory.reports.queries.mass_balance import FIGURES, BalanceRow, MassBalance, Scope, mass_balance
from inventory.reports.queries.reorder import Reorder, reorder
from inventory.reports.queries.value import ShelfValue, value_on
from inventory.reports.serializers.fields import OrderedQuery
from inventory.reports.serializers.stock import (
    ExpiringOut,
    ExpiringQuery,
    MassBalanceOut,
    MassBalanceQuery,
    ReorderOut,
    ValueOut,
    ValueQuery,
)
from inventory.reports.views.base import OrderedReport
from inventory.rest.exports import Column, Table
from inventory.rest.exports import Kind as Cell
from inventory.rest.problems import Role
from inventory.rest.views import ReportView
from inventory.shop.clock import today

QUANTITIES = {
    "on_hand": "On hand",
    "usable": "Usable",
    "reserved": "Set aside",
    "available": "To be had",
    "on_order": "On order",
    "daily_usage": "Use per day",
    "safety_stock": "Kept ready",
    "reorder_point": "Reorder point",
    "missing": "Missing",
    "suggested_quantity": "Suggested",
}


class ReorderReport(OrderedReport):
    """GET /api/reports/reorder/

    Each material against its reorder point, why that lies there, and which packs to buy; beside it what can be mixed
    of each resin system in ratio, and what of its parts is stranded.
    """

    operations = {"GET": "report_reorder"}
    query = OrderedQuery
    serializer_class = ReorderOut
    money_keys = frozenset({"price"})
    orderings = {
        "material": "name", "code": "code", "kind": "kind", "supplier": "supplier.name", "is_below": "is_below",
        "lead_time_days": "lead_time_days", "runs_out_on": "runs_out_on", "position": "position",
        **{name: name for name in QUANTITIES},
    }  # fmt: skip

    def ask(self, **query: Any) -> Reorder:
        return reorder()

    def table(self, report: Reorder) -> Table:
        columns = [
            Column("code", "Code"),
            Column("material", "Material"),
            Column("unit", "Unit"),
            *(Column(name, title, Cell.QUANTITY) for name, title in QUANTITIES.items()),
            Column("lead_time_days", "Lead time, days", Cell.NUMBER),
            Column("is_below", "Below"),
            Column("runs_out_on", "Runs out on", Cell.DATE),
            Column("packs", "Packs"),
            Column("supplier", "Supplier"),
            Column("why", "Why"),
            Column("reason", "What is missing"),
        ]
        rows = (
            [
                row.code,
                row.name,
                row.unit,
                *(getattr(row, name) for name in QUANTITIES),
                row.lead_time_days,
                "yes" if row.is_below else "no",
                row.runs_out_on,
                "; ".join(f"{pack.count} × {pack.name}" for pack in row.packs),
                row.supplier.name if row.supplier else None,
                row.why.in_words if row.why else None,
                row.reason,
            ]
            for row in report.rows
        )
        return Table("reorder", columns, rows)


class ExpiringReport(OrderedReport):
    """GET /api/reports/expiring/

    Lots of which something is left and whose use-by lies within some days, or behind.
    """

    operations = {"GET": "report_expiring"}
    query = ExpiringQuery
    serializer_class = ExpiringOut
    money_keys = frozenset({"value", "expired_value"})
    orderings = {
        "lot": "number", "lot_number": "lot_number", "status": "status", "material": "material_name",
        "use_by": "use_by", "days_left": "days_left", "opened_on": "opened_on", "on_hand": "on_hand", "value": "value",
    }  # fmt: skip
    money_orderings = frozenset({"value"})

    def ask(self, **query: Any) -> Expiring:
        return expiring(**query)

    def table(self, report: Expiring) -> Table:
        columns = [
            Column("lot", "Lot", Cell.NUMBER),
            Column("lot_number", "Lot number"),
            Column("material", "Material"),
            Column("status", "Status"),
            Column("use_by", "Use by", Cell.DATE),
            Column("days_left", "Days left", Cell.NUMBER),
            Column("opened_on", "Opened on", Cell.DATE),
            Column("on_hand", "On hand", Cell.QUANTITY),
            Column("unit", "Unit"),
            Column("places", "Where"),
            Column("value", "Value", Cell.MONEY),
        ]
        rows = (
            [
                row.number,
                row.lot_number,
                row.material_name,
                row.status,
                row.use_by,
                row.days_left,
                row.opened_on,
                row.on_hand,
                row.unit,
                ", ".join(part.place for part in row.places),
                row.value,
            ]
            for row in report.rows
        )
        return Table("expiring", columns, rows)


class ValueReport(OrderedReport):
    """GET /api/reports/value/

    What the shelf was worth when a day ended, by material and kind. Later charges and credits count from the day of
    what they changed.
    """

    operations = {"GET": "report_value"}
    query = ValueQuery
    serializer_class = ValueOut
    money_keys = frozenset({"value", "total"})
    orderings = {"material": "name", "code": "code", "kind": "kind", "quantity": "quantity", "value": "value"}
    money_orderings = frozenset({"value"})

    def ask(self, **query: Any) -> ShelfValue:
        return value_on(query["on"] or today())

    def table(self, report: ShelfValue) -> Table:
        columns = [
            Column("code", "Code"),
            Column("material", "Material"),
            Column("kind", "Kind"),
            Column("quantity", "Quantity", Cell.QUANTITY),
            Column("unit", "Unit"),
            Column("value", "Value", Cell.MONEY),
        ]
        rows = ([row.code, row.name, row.kind.value, row.quantity, row.unit, row.value] for row in report.rows)
        return Table("value", columns, rows)


class MassBalanceReport(ReportView):
    """GET /api/reports/mass-balance/

    What came in against what is here and what went, in quantity and in money, to the last digit.
    """

    permission = Role.VIEWER
    operations = {"GET": "report_mass_balance"}
    query = MassBalanceQuery
    serializer_class = MassBalanceOut
    money_keys = frozenset({"value"})

    def report(self, **query: Any) -> MassBalance:
        return mass_balance(Scope(**query))

    def table(self, report: MassBalance) -> Table:
        words = {name: name.replace("_", " ").capitalize() for name in (*FIGURES, "difference")}
        figures = [
            column
            for name, title in words.items()
            for column in (
                Column(name, title, Cell.QUANTITY),
                Column(f"{name}_value", f"{title}, value", Cell.MONEY),
            )
        ]
        columns = [
            Column("lot", "Lot", Cell.NUMBER),
            Column("lot_number", "Lot number"),
            Column("material", "Material"),
        ]
        return Table("mass-balance", [*columns, Column("unit", "Unit"), *figures], balance_cells(report.rows))


def balance_cells(rows: list[BalanceRow]) -> Iterator[list[Any]]:
    for row in rows:
        figures = [*(row.figures[name] for name in FIGURES), row.difference]
        yield [
            row.lot.number if row.lot else None,
            row.lot.lot_number if row.lot else None,
            row.material_name,
            row.unit,
            *(cell for figure in figures for cell in (figure.quantity, figure.value)),
        ]
