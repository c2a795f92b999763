"""The OpenAPI 3.1 schema: what a view declares, and beside it what holds for all of them.

`manage.py spectacular --file inventory/schema.yaml --validate --fail-on-warn` writes the committed file.
"""

import re
from typing import Any

from drf_spectacular.openapi import AutoSchema
from drf_spectacular.plumbing import get_doc

from inventory.rest import auth_schemes  # noqa: F401  (its classes register themselves)
from inventory.rest.money import money_keys_of
from inventory.rest.permissions import needed_role
from inventory.rest.problem_answers import FACTS, add_problem_answers
from inventory.rest.views import Changeable, Deletable, ListView, RecordView, ReportView, TradeView

__all__ = ["TradeSchema", "add_problem_answers"]


class TradeSchema(AutoSchema):
    """Names operations in the trade's words and adds what every view of a kind has."""

    view: Any

    def get_operation_id(self) -> str:
        named = getattr(self.view, "operations", {}).get(self.method)
        return named or default_operation_id(self.view, self.method)

    def get_summary(self) -> str | None:
        return self.get_operation_id().replace("_", " ").capitalize()

    def get_description(self) -> str:  # type: ignore[override]
        """The view's docstring, without the line that names its address."""
        handler = getattr(self.view, self.method.lower(), None)
        own = get_doc(handler) if handler is not None and is_own(self.view, self.method) else ""
        about = own or get_doc(type(self.view))
        lines = [line for line in about.splitlines() if not re.match(r"[A-Z, ]+ /api/", line.strip())]
        description = "\n".join(lines).strip()
        if isinstance(self.view, TradeView) and not self.view.is_open_to_all:
            description += f"\n\nFor the role {needed_role(self.view, self.method).value} and above."
        return description.strip()

    def get_tags(self) -> list[str]:
        return [tag for tag in super().get_tags() if tag != "api"][:1] or ["shop"]

    def get_auth(self) -> list[dict[str, Any]]:
        auth: list[dict[str, Any]] = super().get_auth()
        if getattr(self.view, "is_open_to_all", False) and {} not in auth:
            auth.append({})
        return auth

    def get_request_serializer(self) -> Any:
        if isinstance(self.view, Changeable) and self.method in ("PATCH", "PUT"):
            return self.view.change_serializer
        return super().get_request_serializer()

    def get_response_serializers(self) -> Any:
        if isinstance(self.view, Deletable) and self.method == "DELETE":
            return {204: None}
        return super().get_response_serializers()

    def _is_list_view(self, serializer: Any = None) -> bool:
        if isinstance(self.view, ListView):
            return self.method == "GET"
        return bool(super()._is_list_view(serializer))

    def get_filter_backends(self) -> list[Any]:
        if isinstance(self.view, ListView) and self.method == "GET":
            return list(self.view.filter_backends)
        return []

    def get_override_parameters(self) -> list[Any]:
        if isinstance(self.view, ReportView) and self.view.query is not None:
            return [self.view.query]
        return []

    def get_extensions(self) -> dict[str, Any]:
        view = self.view
        forms = view.forms() if isinstance(view, ReportView | ListView) and self.method == "GET" else ()
        return {
            FACTS: {
                "is_open_to_all": getattr(view, "is_open_to_all", False) or not isinstance(view, TradeView),
                "is_idempotent": getattr(view, "idempotent", False) and self.method == "POST",
                "is_conditional": isinstance(view, Changeable | Deletable)
                and self.method in ("PATCH", "PUT", "DELETE"),
                "has_etag": has_etag(view) and self.method in ("GET", "PATCH", "PUT"),
                "is_list": isinstance(view, ListView) and self.method == "GET",
                "is_ours": isinstance(view, TradeView),
                "forms": [form.value for form in forms],
            }
        }

    def _map_basic_serializer(self, serializer: Any, direction: str) -> Any:
        """Money is absent for some roles, so it is never required in an answer; a body has no unknown keys."""
        schema: dict[str, Any] = super()._map_basic_serializer(  # type: ignore[no-untyped-call]
            serializer, direction
        )
        money = money_keys_of(serializer)
        if direction == "response" and "required" in schema:
            required = [name for name in schema["required"] if name not in money]
            schema = {**schema, "required": required}
            if not required:
                del schema["required"]
        if direction == "request":
            schema["additionalProperties"] = False
        return schema


def has_etag(view: Any) -> bool:
    if not isinstance(view, RecordView):
        return False
    model = getattr(getattr(view, "queryset", None), "model", None)
    fields = model._meta.fields if model is not None else ()
    return isinstance(view, Changeable) or any(field.name == "version" for field in fields)


def is_own(view: Any, method: str) -> bool:
    """Whether the handler is written in the view's own class, not in one of the bases here."""
    name = method.lower()
    owner = next((base for base in type(view).__mro__ if name in vars(base)), None)
    return owner is not None and not owner.__module__.startswith("inventory.rest.")


def default_operation_id(view: Any, method: str) -> str:
    """From the view's name: CompletePour is complete_pour, the list Lots is list_lots, the record Material (or
    OneMaterial, MaterialRecord) is read_, change_, replace_ and delete_material.

    A view of several methods that is none of these says its ids in `operations`.
    """
    name = snake(type(view).__name__.removesuffix("View"))
    if isinstance(view, ListView):
        return f"list_{name.removesuffix('_list')}" if method == "GET" else f"add_{noun_of(view)}"
    if isinstance(view, RecordView):
        verb = {"GET": "read", "PATCH": "change", "PUT": "replace", "DELETE": "delete"}.get(method, method.lower())
        return f"{verb}_{name.removeprefix('one_').removesuffix('_record')}"
    handlers = [verb for verb in ("get", "post", "put", "patch", "delete") if hasattr(view, verb)]
    return name if len(handlers) == 1 else f"{method.lower()}_{name}"


def noun_of(view: Any) -> str:
    queryset = getattr(view, "queryset", None)
    return snake(queryset.model.__name__) if queryset is not None else snake(type(view).__name__).removesuffix("s")


def snake(name: str) -> str:
    """
    >>> snake("CompletePour")
    'complete_pour'
    """
    return re.sub(r"(?<=[a-z0-9])(?=[A-Z])", "_", name).lower()
