"""The bases of every view. A view of the trade says who may, reads the body, calls one action or query, and answers.

`TradeView` for an act or a read of its own shape; `ListView` for a list with its filters; `RecordView` for one record,
with `Changeable` and `Deletable` beside it; `ReportView` for a report that is JSON, CSV or XLSX.
"""

from collections.abc import Callable, Mapping
from typing import Any, ClassVar

from django.db import transaction
from django.db.models import QuerySet
from django.http import Http404, HttpResponseBase
from rest_framework import serializers
from rest_framework.exceptions import MethodNotAllowed
from rest_framework.generics import GenericAPIView, get_object_or_404
from rest_framework.request import Request
from rest_framework.response import Response
from rest_framework.views import APIView

from inventory.rest.bodies import refuse_unknown_keys
from inventory.rest.etag import check_version, etag_of, locked, versions_in
from inventory.rest.exports import FORMAT, Format, Table, answer_table, chosen_format
from inventory.rest.filters import bad_parameters, read_query
from inventory.rest.idempotency import run_once
from inventory.rest.money import sees_money, without_money
from inventory.rest.negotiation import AlwaysJSON
from inventory.rest.problems import Role
from inventory.rest.snapshot import read_snapshot

Answer = Response | HttpResponseBase
AnySerializer = type[serializers.BaseSerializer[Any]]


class TradeView(APIView):
    """A view of the API.

    permission: the least role for its writes, or for its reads where it has no writes; see `permissions.needed_role`.
    permissions: the least role by method, where that differs.
    idempotent: whether its POST honours Idempotency-Key; such a POST runs in one transaction.
    is_open_to_all: whether one need not be signed in.
    operations: operation ids of the schema by method, where the view's own name does not say it.
    """

    permission: ClassVar[Role | None] = None
    permissions: ClassVar[Mapping[str, Role]] = {}
    idempotent: ClassVar[bool] = False
    is_open_to_all: ClassVar[bool] = False
    operations: ClassVar[Mapping[str, str]] = {}

    http_method_names = ["get", "head", "post", "put", "patch", "delete"]
    content_negotiation_class = AlwaysJSON

    @property
    def default_response_headers(self) -> dict[str, str]:
        return {**super().default_response_headers, "Cache-Control": "no-store"}

    def initial(self, request: Request, *args: Any, **kwargs: Any) -> None:
        if self.chosen_handler(request) is None:
            raise MethodNotAllowed(request.method or "")
        super().initial(request, *args, **kwargs)
        if "\0" in request.path:
            raise Http404
        nul = [name for name, values in request.query_params.lists() if "\0" in name + "".join(values)]
        if nul:
            raise bad_parameters({name.replace("\0", "\ufffd"): ["Take out the NUL character."] for name in nul})

    def chosen_handler(self, request: Request) -> Callable[..., Answer] | None:
        method = (request.method or "").lower()
        return getattr(self, method, None) if method in self.http_method_names else None

    def dispatch(self, request: Any, *args: Any, **kwargs: Any) -> Any:
        """As in REST framework, but an idempotent POST goes through `run_once`."""
        self.args, self.kwargs = args, kwargs
        self.request = self.initialize_request(request, *args, **kwargs)
        self.headers = self.default_response_headers
        try:
            self.initial(self.request, *args, **kwargs)
            response = self.carry_out(self.request, *args, **kwargs)
        except Exception as exception:
            response = self.handle_exception(exception)
        self.response = self.finalize_response(self.request, response, *args, **kwargs)
        return self.response

    def carry_out(self, request: Request, *args: Any, **kwargs: Any) -> Any:
        handler: Any = self.chosen_handler(request)
        if self.idempotent and request.method == "POST":
            return run_once(request, lambda: handler(request, *args, **kwargs))
        return handler(request, *args, **kwargs)

    def get_serializer_context(self) -> dict[str, Any]:
        return {"request": self.request, "view": self}

    def read(self, serializer_class: AnySerializer, *, partial: bool = False) -> Any:
        """The body, validated: a dict for most serializers. Raises BadBody, also for keys that are not known."""
        serializer = serializer_class(data=self.request.data, partial=partial, context=self.get_serializer_context())
        refuse_unknown_keys(serializer, self.request.data)
        serializer.is_valid(raise_exception=True)
        return serializer.validated_data

    def read_query(self, serializer_class: AnySerializer, *, beside: frozenset[str] = frozenset()) -> Any:
        """The query parameters, validated. Raises BadQuery, also for parameters that are not known.

        beside: parameters that something else reads.
        """
        return read_query(self.request, serializer_class, self.get_serializer_context(), beside=beside)

    def answer(
        self,
        serializer_class: AnySerializer,
        value: Any,
        status: int = 200,
        *,
        many: bool = False,
        headers: Mapping[str, str] | None = None,
    ) -> Response:
        """The value in the serializer's shape, without what the person may not see."""
        serializer: Any = serializer_class
        shaped = serializer(value, many=many, context=self.get_serializer_context())
        return Response(shaped.data, status=status, headers=dict(headers or {}))

    def answer_table(self, table: Table, form: Format) -> HttpResponseBase:
        """The table as a download, without its money columns where the person sees no money."""
        return answer_table(table if sees_money(self.request.user) else table.without_money(), form)


