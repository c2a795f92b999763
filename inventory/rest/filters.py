"""Filters of lists: a parameter that is unknown or unusable is refused, never passed over."""

from collections.abc import Mapping
from typing import Any

from django.db.models import QuerySet
from django.forms import NullBooleanField
from django_filters.rest_framework import DjangoFilterBackend
from rest_framework import serializers
from rest_framework.request import Request

from inventory.rest.money import sees_money
from inventory.rest.pointers import pointed_errors
from inventory.rest.problems import BadQuery

YES_OR_NO = frozenset({"", "true", "false", "True", "False"})
ALWAYS_TAKEN = frozenset({"page", "page_size", "ordering", "search", "format"})


class Filters(DjangoFilterBackend):
    """django-filter whose refusals are `bad-query` problems that name the parameter.

    A view's `money_fields` are no filters for somebody who sees no money.
    """

    def filter_queryset(self, request: Request, queryset: "QuerySet[Any]", view: Any) -> "QuerySet[Any]":
        filterset = self.get_filterset(request, queryset, view)
        known = set() if filterset is None else parameters_of(filterset)
        if not sees_money(request.user):
            known -= set(getattr(view, "money_fields", ()))
        refuse_unknown(request, known | ALWAYS_TAKEN)
        if filterset is None:
            return queryset
        refuse_neither_yes_nor_no(request, filterset)
        if not filterset.is_valid():
            raise bad_parameters({name: [str(text) for text in texts] for name, texts in filterset.errors.items()})
        try:
            found: QuerySet[Any] = filterset.qs
        except (ValueError, OverflowError) as error:
            raise BadQuery(f"A filter's value is out of bounds: {error}.") from error
        return found


def refuse_neither_yes_nor_no(request: Request, filterset: Any) -> None:
    """Raise BadQuery for a yes-or-no filter whose value is neither: it would otherwise be passed over."""
    odd = {
        name
        for name, field in filterset.form.fields.items()
        if isinstance(field, NullBooleanField) and request.query_params.get(name, "") not in YES_OR_NO
    }
    if odd:
        raise bad_parameters({name: ["Say true or false."] for name in sorted(odd)})


def parameters_of(filterset: Any) -> set[str]:
    """The query parameters that a filterset reads, those of its range widgets included."""
    names: set[str] = set()
    for name, field in filterset.form.fields.items():
        suffixes = getattr(field.widget, "suffixes", None)
        names |= {f"{name}_{suffix}" if suffix else name for suffix in suffixes} if suffixes else {name}
    return names


def refuse_unknown(request: Request, known: set[str] | frozenset[str]) -> None:
    """Raise BadQuery for a parameter that is not known: a misspelt filter would otherwise give everything."""
    unknown = sorted(set(request.query_params) - known)
    if unknown:
        allowed = ", ".join(sorted(known))
        raise bad_parameters({name: [f"There is no such parameter here. There are: {allowed}."] for name in unknown})


def read_query(
    request: Request, serializer_class: Any, context: Mapping[str, Any], *, beside: frozenset[str] = frozenset()
) -> Any:
    """The query parameters, validated by a serializer. Raises BadQuery.

    beside: parameters that something else reads.
    """
    serializer = serializer_class(data={}, context=context)
    fields = serializer.fields
    refuse_unknown(request, set(fields) | beside)
    data = {
        name: request.query_params.getlist(name) if takes_several(field) else request.query_params[name]
        for name, field in fields.items()
        if name in request.query_params
    }
    serializer = serializer_class(data=data, context=context)
    if not serializer.is_valid():
        errors = pointed_errors(serializer.errors)
        texts = [(error["pointer"].split("/")[1:2] or ["query"], error["detail"]) for error in errors]
        raise bad_parameters({name: [text for [other], text in texts if other == name] for [name], _ in texts})
    return serializer.validated_data


def takes_several(field: Any) -> bool:
    return isinstance(field, serializers.ListField | serializers.MultipleChoiceField | serializers.ManyRelatedField)


def bad_parameters(errors: dict[str, list[str]]) -> BadQuery:
    rows = [{"parameter": name, "detail": text} for name, texts in errors.items() for text in texts]
    return BadQuery(f"{rows[0]['parameter']}: {rows[0]['detail']}", errors=rows)
