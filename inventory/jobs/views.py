"""Customers, jobs and pieces over HTTP."""

from typing import Any

from drf_spectacular.utils import extend_schema
from rest_framework.request import Request
from rest_framework.response import Response

from inventory.jobs import actions, queries
from inventory.jobs.filters import CustomerFilters, JobFilters, PieceFilters
from inventory.jobs.models import Customer, Job, Piece
from inventory.jobs.serializers import (
    CustomerIn,
    CustomerOut,
    FinishIn,
    HandOverIn,
    JobChange,
    JobIn,
    JobOut,
    PieceChange,
    PieceIn,
    PieceOut,
    PieceRow,
    ReasonIn,
    drafts_of,
    rule_of,
)
from inventory.rest.problems import Role
from inventory.rest.views import Changeable, Deletable, ListView, TradeView
from inventory.shop.acting import person_of


class Customers(ListView):
    """GET, POST /api/customers/"""

    permission = Role.CREW
    idempotent = True
    queryset = queries.customers()
    serializer_class = CustomerOut
    filterset_class = CustomerFilters
    ordering_fields = ("name", "number")
    ordering = ("name",)
    search_fields = ("name", "phone", "email")

    @extend_schema(request=CustomerIn, responses={201: CustomerOut})
    def post(self, request: Request) -> Response:
        customer = actions.add_customer(by=person_of(request), **self.read(CustomerIn))
        return self.answer(CustomerOut, customer, 201)


class OneCustomer(Changeable, Deletable):
    """GET, PATCH, PUT, DELETE /api/customers/{id}/"""

    permission = Role.CREW
    queryset = queries.customers()
    serializer_class = CustomerOut
    change_serializer = CustomerIn

    def change(self, record: Customer, values: dict[str, Any]) -> Customer:
        return actions.edit_customer(customer=record, changes=values, by=person_of(self.request))

    def remove(self, record: Customer) -> None:
        actions.delete_customer(customer=record, by=person_of(self.request))


class CustomerAct(TradeView):
    """Something that happens to one customer."""

    permission = Role.CREW
    idempotent = True

    def customer(self, pk: int) -> Customer:
        return queries.get_customer(pk)


class ArchiveCustomer(CustomerAct):
    """POST /api/customers/{id}/archive/

    Offers the customer no longer; the jobs stay.
    """

    @extend_schema(request=None, responses=CustomerOut)
    def post(self, request: Request, pk: int) -> Response:
        return self.answer(CustomerOut, actions.archive(record=self.customer(pk), by=person_of(request)))


class UnarchiveCustomer(CustomerAct):
    """POST /api/customers/{id}/unarchive/

    Offers the customer again.
    """

    @extend_schema(request=None, responses=CustomerOut)
    def post(self, request: Request, pk: int) -> Response:
        return self.answer(CustomerOut, actions.unarchive(record=self.customer(pk), by=person_of(request)))


class Jobs(ListView):
    """GET, POST /api/jobs/"""

    permission = Role.CREW
    idempotent = True
    queryset = queries.jobs()
    serializer_class = JobOut
    filterset_class = JobFilters
    ordering_fields = ("number", "title", "due_on", "finished_on")
    ordering = ("-number",)
    search_fields = ("title", "customer__name", "site", "=number")

    @extend_schema(request=JobIn, responses={201: JobOut})
    def post(self, request: Request) -> Response:
        """Makes a job with its tops, for a customer on record or a new one."""
        body = self.read(JobIn)
        rule = rule_of(body.pop("counting_rule", None), actions.shop_rule())
        pieces = drafts_of(body.pop("pieces"))
        job = actions.make_job(rule=rule, pieces=pieces, by=person_of(request), **body)
        return self.answer(JobOut, job, 201)


class OneJob(Changeable, Deletable):
    """GET, PATCH, PUT, DELETE /api/jobs/{id}/"""

    permission = Role.CREW
    queryset = queries.jobs()
    serializer_class = JobOut
    change_serializer = JobChange

    def change(self, record: Job, values: dict[str, Any]) -> Job:
        return actions.edit_job(job=record, changes=values, by=person_of(self.request))

    def remove(self, record: Job) -> None:
        actions.delete_job(job=record, by=person_of(self.request))