class ListView(TradeView, GenericAPIView[Any]):
    """GET: a list in pages, filtered, ordered and searched. A POST beside it is written in the subclass.

    queryset (or get_queryset), serializer_class: the rows and their shape.
    filterset_class, ordering_fields, ordering, search_fields: what the query may say.
    money_fields: filters and orderings that are money.
    A subclass that has `table(rows) -> exports.Table` answers `?format=csv` and `xlsx` too, unpaged.
    """

    money_fields: ClassVar[tuple[str, ...]] = ()
    ordering_fields: ClassVar[Mapping[str, str] | tuple[str, ...]] = ()
    ordering: ClassVar[tuple[str, ...]] = ()
    search_fields: ClassVar[tuple[str, ...]] = ()

    def get(self, request: Request, *args: Any, **kwargs: Any) -> Any:
        form = chosen_format(request, self.forms())
        rows = self.filter_queryset(self.get_queryset())
        if form is Format.JSON:
            page = self.paginate_queryset(rows)
            return self.get_paginated_response(self.get_serializer(page, many=True).data)
        with read_snapshot():
            return self.answer_table(self.table(rows), form)

    @classmethod
    def forms(cls) -> tuple[Format, ...]:
        return tuple(Format) if cls.table is not ListView.table else (Format.JSON,)

    def table(self, rows: QuerySet[Any]) -> Table:
        """The rows as a table; read them by `.iterator()`."""
        raise NotImplementedError


class RecordView(TradeView, GenericAPIView[Any]):
    """GET: one record by its id, with an ETag where it has a version.

    queryset (or get_queryset), serializer_class: where it is found and its shape.
    """

    def get(self, request: Request, *args: Any, **kwargs: Any) -> Response:
        return self.answer_record(self.get_object())

    def answer_record(self, record: Any) -> Response:
        headers = {"ETag": etag_of(record)} if hasattr(record, "version") else {}
        return self.answer(self.get_serializer_class(), record, headers=headers)

    def get_locked(self) -> Any:
        """The record, locked until the transaction ends; 404 where there is none."""
        rows: QuerySet[Any] = self.get_queryset()
        found = get_object_or_404(rows, pk=self.kwargs[self.lookup_url_kwarg or self.lookup_field])
        try:
            return locked(rows.model._default_manager.all(), pk=found.pk)
        except rows.model.DoesNotExist as gone:
            raise Http404 from gone


class Changeable(RecordView):
    """PATCH and PUT of a record with a version; If-Match is compared under the lock of the write (412 when stale).

    change_serializer: the shape of the body.
    change: calls the action, which raises the version (`etag.write_fields`).
    """

    change_serializer: ClassVar[AnySerializer]

    def change(self, record: Any, values: dict[str, Any]) -> Any:
        raise NotImplementedError

    def patch(self, request: Request, *args: Any, **kwargs: Any) -> Response:
        return self.change_locked(partial=True)

    def put(self, request: Request, *args: Any, **kwargs: Any) -> Response:
        return self.change_locked(partial=False)

    def change_locked(self, *, partial: bool) -> Response:
        allowed = versions_in(self.request)
        with transaction.atomic():
            record = self.get_locked()
            check_version(record, allowed)
            changed = self.change(record, self.read(self.change_serializer, partial=partial))
        return self.answer_record(changed)


class Deletable(RecordView):
    """DELETE of what was never used; anything else is 409 `in-use`, whose remedy is to archive it.

    remove: calls the action, where there is one.
    """

    def remove(self, record: Any) -> None:
        record.delete()

    def delete(self, request: Request, *args: Any, **kwargs: Any) -> Response:
        allowed = versions_in(request)
        with transaction.atomic():
            record = self.get_locked()
            check_version(record, allowed)
            self.remove(record)
        return Response(status=204)


class ReportView(TradeView):
    """GET: a report as JSON, or as a table with `?format=csv` or `xlsx`. All its reads see one moment.

    query: the serializer of its parameters; `report` gets what it validates as keyword arguments.
    serializer_class: the shape of the JSON.
    money_keys: keys that are money, at any depth, and leave the JSON where the person sees no money.
    report: asks the query; gives what the serializer shapes. `self.kwargs` has what stands in the path.
    table: lays the same out in rows; without it there is JSON only.
    """

    query: ClassVar[AnySerializer | None] = None
    serializer_class: ClassVar[AnySerializer]
    money_keys: ClassVar[frozenset[str]] = frozenset()

    def report(self, **query: Any) -> Any:
        raise NotImplementedError

    def table(self, report: Any) -> Table:
        """The report's rows as a table, read once and in order."""
        raise NotImplementedError

    @classmethod
    def forms(cls) -> tuple[Format, ...]:
        return tuple(Format) if cls.table is not ReportView.table else (Format.JSON,)

    def get(self, request: Request, *args: Any, **kwargs: Any) -> Any:
        form = chosen_format(request, self.forms())
        query = self.read_query(self.query or serializers.Serializer, beside=frozenset({FORMAT}))
        with read_snapshot():
            report = self.report(**query)
            if form is not Format.JSON:
                return self.answer_table(self.table(report), form)
            body = self.answer(self.serializer_class, report)
        if not sees_money(request.user):
            body.data = without_money(body.data, self.money_keys)
        return body
