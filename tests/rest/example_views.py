"""Views of each kind, over suppliers and packs, that the tests of the plumbing call."""

import threading
import time
from decimal import Decimal
from typing import Any, ClassVar

from django.core.exceptions import PermissionDenied
from django.core.exceptions import ValidationError as DjangoValidationError
from django.http import Http404
from django.shortcuts import get_object_or_404
from django_filters import rest_framework as filters
from drf_spectacular.utils import extend_schema
from rest_framework import serializers
from rest_framework.request import Request
from rest_framework.response import Response

from inventory.catalog.models import Pack, Supplier
from inventory.rest.etag import write_fields
from inventory.rest.exports import Column, Kind, Table
from inventory.rest.fields import DayField, IdField, MomentField, MoneyField, PeriodQuery, RecordField
from inventory.rest.money import MoneyKeys
from inventory.rest.problems import Conflict, Problem, Role, Unprocessable
from inventory.rest.quantities import QuantityField
from inventory.rest.views import Changeable, Deletable, ListView, ReportView, TradeView


class SupplierIn(serializers.Serializer[Any]):
    name = serializers.CharField(max_length=120)
    lead_time_days = serializers.IntegerField(min_value=0, max_value=1000)


class SupplierOut(serializers.ModelSerializer[Supplier]):
    class Meta:
        model = Supplier
        fields = ["id", "number", "name", "lead_time_days", "is_archived", "version"]


class SupplierFilter(filters.FilterSet):
    class Meta:
        model = Supplier
        fields = ["lead_time_days", "is_archived"]


class Suppliers(ListView):
    """GET, POST /api/suppliers/

    The firms that the shop buys from.
    """

    queryset = Supplier.objects.all()
    serializer_class = SupplierOut
    filterset_class = SupplierFilter
    ordering_fields = ("name", "lead_time_days")
    ordering = ("name",)
    search_fields = ("name",)
    permission = Role.CREW
    idempotent = True
    pause: ClassVar[float] = 0
    entered: ClassVar[threading.Event] = threading.Event()

    @extend_schema(request=SupplierIn, responses={201: SupplierOut})
    def post(self, request: Request) -> Response:
        body = self.read(SupplierIn)
        number = Supplier.objects.count() + 1
        supplier = Supplier.objects.create(number=number, **body)
        type(self).entered.set()
        time.sleep(self.pause)
        if body["name"] == "refuse me":
            raise Unprocessable("The shop buys nothing there.")
        return self.answer(SupplierOut, supplier, 201)


class SupplierRecord(Changeable, Deletable):
    """GET, PATCH, PUT, DELETE /api/suppliers/{id}/"""

    queryset = Supplier.objects.all()
    serializer_class = SupplierOut
    change_serializer = SupplierIn
    permission = Role.CREW
    permissions = {"DELETE": Role.OWNER}

    def change(self, record: Supplier, values: dict[str, Any]) -> Supplier:
        return write_fields(record, values)


class PackOut(MoneyKeys, serializers.ModelSerializer[Pack]):
    price = MoneyField()

    class Meta:
        model = Pack
        fields = ["id", "name", "price"]
        money_fields = ("price",)


class SupplierWithPacks(serializers.ModelSerializer[Supplier]):
    packs = PackOut(many=True)

    class Meta:
        model = Supplier
        fields = ["id", "packs"]


class PackFilter(filters.FilterSet):
    price = filters.NumberFilter()

    class Meta:
        model = Pack
        fields = ["supplier", "price"]


class Packs(ListView):
    """GET /api/packs/"""

    queryset = Pack.objects.all()
    serializer_class = PackOut
    filterset_class = PackFilter
    ordering_fields = {"name": "name", "price": "price", "supplier": "supplier__name"}
    money_fields = ("price",)

    def table(self, rows: Any) -> Table:
        columns = [Column("name", "Name"), Column("price", "Price", Kind.MONEY)]
        return Table("packs", columns, rows.values_list("name", "price").iterator())


class SupplierPacks(TradeView):
    """GET /api/suppliers/{id}/packs/"""

    permission = Role.VIEWER

    @extend_schema(responses=SupplierWithPacks)
    def get(self, request: Request, pk: int) -> Response:
        return self.answer(SupplierWithPacks, get_object_or_404(Supplier, pk=pk))


class LineIn(MoneyKeys, serializers.Serializer[Any]):
    supplier = RecordField(queryset=Supplier.objects.all())
    quantity = QuantityField(is_above_zero=True)
    cost = MoneyField(required=False, min_value=0)
    money_fields = ("cost",)


class EchoIn(serializers.Serializer[Any]):
    lines = LineIn(many=True, required=False)
    quantity = QuantityField(required=False)
    cost = MoneyField(required=False)
    day = DayField(required=False)
    moment = MomentField(required=False)
    lot = IdField(required=False)
    anything = serializers.JSONField(required=False)


class EchoOut(serializers.Serializer[Any]):
    quantity = QuantityField(required=False)
    moment = MomentField(required=False)
    seen = serializers.CharField(help_text="What arrived, as Python writes it.")


class Echo(TradeView):
    """POST /api/echo/"""

    permission = Role.VIEWER

    @extend_schema(request=EchoIn, responses=EchoOut)
    def post(self, request: Request) -> Response:
        body = self.read(EchoIn)
        return self.answer(EchoOut, {**body, "seen": repr(body)})


class CostRows(serializers.Serializer[Any]):
    rows = serializers.ListField(child=serializers.DictField())


class CostReport(ReportView):
    """GET /api/reports/cost/

    What the packs cost.
    """

    query = PeriodQuery
    serializer_class = CostRows
    money_keys = frozenset({"cost"})

    def report(self, first_day: Any, last_day: Any) -> dict[str, Any]:
        rows = [{"pack": pack.name, "cost": str(pack.price)} for pack in Pack.objects.order_by("name")]
        return {"rows": [*rows, {"pack": "total", "area": Decimal(3)}]}

    def table(self, report: dict[str, Any]) -> Table:
        columns = [Column("pack", "Pack"), Column("cost", "Cost", Kind.MONEY)]
        return Table("cost", columns, ((row["pack"], row.get("cost")) for row in report["rows"]))


class Open(TradeView):
    """GET /api/open/"""

    is_open_to_all = True

    @extend_schema(responses=SupplierOut(many=True))
    def get(self, request: Request) -> Response:
        return self.answer(SupplierOut, Supplier.objects.all(), many=True)


RAISED: dict[str, Exception] = {
    "problem": Conflict("Not now.", remedies=[{"kind": "wait", "text": "Wait."}], short="3 g"),
    "http404": Http404("No Lot matches the given query."),
    "denied": PermissionDenied(),
    "django": DjangoValidationError({"name": ["Too plain."]}),
    "plain": Problem("Mend it."),
    "bug": RuntimeError("a fault of ours"),
}


class Raise(TradeView):
    """GET /api/raise/{what}/"""

    @extend_schema(responses=EchoOut)
    def get(self, request: Request, what: str) -> Response:
        raise RAISED[what]