class JobAct(TradeView):
    """Something that happens to one job."""

    permission = Role.CREW
    idempotent = True

    def job(self, pk: int) -> Job:
        return queries.get_job(pk)


class FinishJob(JobAct):
    """POST /api/jobs/{id}/finish/

    Says that all tops of the job are done; it counts in that month.
    """

    @extend_schema(request=FinishIn, responses=JobOut)
    def post(self, request: Request, pk: int) -> Response:
        body = self.read(FinishIn)
        return self.answer(JobOut, actions.finish_job(job=self.job(pk), by=person_of(request), **body))


class ReopenJob(JobAct):
    """POST /api/jobs/{id}/reopen/

    Takes back that the job is finished, and with it that it was handed over.
    """

    permission = Role.OWNER

    @extend_schema(request=ReasonIn, responses=JobOut)
    def post(self, request: Request, pk: int) -> Response:
        body = self.read(ReasonIn)
        return self.answer(JobOut, actions.reopen_job(job=self.job(pk), by=person_of(request), **body))


class HandOverJob(JobAct):
    """POST /api/jobs/{id}/hand-over/

    Says when the customer got the finished job.
    """

    @extend_schema(request=HandOverIn, responses=JobOut)
    def post(self, request: Request, pk: int) -> Response:
        body = self.read(HandOverIn)
        return self.answer(JobOut, actions.hand_over_job(job=self.job(pk), by=person_of(request), **body))


class ArchiveJob(JobAct):
    """POST /api/jobs/{id}/archive/

    Offers the job no longer; what was poured for it stays.
    """

    @extend_schema(request=None, responses=JobOut)
    def post(self, request: Request, pk: int) -> Response:
        return self.answer(JobOut, actions.archive(record=self.job(pk), by=person_of(request)))


class UnarchiveJob(JobAct):
    """POST /api/jobs/{id}/unarchive/

    Offers the job again.
    """

    @extend_schema(request=None, responses=JobOut)
    def post(self, request: Request, pk: int) -> Response:
        return self.answer(JobOut, actions.unarchive(record=self.job(pk), by=person_of(request)))


class AddPieces(JobAct):
    """POST /api/jobs/{id}/pieces/

    Adds a top to an unfinished job, or several alike by their count; answers those that were made.
    """

    @extend_schema(request=PieceIn, responses={201: PieceOut(many=True)})
    def post(self, request: Request, pk: int) -> Response:
        drafts = drafts_of([self.read(PieceIn)])
        pieces = actions.add_pieces(job=self.job(pk), pieces=drafts, by=person_of(request))
        return self.answer(PieceOut, pieces, 201, many=True)


class Pieces(ListView):
    """GET /api/pieces/"""

    queryset = queries.pieces()
    serializer_class = PieceRow
    filterset_class = PieceFilters
    ordering_fields = ("number", "name", "area_sqft")
    ordering = ("-number",)
    search_fields = ("name", "job__title", "job__customer__name", "=number")


class OnePiece(Changeable, Deletable):
    """GET, PATCH, PUT, DELETE /api/pieces/{id}/"""

    permission = Role.CREW
    queryset = queries.pieces()
    serializer_class = PieceRow
    change_serializer = PieceChange

    def change(self, record: Piece, values: dict[str, Any]) -> Piece:
        return actions.edit_piece(piece=record, changes=values, by=person_of(self.request))

    def remove(self, record: Piece) -> None:
        actions.delete_piece(piece=record, by=person_of(self.request))


class ScrapPiece(TradeView):
    """POST /api/pieces/{id}/scrap/

    Says that the top is lost: it keeps its cost and counts no more as finished area.
    """

    permission = Role.CREW
    idempotent = True

    @extend_schema(request=ReasonIn, responses=PieceRow)
    def post(self, request: Request, pk: int) -> Response:
        body = self.read(ReasonIn)
        return self.answer(PieceRow, actions.scrap_piece(piece=queries.get_piece(pk), by=person_of(request), **body))


class UnscrapPiece(TradeView):
    """POST /api/pieces/{id}/unscrap/

    Takes back that the top is lost.
    """

    permission = Role.CREW
    idempotent = True

    @extend_schema(request=None, responses=PieceRow)
    def post(self, request: Request, pk: int) -> Response:
        return self.answer(PieceRow, actions.unscrap_piece(piece=queries.get_piece(pk), by=person_of(request)))
