"""One error body for everything that can go wrong."""

from typing import Any

import pytest
from django.contrib.auth.models import Group
from django.db import IntegrityError, connection, models, transaction
from django.test import RequestFactory
from rest_framework import serializers
from rest_framework.test import APIClient

from inventory.catalog.models import Measure, Pack, Supplier
from inventory.rest import handlers
from inventory.rest.database_errors import problem_of_database
from inventory.rest.errors import problem_of
from inventory.rest.pointers import pointed_errors
from inventory.rest.problems import Problem
from inventory.shop.models import Shop
from tests.rest.example_views import RAISED

pytestmark = [pytest.mark.urls("tests.rest.urls"), pytest.mark.django_db]


def assert_problem(answer: Any, status: int, kind: str) -> dict[str, Any]:
    assert answer.status_code == status
    assert answer["Content-Type"] == "application/problem+json"
    body: dict[str, Any] = answer.json()
    assert body["type"] == f"/problems/{kind}"
    assert body["status"] == status
    assert body["title"]
    assert body["detail"]
    return body


@pytest.mark.parametrize(
    ("what", "status", "kind"),
    [
        ("problem", 409, "conflict"),
        ("http404", 404, "not-found"),
        ("denied", 403, "not-for-your-role"),
        ("django", 400, "bad-body"),
        ("plain", 400, "bad-request"),
    ],
)
def test_each_exception_has_its_problem(what, status, kind, viewer, api):
    assert_problem(api(viewer).get(f"/api/raise/{what}/"), status, kind)


def test_a_problem_carries_its_remedies_and_extra_members(viewer, api):
    body = api(viewer).get("/api/raise/problem/").json()

    assert body["remedies"] == [{"kind": "wait", "text": "Wait."}]
    assert body["short"] == "3 g"


def test_a_fault_of_ours_is_500_and_says_nothing_of_its_cause(viewer, api):
    client = api(viewer)
    client.raise_request_exception = False

    body = assert_problem(client.get("/api/raise/bug/"), 500, "server-error")

    assert "fault of ours" not in str(body)


def test_an_address_that_is_not_there_is_a_problem_under_api_only(client):
    assert_problem(client.get("/api/nothing/"), 404, "not-found")
    assert client.get("/nothing/")["Content-Type"].startswith("text/html")


def test_the_other_handlers_tell_api_from_pages():
    api_call, page = RequestFactory().get("/api/lots/"), RequestFactory().get("/lots/")
    for handler, status in [(handlers.bad_request, 400), (handlers.permission_denied, 403)]:
        assert handler(api_call, ValueError("secret")).status_code == status
        assert handler(api_call, ValueError("secret"))["Content-Type"] == "application/problem+json"
        assert handler(page, ValueError("secret"))["Content-Type"].startswith("text/html")
    assert handlers.server_error(api_call).status_code == 500


def test_wrong_method_wrong_body_and_wrong_type_are_problems(crew, api):
    client = api(crew)
    refused = client.patch("/api/suppliers/", {})
    assert_problem(refused, 405, "method-not-allowed")
    assert refused["Allow"] == "GET, HEAD, POST"
    assert client.options("/api/suppliers/").status_code == 405
    assert_problem(client.post("/api/suppliers/", "{", content_type="application/json"), 400, "bad-json")
    assert_problem(client.post("/api/suppliers/", "a=1", content_type="text/plain"), 415, "unsupported-media-type")
    assert_problem(client.post("/api/suppliers/", [1]), 400, "bad-body")


def test_a_bad_body_points_at_every_member_that_needs_mending(owner, api):
    body = {"lines": [{"supplier": 1.5, "quantity": "3 oz"}, {"quantity": "x", "supplier": 99}], "day": "31 May"}

    errors = assert_problem(api(owner).post("/api/echo/", body), 400, "bad-body")["errors"]

    assert {error["pointer"] for error in errors} == {
        "/lines/0/supplier",
        "/lines/0/quantity",
        "/lines/1/supplier",
        "/lines/1/quantity",
        "/day",
    }
    ambiguous = next(error for error in errors if error["pointer"] == "/lines/0/quantity")
    assert set(ambiguous["choices"]) == {"fl_oz", "oz"}


def test_a_misspelt_key_is_refused_wherever_it_stands(owner, api):
    body = {"lines": [{"supplier": 1, "quantity": "3 g", "kost": 1}], "a/b": 1, "anything": {"is": ["free"]}}

    errors = assert_problem(api(owner).post("/api/echo/", body), 400, "bad-body")["errors"]

    assert [error["pointer"] for error in errors] == ["/lines/0/kost", "/a~1b"]
    assert "supplier" in errors[0]["detail"]


