"""Cost per square foot over HTTP."""

from collections.abc import Iterator
from typing import Any

from inventory.catalog.models import MaterialKind
from inventory.reports.queries.cost import CostReport, CostRow, cost_per_sqft
from inventory.reports.queries.cost_lines import CostLines, cost_lines
from inventory.reports.queries.cost_sums import Question
from inventory.reports.serializers.cost import CostLinesOut, CostLinesQuery, CostQuery, CostReportOut
from inventory.reports.views.base import OrderedReport
from inventory.rest.exports import Column, Table
from inventory.rest.exports import Kind as Cell
from inventory.rest.filters import bad_parameters
from inventory.rest.problems import Role
from inventory.rest.views import ReportView

COST_MONEY = frozenset({"cost", "cost_per_sqft", "by_kind", "waste_cost", "waste_by_kind", "redo_cost"})


class CostPerSqft(OrderedReport):
    """GET /api/reports/cost-per-sqft/

    What the coats on finished tops cost in materials per square foot of finished area. Waste is inside and shown;
    repairs, touch-ups and redone coats stand beside. A pour on several tops is shared by their areas, or by the shares
    that were typed. Of materials by kind, every row stands over the area of all tops.
    """

    operations = {"GET": "report_cost_per_sqft"}
    query = CostQuery
    serializer_class = CostReportOut
    money_keys = COST_MONEY
    orderings = {
        name: name
        for name in (
            "key", "label", "state", "area_sqft", "tops", "scrapped",
            "cost", "cost_per_sqft", "waste_cost", "redo_cost",
        )
    }  # fmt: skip
    money_orderings = COST_MONEY

    def ask(self, **query: Any) -> CostReport:
        return cost_per_sqft(Question(**query))

    def table(self, report: CostReport) -> Table:
        kinds = [Column(f"cost_{kind.value}", f"Cost, {kind.label.lower()}", Cell.MONEY) for kind in MaterialKind]
        columns = [
            Column("key", "Key"),
            Column("label", "What"),
            Column("state", "State"),
            Column("area_sqft", "Area, sq ft", Cell.NUMBER),
            Column("tops", "Tops", Cell.NUMBER),
            Column("scrapped", "Scrapped", Cell.NUMBER),
            Column("cost", "Cost", Cell.MONEY),
            Column("cost_per_sqft", "Cost per sq ft", Cell.MONEY),
            *kinds,
            Column("waste_cost", "Of that wasted", Cell.MONEY),
            Column("redo_cost", "Redone coats, beside", Cell.MONEY),
            Column("notes", "Notes"),
            Column("reason", "Why no figure"),
        ]
        return Table("cost-per-sqft", columns, map(cost_cells, report.rows))


def cost_cells(row: CostRow) -> list[Any]:
    return [
        row.key,
        row.label,
        row.state.value,
        row.area_sqft,
        row.tops,
        row.scrapped,
        row.cost,
        row.cost_per_sqft,
        *(row.by_kind.get(kind.value) for kind in MaterialKind),
        row.waste_cost,
        row.redo_cost,
        "; ".join(row.notes),
        row.reason,
    ]


class CostMovements(ReportView):
    """GET /api/reports/cost-per-sqft/movements/

    The ledger's lines behind one row of cost per square foot, each with the part of it that falls on the row's tops.
    """

    permission = Role.VIEWER
    operations = {"GET": "report_cost_movements"}
    query = CostLinesQuery
    serializer_class = CostLinesOut
    money_keys = frozenset({"cost", "redo_cost", "value", "share"})

    def report(self, **query: Any) -> CostLines:
        key = query.pop("key")
        try:
            return cost_lines(Question(**query), key)
        except ValueError as error:
            raise bad_parameters({"key": [f"{key} is no key of a row in this grouping."]}) from error

    def table(self, report: CostLines) -> Table:
        columns = [
            Column("movement", "Line", Cell.NUMBER),
            Column("happened_on", "Day", Cell.DATE),
            Column("pour", "Pour", Cell.NUMBER),
            Column("layer", "Coat"),
            Column("is_redo", "Redone"),
            Column("material", "Material"),
            Column("lot_number", "Lot"),
            Column("kind", "Kind"),
            Column("quantity", "Quantity", Cell.QUANTITY),
            Column("unit", "Unit"),
            Column("value", "Value", Cell.MONEY),
            Column("share", "Falls on these tops", Cell.MONEY),
        ]
        return Table("cost-movements", columns, line_cells(report))


def line_cells(report: CostLines) -> Iterator[list[Any]]:
    for line in report.lines:
        yield [
            line.movement,
            line.happened_on,
            line.pour_number,
            line.layer,
            "yes" if line.is_redo else "no",
            line.material_name,
            line.lot_number,
            line.kind,
            line.quantity,
            line.unit,
            line.value,
            line.share,
        ]
