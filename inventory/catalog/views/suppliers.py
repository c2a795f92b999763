from typing import Any

from drf_spectacular.utils import extend_schema
from rest_framework.request import Request
from rest_framework.response import Response

from inventory.catalog import actions, queries
from inventory.catalog.filters import SupplierFilter
from inventory.catalog.serializers import SupplierIn, SupplierOut
from inventory.catalog.views.records import OneNoun, Shelving, Unshelving
from inventory.rest.views import ListView
from inventory.shop.acting import person_of


class Suppliers(ListView):
    """GET, POST /api/suppliers/

    Whom the shop buys from, and how long they take.
    """

    queryset = queries.suppliers()
    serializer_class = SupplierOut
    filterset_class = SupplierFilter
    search_fields = ("name", "note")
    ordering_fields = ("name", "lead_time_days", "number")
    ordering = ("name",)

    @extend_schema(request=SupplierIn, responses={201: SupplierOut})
    def post(self, request: Request) -> Response:
        added = actions.add_supplier(by=person_of(request), **self.read(SupplierIn))
        return self.answer(SupplierOut, self.get_queryset().get(pk=added.pk), 201)


class OneSupplier(OneNoun):
    """GET, PATCH, PUT, DELETE /api/suppliers/{id}/

    One supplier.
    """

    queryset = queries.suppliers()
    serializer_class = SupplierOut
    change_serializer = SupplierIn

    def change(self, record: Any, values: dict[str, Any]) -> Any:
        changed = actions.change_supplier(supplier=record, by=person_of(self.request), **values)
        return self.get_queryset().get(pk=changed.pk)


class ArchiveSupplier(Shelving):
    """POST /api/suppliers/{id}/archive/

    Offer it no longer. What was done with it stays.
    """

    operations = {"POST": "archive_supplier"}
    queryset = queries.suppliers()
    serializer_class = SupplierOut


class UnarchiveSupplier(Unshelving):
    """POST /api/suppliers/{id}/unarchive/

    Offer it again.
    """

    operations = {"POST": "unarchive_supplier"}
    queryset = queries.suppliers()
    serializer_class = SupplierOut
