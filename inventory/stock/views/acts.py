"""What happens to a lot."""

from typing import Any

from drf_spectacular.utils import extend_schema
from rest_framework.generics import get_object_or_404
from rest_framework.request import Request
from rest_framework.response import Response

from inventory.rest.problems import Role
from inventory.rest.views import TradeView
from inventory.shop.acting import person_of
from inventory.stock import actions, queries
from inventory.stock.entered import quantity_of
from inventory.stock.models import Lot
from inventory.stock.serializers import (
    EmptyIn,
    GiveIn,
    HoldIn,
    LotOut,
    MoveIn,
    OpenIn,
    ReleaseIn,
    ReturnIn,
    WhyIn,
    WriteOffIn,
)


class LotAct(TradeView):
    """An act on one lot, which answers the lot as it is then."""

    permission = Role.CREW
    idempotent = True

    def lot(self) -> Lot:
        lots = Lot.objects.select_related("material").prefetch_related("material__measures")
        return get_object_or_404(lots, pk=self.kwargs["pk"])

    def answer_lot(self, lot: Lot, status: int = 200) -> Response:
        return self.answer(LotOut, queries.whole_lots().get(pk=lot.pk), status)

    def taken(self, lot: Lot, serializer: type[Any]) -> dict[str, Any]:
        """The body, its quantity in the lot's stock unit."""
        body: dict[str, Any] = self.read(serializer)
        return {**body, "quantity": quantity_of(lot, body["quantity"])}


class OpenLot(LotAct):
    """POST /api/lots/{id}/open/

    Open a container and answer the lot that is open now: one split off with its own opened date, or, for the last
    container, the lot itself.
    """

    @extend_schema(request=OpenIn, responses={201: LotOut})
    def post(self, request: Request, pk: int) -> Response:
        opened = actions.open_container(lot=self.lot(), by=person_of(request), **self.read(OpenIn))
        return self.answer_lot(opened, 201)


class UndoOpenLot(LotAct):
    """POST /api/lots/{id}/undo-opening/

    It was not opened after all. Answers the lot that it is closed in again: its parent, where it was split off.
    """

    operations = {"POST": "undo_opening"}

    @extend_schema(request=WhyIn, responses=LotOut)
    def post(self, request: Request, pk: int) -> Response:
        return self.answer_lot(actions.undo_opening(lot=self.lot(), by=person_of(request), **self.read(WhyIn)))


class MoveLot(LotAct):
    """POST /api/lots/{id}/move/

    Carry some of a lot, or all of it, to another place.
    """

    @extend_schema(request=MoveIn, responses=LotOut)
    def post(self, request: Request, pk: int) -> Response:
        lot = self.lot()
        actions.move(lot=lot, by=person_of(request), **self.taken(lot, MoveIn))
        return self.answer_lot(lot)


class WriteOffLot(LotAct):
    """POST /api/lots/{id}/write-off/

    Take out of the book what is good for nothing any more.
    """

    operations = {"POST": "write_off_lot"}

    @extend_schema(request=WriteOffIn, responses=LotOut)
    def post(self, request: Request, pk: int) -> Response:
        lot = self.lot()
        actions.write_off(lot=lot, by=person_of(request), **self.taken(lot, WriteOffIn))
        return self.answer_lot(lot)


class ReturnLot(LotAct):
    """POST /api/lots/{id}/return/

    Send goods back to the supplier, or borrowed ones to their lender. The credit is kept as money that came back; it
    changes nothing of what the rest of the lot cost.
    """

    @extend_schema(request=ReturnIn, responses=LotOut)
    def post(self, request: Request, pk: int) -> Response:
        lot = self.lot()
        actions.return_goods(lot=lot, by=person_of(request), **self.taken(lot, ReturnIn))
        return self.answer_lot(lot)


class GiveLot(LotAct):
    """POST /api/lots/{id}/give/

    Sold or given away. A price is noted with the reason; the cost of what goes leaves the lot.
    """

    @extend_schema(request=GiveIn, responses=LotOut)
    def post(self, request: Request, pk: int) -> Response:
        lot = self.lot()
        actions.give_away(lot=lot, by=person_of(request), **self.taken(lot, GiveIn))
        return self.answer_lot(lot)


class EmptyLot(LotAct):
    """POST /api/lots/{id}/empty/

    The pail is empty: what the book still has of it is waste of the pours that used it, in proportion; written off,
    where none did.
    """

    @extend_schema(request=EmptyIn, responses=LotOut)
    def post(self, request: Request, pk: int) -> Response:
        lot = self.lot()
        actions.empty(lot=lot, by=person_of(request), **self.read(EmptyIn))
        return self.answer_lot(lot)


class HoldLot(LotAct):
    """POST /api/lots/{id}/hold/

    On hold: this lot, or all of its supplier's number, and everything opened or blended from them.
    """

    @extend_schema(request=HoldIn, responses=LotOut)
    def post(self, request: Request, pk: int) -> Response:
        return self.answer_lot(actions.hold(lot=self.lot(), by=person_of(request), **self.read(HoldIn)))


class RejectLot(LotAct):
    """POST /api/lots/{id}/reject/

    Rejected: this lot, or all of its supplier's number, and everything opened or blended from them. Anybody who pours
    may put a lot on hold; rejecting it, or saying that it is OK again, is the owner's word.
    """

    permission = Role.OWNER

    @extend_schema(request=HoldIn, responses=LotOut)
    def post(self, request: Request, pk: int) -> Response:
        return self.answer_lot(actions.reject(lot=self.lot(), by=person_of(request), **self.read(HoldIn)))


class ReleaseLot(LotAct):
    """POST /api/lots/{id}/release/

    OK again: this lot, or all of its supplier's number, and what was made of them, unless that was also made of
    another lot that stays on hold or rejected.
    """

    permission = Role.OWNER

    @extend_schema(request=ReleaseIn, responses=LotOut)
    def post(self, request: Request, pk: int) -> Response:
        return self.answer_lot(actions.release(lot=self.lot(), by=person_of(request), **self.read(ReleaseIn)))
