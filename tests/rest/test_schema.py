"""The schema says all that can happen, and nothing that cannot."""

from collections.abc import Iterator
from typing import Any

import pytest
import schemathesis
from django.core.signals import request_finished, request_started
from django.core.wsgi import get_wsgi_application
from django.db import close_old_connections
from drf_spectacular.drainage import GENERATOR_STATS
from drf_spectacular.generators import SchemaGenerator
from drf_spectacular.validation import validate_schema
from hypothesis import settings
from rest_framework.authtoken.models import Token
from schemathesis.checks import not_a_server_error
from schemathesis.specs.openapi.checks import (
    content_type_conformance,
    response_headers_conformance,
    response_schema_conformance,
    status_code_conformance,
)

from inventory.catalog.models import Pack, Supplier
from inventory.rest.schema import snake

pytestmark = [pytest.mark.urls("tests.rest.urls"), pytest.mark.django_db]


def generate() -> dict[str, Any]:
    result: dict[str, Any] = SchemaGenerator(urlconf="tests.rest.urls").get_schema(request=None, public=True)
    return result


@pytest.fixture
def operations() -> dict[str, Any]:
    paths = generate()["paths"]
    return {operation["operationId"]: operation for path in paths.values() for operation in path.values()}


def parameters(operation: dict[str, Any]) -> set[str]:
    return {parameter["name"] for parameter in operation.get("parameters", [])}


def test_the_schema_is_valid_openapi_without_a_warning_and_the_same_each_time():
    GENERATOR_STATS.reset()
    schema = generate()
    validate_schema(schema)
    assert schema["openapi"].startswith("3.1")
    assert schema == generate()
    assert not GENERATOR_STATS
    assert "x-facts" not in str(schema)


def test_operations_bear_the_names_of_the_trade(operations):
    assert {
        "list_suppliers",
        "add_supplier",
        "read_supplier",
        "change_supplier",
        "replace_supplier",
        "delete_supplier",
        "list_packs",
        "supplier_packs",
        "cost_report",
        "echo",
    } <= set(operations)
    assert snake("ReceiveDelivery") == "receive_delivery"
    assert operations["list_suppliers"]["description"].startswith("The firms that the shop buys from.")
    assert "/api/" not in operations["list_suppliers"]["description"]


def test_each_operation_says_the_problems_it_can_answer(operations):
    everywhere = {"400", "401", "403"}
    assert set(operations["list_suppliers"]["responses"]) == {"200", "404"} | everywhere
    assert set(operations["add_supplier"]["responses"]) == {"201", "409", "413", "415", "422"} | everywhere
    assert set(operations["delete_supplier"]["responses"]) == {"204", "404", "409", "412", "422"} | everywhere
    assert set(operations["open"]["responses"]) == {"200", "400", "401"}
    problem = operations["open"]["responses"]["400"]["content"]
    assert list(problem) == ["application/problem+json"]


def test_headers_stand_where_they_apply(operations):
    assert "Idempotency-Key" in parameters(operations["add_supplier"])
    assert "Idempotency-Replayed" in operations["add_supplier"]["responses"]["201"]["headers"]
    assert "Idempotency-Key" not in parameters(operations["echo"])
    for name in ("change_supplier", "replace_supplier", "delete_supplier"):
        assert "If-Match" in parameters(operations[name])
    assert "If-Match" not in parameters(operations["read_supplier"])
    assert "ETag" in operations["read_supplier"]["responses"]["200"]["headers"]


def test_reports_and_exported_lists_say_their_formats(operations):
    for name in ("cost_report", "list_packs"):
        assert "format" in parameters(operations[name])
        assert {"application/json", "text/csv"} < set(operations[name]["responses"]["200"]["content"])
    assert "format" not in parameters(operations["list_suppliers"])
    assert {"from", "to"} <= parameters(operations["cost_report"])


def test_money_is_never_required_of_an_answer_and_bodies_have_no_other_keys():
    schemas = generate()["components"]["schemas"]
    assert "price" in schemas["PackOut"]["properties"]
    assert "price" not in schemas["PackOut"]["required"]
    assert schemas["SupplierInRequest"]["additionalProperties"] is False
    assert schemas["LineInRequest"]["properties"]["quantity"]["oneOf"][1]["type"] == "string"


def test_who_may_stands_in_the_schema(operations):
    assert operations["open"]["security"] == [{"token": []}, {"session": []}, {}]
    assert operations["echo"]["security"] == [{"token": []}, {"session": []}]
    assert "role owner" in operations["delete_supplier"]["description"]


@pytest.fixture
def one_connection() -> Iterator[None]:
    """The application closes its connection at the end of a request; the test's own must stay."""
    for signal in (request_started, request_finished):
        signal.disconnect(close_old_connections)
    yield
    for signal in (request_started, request_finished):
        signal.connect(close_old_connections)


@pytest.fixture
def described(db: None) -> Any:
    schema = schemathesis.openapi.from_dict(generate())
    schema.app = get_wsgi_application()
    return schema


schema = schemathesis.pytest.from_fixture("described")
CHECKS = [
    not_a_server_error,
    status_code_conformance,
    content_type_conformance,
    response_headers_conformance,
    response_schema_conformance,
]


@settings(max_examples=40)
@schema.exclude(path_regex="raise|schema").parametrize()
def test_no_call_gets_an_answer_that_the_schema_does_not_name(case: Any, owner: Any, one_connection: None):
    supplier, _ = Supplier.objects.get_or_create(number=1, defaults={"name": "Northbank", "lead_time_days": 7})
    Pack.objects.get_or_create(number=1, supplier=supplier, name="Kit", price="3.5")
    token, _ = Token.objects.get_or_create(user=owner)
    case.call_and_validate(headers={"Authorization": f"Token {token.key}"}, checks=CHECKS)