def test_pointers_flatten_what_a_serializer_says():
    detail = serializers.ValidationError(
        {"a": [{}, {"b": ["one", "two"]}], "non_field_errors": ["whole"], "c": {"non_field_errors": ["inner"]}}
    ).detail
    assert list(pointed_errors(detail)) == [
        {"pointer": "/a/1/b", "detail": "one"},
        {"pointer": "/a/1/b", "detail": "two"},
        {"pointer": "", "detail": "whole"},
        {"pointer": "/c", "detail": "inner"},
    ]


def test_a_malformed_upload_is_no_fault_of_ours(crew, client):
    client.force_login(crew)
    answer = client.generic("POST", "/api/suppliers/", b"junk", content_type="multipart/form-data; boundary=x")
    assert answer.status_code in (400, 415)
    assert_problem(client.post("/api/suppliers/", b"{}" * 4_000_000, content_type="application/json"), 413, "too-large")


def test_what_is_used_can_be_archived_but_not_deleted(owner, api):
    used = Supplier.objects.create(number=1, name="Used", lead_time_days=1)
    Pack.objects.create(number=1, supplier=used, name="Bottle")

    body = assert_problem(api(owner).delete(f"/api/suppliers/{used.pk}/"), 409, "in-use")

    assert "packs" in body["detail"]
    assert body["remedies"][0]["kind"] == "archive"
    assert Supplier.objects.filter(pk=used.pk).exists()


def test_a_second_one_of_what_is_unique_says_which_field(crew, api):
    first, second = (api(crew).post("/api/suppliers/", {"name": "Same", "lead_time_days": days}) for days in (1, 2))

    assert first.status_code == 201
    body = assert_problem(second, 409, "already-exists")
    assert body["fields"] == ["name"]
    assert "supplier" in body["detail"]


def refusal(write: Any) -> IntegrityError:
    with pytest.raises(IntegrityError) as caught, transaction.atomic():
        write()
    return caught.value


def test_what_the_database_refuses_is_a_conflict_in_plain_words():
    check = problem_of_database(refusal(lambda: Shop.objects.create(pk=2, name="Second")))
    assert check is not None
    assert (check.status, check.slug) == (409, "conflict")

    supplier = Supplier.objects.create(number=1, name="One", lead_time_days=1)
    Pack.objects.create(number=1, supplier=supplier, name="Bottle")
    pair = problem_of_database(refusal(lambda: Pack.objects.create(number=2, supplier=supplier, name="Bottle")))
    assert pair is not None
    assert pair.extra["fields"] == ["supplier", "name"]


@pytest.mark.django_db(transaction=True)
def test_a_reference_to_nothing_is_a_conflict():
    absent = problem_of_database(refusal(lambda: Measure.objects.create(material_id=10**6, name="pump", quantity=1)))
    assert absent is not None
    assert absent.status == 409


def test_a_constraint_with_its_own_message_speaks_for_itself(monkeypatch):
    constraint = next(c for c in Pack._meta.constraints if c.name == "pack_is_named_once")
    assert isinstance(constraint, models.UniqueConstraint)
    monkeypatch.setattr(
        "inventory.rest.database_errors.constraint_messages", lambda: {"there_is_one_shop": "There is one shop."}
    )
    problem = problem_of_database(refusal(lambda: Shop.objects.create(pk=2, name="Second")))
    assert problem is not None
    assert problem.detail == "There is one shop."


def test_a_value_that_no_column_holds_is_the_clients_to_mend():
    if connection.vendor == "sqlite":
        return_code = problem_of(IntegrityError("NOT NULL constraint failed: x.y"))
        assert return_code is not None
        assert return_code.status == 409
    else:
        with pytest.raises(Exception) as caught, transaction.atomic():
            Group.objects.create(name="n" * 200)
        problem = problem_of(caught.value)
        assert problem is not None
        assert problem.status == 400


def test_a_nul_character_in_the_query_is_refused(viewer, api):
    body = assert_problem(api(viewer).get("/api/suppliers/?search=%00"), 400, "bad-query")
    assert body["errors"][0]["parameter"] == "search"
    assert_problem(api(viewer).get("/api/raise/%00/"), 404, "not-found")


def test_a_problem_may_say_how_long_to_wait(viewer, api, monkeypatch):
    monkeypatch.setitem(RAISED, "wait", Problem("Later.", retry_after_seconds=90))
    assert api(viewer).get("/api/raise/wait/")["Retry-After"] == "90"


def test_head_is_answered_like_get(viewer: Any, api: Any):
    client: APIClient = api(viewer)
    assert client.head("/api/suppliers/").status_code == 200
