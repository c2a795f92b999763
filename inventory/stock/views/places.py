"""Places where stock lies, and what the shelf holds of each material."""

from collections.abc import Sequence
from typing import Any

from django.db.models import QuerySet
from drf_spectacular.utils import extend_schema
from rest_framework.request import Request
from rest_framework.response import Response

from inventory.catalog.models import Material
from inventory.rest.problems import Role
from inventory.rest.views import Changeable, Deletable, ListView
from inventory.shop.acting import person_of
from inventory.shop.clock import today
from inventory.stock import actions, queries
from inventory.stock.filters import PlaceFilter, ShelfFilter
from inventory.stock.models import Place
from inventory.stock.serializers import PlaceIn, PlaceOut, ShelfRow


class Places(ListView):
    """GET, POST /api/places/

    The shop, the van, job sites.
    """

    permission = Role.CREW
    idempotent = True
    operations = {"GET": "list_places", "POST": "add_place"}
    queryset = queries.places()
    serializer_class = PlaceOut
    filterset_class = PlaceFilter
    search_fields = ("name",)
    ordering_fields = ("name", "number")
    ordering = ("number",)

    @extend_schema(request=PlaceIn, responses={201: PlaceOut})
    def post(self, request: Request) -> Response:
        place = actions.add_place(name=self.read(PlaceIn)["name"], by=person_of(request))
        return self.answer(PlaceOut, place, 201)


class OnePlace(Changeable, Deletable):
    """GET, PATCH, PUT, DELETE /api/places/{id}/

    A place is archived, with nothing left there, rather than deleted (409) once stock has lain there.
    """

    queryset = queries.places()
    serializer_class = PlaceOut
    change_serializer = PlaceIn

    def change(self, record: Place, values: dict[str, Any]) -> Place:
        return actions.change_place(place=record, changes=values, by=person_of(self.request))

    def remove(self, record: Place) -> None:
        actions.delete_place(place=record, by=person_of(self.request))


class Shelf(ListView):
    """GET /api/shelf/

    What the shelf holds of each material today: on hand, usable, reserved, available.
    """

    operations = {"GET": "list_shelf"}
    queryset = Material.objects.all()
    serializer_class = ShelfRow
    filterset_class = ShelfFilter
    search_fields = ("name", "code")
    ordering_fields = ("name", "code", "kind")
    ordering = ("name",)

    def paginate_queryset(self, queryset: QuerySet[Any] | Sequence[Any], /) -> list[Any]:
        """The page's materials, each with its figures."""
        page: list[Any] = super().paginate_queryset(queryset) or []
        place = self.request.query_params.get("place")  # read and checked by the filter
        figures = queries.stock_figures(
            on=today(),
            materials=[material.pk for material in page],
            place=Place.objects.get(pk=place) if place else None,
        )
        for material in page:
            material.figures = figures[material.pk]
        return page
