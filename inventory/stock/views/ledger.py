"""In and out: the ledger's lines, one act with its lines, and its undoing."""

from django.db.models import QuerySet
from drf_spectacular.utils import extend_schema
from rest_framework.generics import get_object_or_404
from rest_framework.request import Request
from rest_framework.response import Response

from inventory.rest.exports import Column, Table
from inventory.rest.exports import Kind as Cell
from inventory.rest.problems import Role
from inventory.rest.views import ListView, RecordView, TradeView
from inventory.shop.acting import person_of
from inventory.stock import actions, queries
from inventory.stock.filters import MovementFilter
from inventory.stock.models import Movement, Posting
from inventory.stock.serializers import MovementOut, PostingOut, WhyIn

COLUMNS = [
    Column("id", "Line", Cell.NUMBER),
    Column("posting", "Act", Cell.NUMBER),
    Column("kind", "Kind"),
    Column("lot", "Lot", Cell.NUMBER),
    Column("lot_number", "Lot number"),
    Column("material", "Material"),
    Column("place", "Place"),
    Column("quantity", "Quantity", Cell.QUANTITY),
    Column("unit", "Unit"),
    Column("value", "Value", Cell.MONEY),
    Column("happened_at", "Happened", Cell.MOMENT),
    Column("happened_on", "Day", Cell.DATE),
    Column("recorded_at", "Recorded", Cell.MOMENT),
    Column("by", "By"),
    Column("reason", "Reason"),
]


class Movements(ListView):
    """GET /api/movements/

    The ledger's lines, the latest first; as JSON, CSV or XLSX.
    """

    operations = {"GET": "list_movements"}
    queryset = queries.movements()
    serializer_class = MovementOut
    filterset_class = MovementFilter
    ordering_fields = ("id", "happened_at", "quantity", "value")
    money_fields = ("value",)
    ordering = ("-id",)

    def table(self, rows: QuerySet[Movement]) -> Table:
        return Table("in-and-out", COLUMNS, queries.movement_rows(rows))


class OnePosting(RecordView):
    """GET /api/postings/{id}/

    One act of the shop with its lines.
    """

    operations = {"GET": "read_posting"}
    queryset = queries.postings()
    serializer_class = PostingOut


class ReversePosting(TradeView):
    """POST /api/postings/{id}/reverse/

    Undone, entry mistake: a write-off, return, gift, empty pail, move, opening, mix or count is taken back. Answers the
    new posting. Where something stands in the way, `first` lists what to undo before.
    """

    permission = Role.CREW
    idempotent = True
    operations = {"POST": "reverse_posting"}

    @extend_schema(request=WhyIn, responses={201: PostingOut})
    def post(self, request: Request, pk: int) -> Response:
        posting = get_object_or_404(Posting.objects.all(), pk=pk)
        undone = actions.reverse_posting(posting=posting, by=person_of(request), **self.read(WhyIn))
        return self.answer(PostingOut, queries.postings().get(pk=undone), 201)
