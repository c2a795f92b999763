from typing import Any

from drf_spectacular.utils import extend_schema
from rest_framework.request import Request
from rest_framework.response import Response

from inventory.catalog import actions, queries
from inventory.catalog.filters import PackFilter
from inventory.catalog.serializers import PackIn, PackOut
from inventory.catalog.views.records import OneNoun, Shelving, Unshelving
from inventory.rest.views import ListView
from inventory.shop.acting import person_of


class Packs(ListView):
    """GET, POST /api/packs/

    What suppliers sell under one price: bottles, cases, kits.
    """

    queryset = queries.packs()
    serializer_class = PackOut
    filterset_class = PackFilter
    search_fields = ("name", "supplier__name", "contents__material__name")
    ordering_fields = ("name", "price", "number")
    ordering = ("name",)
    money_fields = ("price",)

    @extend_schema(request=PackIn, responses={201: PackOut})
    def post(self, request: Request) -> Response:
        added = actions.add_pack(by=person_of(request), **self.read(PackIn))
        return self.answer(PackOut, self.get_queryset().get(pk=added.pk), 201)


class OnePack(OneNoun):
    """GET, PATCH, PUT, DELETE /api/packs/{id}/

    One pack. Deliveries of it stay as they were received.
    """

    queryset = queries.packs()
    serializer_class = PackOut
    change_serializer = PackIn

    def change(self, record: Any, values: dict[str, Any]) -> Any:
        changed = actions.change_pack(pack=record, by=person_of(self.request), **values)
        return self.get_queryset().get(pk=changed.pk)


class ArchivePack(Shelving):
    """POST /api/packs/{id}/archive/

    Offer it no longer. What was done with it stays.
    """

    operations = {"POST": "archive_pack"}
    queryset = queries.packs()
    serializer_class = PackOut


class UnarchivePack(Unshelving):
    """POST /api/packs/{id}/unarchive/

    Offer it again.
    """

    operations = {"POST": "unarchive_pack"}
    queryset = queries.packs()
    serializer_class = PackOut
