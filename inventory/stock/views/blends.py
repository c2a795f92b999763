"""House mixes."""

from django.db.models import QuerySet
from drf_spectacular.utils import extend_schema
from rest_framework.generics import get_object_or_404
from rest_framework.request import Request
from rest_framework.response import Response

from inventory.catalog.quantities import stock_quantity
from inventory.rest.problems import Role
from inventory.rest.views import ListView, RecordView, TradeView
from inventory.shop.acting import person_of
from inventory.stock import actions, queries
from inventory.stock.entered import blend_inputs
from inventory.stock.filters import BlendFilter
from inventory.stock.models import Blend
from inventory.stock.serializers import BlendIn, BlendOut, WhyIn


class Blends(ListView):
    """GET, POST /api/blends/

    House mixes and jugs filled from a pail: a lot made from lots.
    """

    permission = Role.CREW
    idempotent = True
    operations = {"GET": "list_blends", "POST": "blend"}
    serializer_class = BlendOut
    filterset_class = BlendFilter
    ordering_fields = ("made_at", "number")
    ordering = ("-made_at",)

    def get_queryset(self) -> QuerySet[Blend]:
        return queries.blends()

    @extend_schema(request=BlendIn, responses={201: BlendOut})
    def post(self, request: Request) -> Response:
        body = self.read(BlendIn)
        inputs = blend_inputs(body.pop("inputs"))
        made = body.pop("quantity", None)
        quantity = made and stock_quantity(made, material=body["material"], pointer="/quantity")
        blend = actions.blend(inputs=inputs, quantity=quantity, by=person_of(request), **body)
        return self.answer(BlendOut, queries.blends().get(pk=blend.pk), 201)


class OneBlend(RecordView):
    """GET /api/blends/{id}/"""

    operations = {"GET": "read_blend"}
    serializer_class = BlendOut
    queryset = Blend.objects.all()

    def get_queryset(self) -> QuerySet[Blend]:
        return queries.blends()


class UndoBlend(TradeView):
    """POST /api/blends/{id}/undo/

    An entry mistake: all goes back to where it was taken, as long as nothing has been taken from the mix.
    """

    permission = Role.CREW
    idempotent = True
    operations = {"POST": "undo_blend"}

    @extend_schema(request=WhyIn, responses=BlendOut)
    def post(self, request: Request, pk: int) -> Response:
        blend = get_object_or_404(Blend.objects.all(), pk=pk)
        actions.undo_blend(blend=blend, by=person_of(request), **self.read(WhyIn))
        return self.answer(BlendOut, queries.blends().get(pk=pk))
