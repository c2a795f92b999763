"""Pours over HTTP."""

from collections.abc import Callable
from typing import Any

from django.http import Http404
from django.utils import timezone
from drf_spectacular.utils import extend_schema
from rest_framework.request import Request
from rest_framework.response import Response

from inventory.pours import actions, queries
from inventory.pours.filters import PourFilters
from inventory.pours.models import Pour
from inventory.pours.serializers.answers import PourDetail, PourOut, PourRow
from inventory.pours.serializers.bodies import (
    AdditionsIn,
    CancelIn,
    CompleteIn,
    CorrectIn,
    PourChange,
    PourIn,
    PourReasonIn,
    account_of,
    change_of,
    entered_of,
    founds_of,
    plan_of,
)
from inventory.rest.problems import Role
from inventory.rest.views import Changeable, ListView, TradeView
from inventory.shop.acting import person_of


class Pours(ListView):
    """GET, POST /api/pours/"""

    permission = Role.CREW
    idempotent = True
    operations = {"POST": "plan_pour"}
    queryset = queries.pours()
    serializer_class = PourRow
    filterset_class = PourFilters
    ordering_fields = ("number", "planned_for", "poured_at", "layer", "status")
    ordering = ("-number",)
    search_fields = (
        "note",
        "=number",
        "pour_pieces__piece__name",
        "pour_pieces__piece__job__title",
        "pour_pieces__piece__job__customer__name",
    )

    @extend_schema(request=PourIn, responses={201: PourDetail})
    def post(self, request: Request) -> Response:
        """Plans a pour and sets its materials aside; with `complete`, records one that nobody had planned."""
        body = self.read(PourIn)
        by = person_of(request)
        if body["complete"]:
            pour = actions.log_pour(plan=plan_of(body), account=account_of(body), by=by)
        else:
            pour = actions.plan_pour(plan=plan_of(body), allow_short=body["allow_short"], by=by)
        return self.answer(PourDetail, queries.shown(pour), 201)


class OnePour(Changeable):
    """GET, PATCH /api/pours/{id}/"""

    permission = Role.CREW
    http_method_names = ["get", "head", "patch"]
    queryset = Pour.objects.select_related("place", "by")
    serializer_class = PourDetail
    change_serializer = PourChange

    def get_object(self) -> Pour:
        return queries.get_pour(self.kwargs["pk"])

    def change(self, record: Pour, values: dict[str, Any]) -> Pour:
        """Of a completed pour: people, conditions, ticks, note and is_redo; of a planned one anything."""
        changed = actions.change_pour(
            pour=record,
            change=change_of(values),
            allow_short=values.get("allow_short", False),
            by=person_of(self.request),
        )
        return queries.shown(changed)


class PourAct(TradeView):
    """Something that happens to one pour."""

    permission = Role.CREW
    idempotent = True

    def carry(self, pk: int, act: Callable[[Pour], Pour]) -> Response:
        try:
            pour = act(queries.key_of(pk))
        except Pour.DoesNotExist as gone:
            raise Http404 from gone
        return self.answer(PourOut, queries.shown(pour), headers={"ETag": f'"{pour.version}"'})


class CompletePour(PourAct):
    """POST /api/pours/{id}/complete/

    Posts what really went in and marks the pour completed: everything or nothing.
    """

    @extend_schema(request=CompleteIn, responses=PourOut)
    def post(self, request: Request, pk: int) -> Response:
        account = account_of(self.read(CompleteIn))
        return self.carry(pk, lambda pour: actions.complete_pour(pour=pour, account=account, by=person_of(request)))


class AddToPour(PourAct):
    """POST /api/pours/{id}/additions/

    More went into a completed pour: a top-up, another kit.
    """

    @extend_schema(request=AdditionsIn, responses=PourOut)
    def post(self, request: Request, pk: int) -> Response:
        body = self.read(AdditionsIn)
        return self.carry(
            pk,
            lambda pour: actions.add_to_pour(
                pour=pour,
                usages=entered_of(body["usages"]),
                poured_at=body.get("poured_at") or timezone.now(),
                found=founds_of(body),
                by=person_of(request),
            ),
        )


class CorrectPour(PourAct):
    """POST /api/pours/{id}/correct/

    What went in was otherwise: all of it is taken back and booked anew, in one act.
    """

    @extend_schema(request=CorrectIn, responses=PourOut)
    def post(self, request: Request, pk: int) -> Response:
        body = self.read(CorrectIn)
        account, reason = account_of(body), body["reason"]
        return self.carry(
            pk, lambda pour: actions.correct_pour(pour=pour, account=account, reason=reason, by=person_of(request))
        )


class ReversePour(PourAct):
    """POST /api/pours/{id}/reverse/

    The pour never was, an entry mistake: everything goes back into its lots.
    """

    @extend_schema(request=PourReasonIn, responses=PourOut)
    def post(self, request: Request, pk: int) -> Response:
        reason = self.read(PourReasonIn)["reason"]
        return self.carry(pk, lambda pour: actions.reverse_pour(pour=pour, reason=reason, by=person_of(request)))


class CancelPour(PourAct):
    """POST /api/pours/{id}/cancel/

    Calls a planned pour off; what was set aside for it is free again.
    """

    @extend_schema(request=CancelIn, responses=PourOut)
    def post(self, request: Request, pk: int) -> Response:
        reason = self.read(CancelIn)["reason"]
        return self.carry(pk, lambda pour: actions.cancel_pour(pour=pour, reason=reason, by=person_of(request)))


class ExplainPour(PourAct):
    """POST /api/pours/{id}/explain/

    The owner says why an expired lot, or one on hold, was right to go in.
    """

    permission = Role.OWNER

    @extend_schema(request=PourReasonIn, responses=PourOut)
    def post(self, request: Request, pk: int) -> Response:
        reason = self.read(PourReasonIn)["reason"]
        return self.carry(pk, lambda pour: actions.explain_pour(pour=pour, reason=reason, by=person_of(request)))
