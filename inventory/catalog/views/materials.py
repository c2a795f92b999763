from typing import Any

from drf_spectacular.utils import extend_schema
from rest_framework.request import Request
from rest_framework.response import Response

from inventory.catalog import actions, queries
from inventory.catalog.filters import MaterialFilter
from inventory.catalog.serializers import MaterialIn, MaterialOut
from inventory.catalog.views.records import OneNoun, Shelving, Unshelving
from inventory.rest.views import ListView
from inventory.shop.acting import person_of


class Materials(ListView):
    """GET, POST /api/materials/

    What the shop buys, keeps and uses up.
    """

    queryset = queries.materials()
    serializer_class = MaterialOut
    filterset_class = MaterialFilter
    search_fields = ("code", "name")
    ordering_fields = ("name", "code", "kind", "number")
    ordering = ("name",)

    @extend_schema(request=MaterialIn, responses={201: MaterialOut})
    def post(self, request: Request) -> Response:
        added = actions.add_material(by=person_of(request), **self.read(MaterialIn))
        return self.answer(MaterialOut, self.get_queryset().get(pk=added.pk), 201)


class OneMaterial(OneNoun):
    """GET, PATCH, PUT, DELETE /api/materials/{id}/

    One material. Its stock unit is fixed once it has been in stock (409).
    """

    queryset = queries.materials()
    serializer_class = MaterialOut
    change_serializer = MaterialIn

    def change(self, record: Any, values: dict[str, Any]) -> Any:
        changed = actions.change_material(material=record, by=person_of(self.request), **values)
        return self.get_queryset().get(pk=changed.pk)


class ArchiveMaterial(Shelving):
    """POST /api/materials/{id}/archive/

    Offer it no longer. What was done with it stays.
    """

    operations = {"POST": "archive_material"}
    queryset = queries.materials()
    serializer_class = MaterialOut


class UnarchiveMaterial(Unshelving):
    """POST /api/materials/{id}/unarchive/

    Offer it again.
    """

    operations = {"POST": "unarchive_material"}
    queryset = queries.materials()
    serializer_class = MaterialOut
