"""Deliveries over HTTP."""

from typing import Any

from django.db.models import QuerySet
from drf_spectacular.utils import extend_schema
from rest_framework.generics import get_object_or_404
from rest_framework.request import Request
from rest_framework.response import Response

from inventory.purchasing import actions, queries, serializers
from inventory.purchasing.filters import DeliveryFilter
from inventory.purchasing.models import Delivery
from inventory.rest.problems import Role
from inventory.rest.views import ListView, RecordView, TradeView
from inventory.shop.acting import person_of


class Deliveries(ListView):
    """GET, POST /api/deliveries/

    What came in, the latest first; and the door for what comes in now. Crew receives without money: a line without
    cost is booked at its material's last price until the owner gives the real one.
    """

    permission = Role.CREW
    idempotent = True
    operations = {"GET": "list_deliveries", "POST": "receive_delivery"}
    serializer_class = serializers.DeliveryRowOut
    filterset_class = DeliveryFilter
    search_fields = ("reference", "note", "supplier__name")
    ordering_fields = ("received_on", "number", "supplier__name")
    ordering = ("-received_on", "-number")

    def get_queryset(self) -> QuerySet[Delivery]:
        return queries.deliveries()

    @extend_schema(request=serializers.DeliveryIn, responses={201: serializers.DeliveryOut})
    def post(self, request: Request) -> Response:
        body = self.read(serializers.DeliveryIn)
        delivery = actions.receive_delivery(by=person_of(request), **body)
        return self.answer(serializers.DeliveryOut, queries.whole_deliveries().get(pk=delivery.pk), 201)


class OneDelivery(RecordView):
    """GET /api/deliveries/{id}/

    One delivery with its lines, their lots, and its charges.
    """

    operations = {"GET": "read_delivery"}
    serializer_class = serializers.DeliveryOut

    def get_queryset(self) -> QuerySet[Delivery]:
        return queries.whole_deliveries()


class DeliveryAct(TradeView):
    """An act on one delivery, which answers it whole."""

    idempotent = True

    def delivery(self) -> Delivery:
        return get_object_or_404(Delivery.objects.all(), pk=self.kwargs["pk"])

    def answer_whole(self, delivery: Delivery, status: int = 200) -> Response:
        return self.answer(serializers.DeliveryOut, queries.whole_deliveries().get(pk=delivery.pk), status)


class PriceDelivery(DeliveryAct):
    """POST /api/deliveries/{id}/price/

    What lines cost, now that it is known, or known better. The difference goes on into whatever the lots became.
    """

    permission = Role.OWNER

    @extend_schema(request=serializers.DeliveryPricesIn, responses=serializers.DeliveryOut)
    def post(self, request: Request, pk: int) -> Response:
        prices: list[Any] = self.read(serializers.DeliveryPricesIn)["lines"]
        delivery = actions.set_prices(delivery=self.delivery(), prices=prices, by=person_of(request))
        return self.answer_whole(delivery)


class ChargeDelivery(DeliveryAct):
    """POST /api/deliveries/{id}/charges/

    A charge or credit that came after the goods, spread over the delivery as it stands and carried on into whatever the
    lots became.
    """

    permission = Role.OWNER

    @extend_schema(request=serializers.LateChargeIn, responses={201: serializers.DeliveryOut})
    def post(self, request: Request, pk: int) -> Response:
        body: Any = self.read(serializers.LateChargeIn)
        delivery = actions.add_charge(delivery=self.delivery(), by=person_of(request), **body)
        return self.answer_whole(delivery, 201)


class CorrectDelivery(DeliveryAct):
    """POST /api/deliveries/{id}/correct/

    How much lines really brought. What was paid stays; what was used takes its share of it anew.
    """

    permission = Role.CREW

    @extend_schema(request=serializers.DeliveryCorrectionIn, responses=serializers.DeliveryOut)
    def post(self, request: Request, pk: int) -> Response:
        body = self.read(serializers.DeliveryCorrectionIn)
        delivery = actions.correct_quantities(
            delivery=self.delivery(), quantities=body["lines"], reason=body["reason"], by=person_of(request)
        )
        return self.answer_whole(delivery)


class ReverseDelivery(DeliveryAct):
    """POST /api/deliveries/{id}/reverse/

    Undone, entry mistake: only while all of it is still where it came in. A refusal lists what to undo first.
    """

    permission = Role.CREW

    @extend_schema(request=serializers.DeliveryReversalIn, responses=serializers.DeliveryOut)
    def post(self, request: Request, pk: int) -> Response:
        body = self.read(serializers.DeliveryReversalIn)
        delivery = actions.reverse_delivery(delivery=self.delivery(), by=person_of(request), **body)
        return self.answer_whole(delivery)
