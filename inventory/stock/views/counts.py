"""Counts."""

from django.db.models import QuerySet
from drf_spectacular.utils import extend_schema
from rest_framework.generics import get_object_or_404
from rest_framework.request import Request
from rest_framework.response import Response

from inventory.rest.problems import Role
from inventory.rest.views import ListView, RecordView, TradeView
from inventory.shop.acting import person_of
from inventory.stock import actions, queries
from inventory.stock.entered import counted_lines
from inventory.stock.filters import CountFilter
from inventory.stock.models import StockCount
from inventory.stock.serializers import CountIn, CountOut, WhyIn


class StockCounts(ListView):
    """GET, POST /api/stock-counts/

    What was counted, and what the book said. A count posts the differences as of its moment.
    """

    permission = Role.CREW
    idempotent = True
    operations = {"GET": "list_stock_counts", "POST": "count_place"}
    queryset = queries.counts()
    serializer_class = CountOut
    filterset_class = CountFilter
    ordering_fields = ("counted_at", "number")
    ordering = ("-counted_at",)

    @extend_schema(request=CountIn, responses={201: CountOut})
    def post(self, request: Request) -> Response:
        body = self.read(CountIn)
        lines = counted_lines(body.pop("lines"))
        count = actions.count_place(lines=lines, by=person_of(request), **body)
        return self.answer(CountOut, queries.counts().get(pk=count.pk), 201)


class OneStockCount(RecordView):
    """GET /api/stock-counts/{id}/"""

    operations = {"GET": "read_stock_count"}
    serializer_class = CountOut
    queryset = StockCount.objects.all()

    def get_queryset(self) -> QuerySet[StockCount]:
        return queries.counts()


class UndoStockCount(TradeView):
    """POST /api/stock-counts/{id}/undo/

    The count holds no longer: what it took off is restored, what it found is taken out again.
    """

    permission = Role.CREW
    idempotent = True
    operations = {"POST": "undo_stock_count"}

    @extend_schema(request=WhyIn, responses=CountOut)
    def post(self, request: Request, pk: int) -> Response:
        count = get_object_or_404(StockCount.objects.all(), pk=pk)
        actions.undo_count(count=count, by=person_of(request), **self.read(WhyIn))
        return self.answer(CountOut, queries.counts().get(pk=pk))
