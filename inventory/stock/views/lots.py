"""Lots: the list, one of them, what is written on it."""

from typing import Any

from django.db.models import QuerySet
from drf_spectacular.utils import extend_schema
from rest_framework.request import Request
from rest_framework.response import Response

from inventory.rest.exports import Column, Kind, Table
from inventory.rest.problems import Role
from inventory.rest.views import Changeable, ListView
from inventory.shop.acting import person_of
from inventory.stock import actions, queries
from inventory.stock.filters import LotFilter
from inventory.stock.models import Lot
from inventory.stock.serializers import LotChange, LotOut, LotRow, NoteIn, NoteOut
from inventory.stock.views.acts import LotAct

COLUMNS = [
    Column("number", "Lot", Kind.NUMBER),
    Column("material", "Material"),
    Column("lot_number", "Lot number"),
    Column("status", "Status"),
    Column("received_on", "Came in", Kind.DATE),
    Column("opened_on", "Opened", Kind.DATE),
    Column("use_by", "Use by", Kind.DATE),
    Column("on_hand", "On hand", Kind.QUANTITY),
    Column("unit", "Unit"),
    Column("value", "Value", Kind.MONEY),
]


class Lots(ListView):
    """GET /api/lots/

    Lots with what lies where, how they stand and when they expire; as JSON, CSV or XLSX.
    """

    operations = {"GET": "list_lots"}
    serializer_class = LotRow
    filterset_class = LotFilter
    search_fields = ("lot_number", "material__name", "material__code", "=number")
    ordering_fields = {
        "number": "number",
        "lot_number": "lot_number",
        "use_by": "use_by",
        "received_on": "received_on",
        "opened_on": "opened_on",
        "material": "material__name",
        "value": "stock_value",
    }
    money_fields = ("value",)
    ordering = ("use_by", "received_on")

    def get_queryset(self) -> QuerySet[Lot]:
        return queries.lots()

    def table(self, rows: QuerySet[Any]) -> Table:
        cells = rows.prefetch_related(None).values_list(
            "number",
            "material__name",
            "lot_number",
            "status",
            "received_on",
            "opened_on",
            "use_by",
            "stock_on_hand",
            "material__stock_unit",
            "stock_value",
        )
        return Table("lots", COLUMNS, cells.iterator())


class OneLot(Changeable):
    """GET, PATCH, PUT /api/lots/{id}/

    One lot, with its notes and the history of its status. Its number and dates can be mended; what was made of it
    follows, and the change log keeps what stood there before.
    """

    operations = {"GET": "read_lot", "PATCH": "change_lot", "PUT": "replace_lot"}
    permission = Role.CREW
    queryset = Lot.objects.all()
    serializer_class = LotOut
    change_serializer = LotChange

    def get_queryset(self) -> QuerySet[Lot]:
        return queries.whole_lots()

    def change(self, record: Lot, values: dict[str, Any]) -> Lot:
        changed = actions.edit_lot(lot=record, by=person_of(self.request), **values)
        return queries.whole_lots().get(pk=changed.pk)


class NoteLot(LotAct):
    """POST /api/lots/{id}/notes/

    A dated remark on a lot: cold and grainy, warmed clear.
    """

    @extend_schema(request=NoteIn, responses={201: NoteOut})
    def post(self, request: Request, pk: int) -> Response:
        note = actions.note(lot=self.lot(), by=person_of(request), **self.read(NoteIn))
        return self.answer(NoteOut, note, 201)
