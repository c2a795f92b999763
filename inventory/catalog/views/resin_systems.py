from typing import Any

from drf_spectacular.utils import extend_schema
from rest_framework.request import Request
from rest_framework.response import Response

from inventory.catalog import actions, queries
from inventory.catalog.filters import ResinSystemFilter
from inventory.catalog.serializers import ResinSystemIn, ResinSystemOut
from inventory.catalog.views.records import OneNoun, Shelving, Unshelving
from inventory.rest.views import ListView
from inventory.shop.acting import person_of

MIX = ("parts", "ratio_by_volume", "ratio_by_mass")


class ResinSystems(ListView):
    """GET, POST /api/resin-systems/

    Parts that cure together, with their mix ratio and the figures of the maker's data sheet.
    """

    queryset = queries.resin_systems()
    serializer_class = ResinSystemOut
    filterset_class = ResinSystemFilter
    search_fields = ("name",)
    ordering_fields = ("name", "number")
    ordering = ("name",)

    @extend_schema(request=ResinSystemIn, responses={201: ResinSystemOut})
    def post(self, request: Request) -> Response:
        added = actions.add_resin_system(by=person_of(request), **self.read(ResinSystemIn))
        return self.answer(ResinSystemOut, self.get_queryset().get(pk=added.pk), 201)


class OneResinSystem(OneNoun):
    """GET, PATCH, PUT, DELETE /api/resin-systems/{id}/

    One resin system.
    """

    queryset = queries.resin_systems()
    serializer_class = ResinSystemOut
    change_serializer = ResinSystemIn

    def change(self, record: Any, values: dict[str, Any]) -> Any:
        mix: Any = {name: values.pop(name) for name in MIX if name in values}
        changed = actions.change_resin_system(system=record, by=person_of(self.request), mix=mix, **values)
        return self.get_queryset().get(pk=changed.pk)


class ArchiveResinSystem(Shelving):
    """POST /api/resin-systems/{id}/archive/

    Offer it no longer. What was done with it stays.
    """

    operations = {"POST": "archive_resin_system"}
    queryset = queries.resin_systems()
    serializer_class = ResinSystemOut


class UnarchiveResinSystem(Unshelving):
    """POST /api/resin-systems/{id}/unarchive/

    Offer it again.
    """

    operations = {"POST": "unarchive_resin_system"}
    queryset = queries.resin_systems()
    serializer_class = ResinSystemOut
