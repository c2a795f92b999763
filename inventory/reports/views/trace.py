"""Uses and sources over HTTP."""

from collections.abc import Iterator
from typing import Any, ClassVar

from django.db import models
from django.http import Http404

from inventory.jobs.models import Job, Piece
from inventory.pours.models import Pour
from inventory.reports.queries.sources import Sources, sources_of_job, sources_of_piece, sources_of_pour
from inventory.reports.queries.uses import Uses, uses_of_lot
from inventory.reports.serializers.trace import SourcesOut, UsesOut, UsesQuery
from inventory.rest.exports import Column, Table
from inventory.rest.exports import Kind as Cell
from inventory.rest.problems import Role
from inventory.rest.views import ReportView
from inventory.shop.fields import to_decimal
from inventory.stock.models import Lot


def found(model: type[models.Model], pk: int) -> int:
    """The id, where there is such a record. Raises Http404."""
    if not model._default_manager.filter(pk=pk).exists():
        raise Http404
    return pk


class LotUses(ReportView):
    """GET /api/lots/{id}/uses/

    Every pour, top, job, customer and sample board that got any of the lot, through mixes and openings, with exact
    quantities; and where the rest is. What is listed sums to what was received and found.
    """

    permission = Role.VIEWER
    operations = {"GET": "lot_uses"}
    query = UsesQuery
    serializer_class = UsesOut

    def report(self, **query: Any) -> Uses:
        return uses_of_lot(found(Lot, self.kwargs["pk"]), **query)

    def table(self, report: Uses) -> Table:
        columns = [
            Column("what", "What became of it"),
            Column("day", "Poured", Cell.MOMENT),
            Column("pour", "Pour", Cell.NUMBER),
            Column("layer", "Coat"),
            Column("piece", "Top", Cell.NUMBER),
            Column("name", "Name"),
            Column("job", "Job", Cell.NUMBER),
            Column("title", "Title"),
            Column("customer", "Customer"),
            Column("lot", "In lot"),
            Column("place", "Place"),
            Column("quantity", "Quantity", Cell.QUANTITY),
            Column("unit", "Unit"),
        ]
        return Table("uses", columns, use_cells(report))


def use_cells(report: Uses) -> Iterator[list[Any]]:
    """A row for each top under a pour, then one for each part that went elsewhere; together they sum to the total."""
    for use in report.pours:
        of_pour = ["poured", use.poured_at, use.of.pour_number, use.of.layer]
        for on, millionths in use.tops:
            of_top = [on.number, on.name, on.job_number, on.title, on.customer_name]
            yield [*of_pour, *of_top, None, None, to_decimal(millionths, 6), report.unit]
        if not use.tops:
            yield [*of_pour, *[None] * 7, use.quantity, report.unit]
    for row in report.rest:
        yield [row.what, *[None] * 8, row.lot.lot_number, row.place, row.quantity, report.unit]


class SourcesView(ReportView):
    """Every lot in something that was poured, through mixes and openings, with exact quantities.

    model: what is asked about. trace: gives its sources.
    """

    permission = Role.VIEWER
    serializer_class = SourcesOut
    model: ClassVar[type[models.Model]]

    def report(self, **query: Any) -> Sources:
        return self.trace(found(self.model, self.kwargs["pk"]))

    def trace(self, pk: int) -> Sources:
        raise NotImplementedError

    def table(self, report: Sources) -> Table:
        columns = [
            Column("material", "Material"),
            Column("lot", "Lot", Cell.NUMBER),
            Column("lot_number", "Lot number"),
            Column("supplier", "Supplier"),
            Column("received_on", "Received", Cell.DATE),
            Column("use_by", "Use by", Cell.DATE),
            Column("status", "Status"),
            Column("is_direct", "Poured from it"),
            Column("pour", "Pour", Cell.NUMBER),
            Column("layer", "Coat"),
            Column("poured_at", "Poured", Cell.MOMENT),
            Column("quantity", "Quantity", Cell.QUANTITY),
            Column("unit", "Unit"),
        ]
        return Table("sources", columns, source_cells(report))


def source_cells(report: Sources) -> Iterator[list[Any]]:
    for row in report.rows:
        lot = row.lot
        of_lot = [lot.material_name, lot.number, lot.lot_number, lot.supplier, lot.received_on, lot.use_by, lot.status]
        for part in row.pours:
            of_pour = [part.number, part.layer, part.poured_at, part.quantity]
            yield [*of_lot, "yes" if row.is_direct else "no", *of_pour, row.unit]


class PieceSources(SourcesView):
    """GET /api/pieces/{id}/sources/

    Every lot in a top: of each of its pours what falls on it, by area or by the shares that were typed.
    """

    operations = {"GET": "piece_sources"}
    model = Piece

    def trace(self, pk: int) -> Sources:
        return sources_of_piece(pk)


class JobSources(SourcesView):
    """GET /api/jobs/{id}/sources/

    Every lot in the tops of a job.
    """

    operations = {"GET": "job_sources"}
    model = Job

    def trace(self, pk: int) -> Sources:
        return sources_of_job(pk)


class PourSources(SourcesView):
    """GET /api/pours/{id}/sources/

    Every lot in a pour.
    """

    operations = {"GET": "pour_sources"}
    model = Pour

    def trace(self, pk: int) -> Sources:
        return sources_of_pour(pk)
