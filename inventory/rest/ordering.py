"""Order and search of lists, by what the view declares and nothing else."""

from collections.abc import Iterable, Mapping
from typing import Any

from django.core.exceptions import FieldDoesNotExist
from django.db import models
from django.db.models import F, QuerySet
from django.db.models.expressions import OrderBy
from rest_framework.filters import BaseFilterBackend, SearchFilter
from rest_framework.request import Request

from inventory.rest.filters import bad_parameters
from inventory.rest.money import sees_money


class Ordering(BaseFilterBackend):
    """`?ordering=use_by,-number`: the view's `ordering_fields`, each a name, or a mapping of names to lookups.

    Empty values come last either way up, as both databases differ in that, and the id breaks ties, so that pages do not
    overlap. Without the parameter the view's `ordering` holds. The view's `money_fields` need somebody who sees money.
    """

    parameter = "ordering"

    def filter_queryset(self, request: Request, queryset: "QuerySet[Any]", view: Any) -> "QuerySet[Any]":
        lookups = orderings(view, with_money=sees_money(request.user))
        asked = [name.strip() for name in request.query_params.get(self.parameter, "").split(",") if name.strip()]
        unknown = [name for name in asked if name.removeprefix("-") not in lookups]
        if unknown:
            names = ", ".join(lookups) or "none"
            raise bad_parameters({self.parameter: [f"Cannot order by {name}. Allowed: {names}." for name in unknown]})
        chosen = asked or list(getattr(view, "ordering", ()))
        terms = [term(queryset.model, name, lookups) for name in chosen]
        return queryset.order_by(*terms, F("pk").asc())

    def get_schema_operation_parameters(self, view: Any) -> list[dict[str, Any]]:
        names = list(orderings(view, with_money=True))
        if not names:
            return []
        both_ways = [sign + name for name in names for sign in ("", "-")]
        return [
            {
                "name": self.parameter,
                "in": "query",
                "required": False,
                "description": "What to order by, most important first; a minus sign turns one around.",
                "style": "form",
                "explode": False,
                "schema": {"type": "array", "items": {"type": "string", "enum": both_ways}},
            }
        ]


def orderings(view: Any, *, with_money: bool) -> dict[str, str]:
    """The names that a list can be ordered by, with the lookup that each stands for."""
    declared: Mapping[str, str] | Iterable[str] = getattr(view, "ordering_fields", ())
    lookups = dict(declared) if isinstance(declared, Mapping) else {name: name for name in declared}
    hidden = () if with_money else getattr(view, "money_fields", ())
    return {name: lookup for name, lookup in lookups.items() if name not in hidden}


def term(model: type[models.Model], name: str, lookups: Mapping[str, str]) -> OrderBy:
    bare = name.removeprefix("-")
    lookup = lookups.get(bare, bare)
    last = True if may_be_empty(model, lookup) else None
    return F(lookup).desc(nulls_last=last) if name.startswith("-") else F(lookup).asc(nulls_last=last)


def may_be_empty(model: type[models.Model], lookup: str) -> bool:
    """Whether a lookup can give NULL: some field on its way can, or it is an annotation."""
    for step in lookup.split("__"):
        if step == "pk":
            return False
        try:
            field: Any = model._meta.get_field(step)
        except FieldDoesNotExist:
            return True
        if field.null:
            return True
        if field.is_relation:
            model = field.related_model
    return False


class Search(SearchFilter):
    """`?search=`: every word occurs in one of the view's `search_fields`."""

    search_param = "search"

    def get_schema_operation_parameters(self, view: Any) -> list[dict[str, Any]]:
        fields = getattr(view, "search_fields", None)
        if not fields:
            return []
        return [
            {
                "name": self.search_param,
                "in": "query",
                "required": False,
                "description": f"Words that occur in {', '.join(field.lstrip('^=@$') for field in fields)}.",
                "schema": {"type": "string"},
            }
        ]
