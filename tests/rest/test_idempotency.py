"""A POST sent twice is carried out once, on either database."""

import threading
from collections.abc import Iterator
from datetime import timedelta
from typing import Any

import pytest
from django.core.management import call_command
from django.db import connection, connections, transaction
from django.test.utils import CaptureQueriesContext
from django.utils import timezone
from rest_framework.response import Response
from rest_framework.test import APIClient

from inventory.catalog.models import Supplier
from inventory.rest.models import IdempotencyKey
from inventory.rest.problems import Role
from tests.rest.example_views import Suppliers

pytestmark = pytest.mark.urls("tests.rest.urls")
BODY = {"name": "Northbank Resins", "lead_time_days": 7}


def post(client: APIClient, body: Any = BODY, key: str | None = "k-1") -> Any:
    headers = {} if key is None else {"Idempotency-Key": key}
    return client.post("/api/suppliers/", body, headers=headers)


def test_the_same_key_and_body_get_the_first_answer_again(crew, api):
    first, second = post(api(crew)), post(api(crew))

    assert first.status_code == second.status_code == 201
    assert first.content == second.content
    assert second["Content-Type"] == first["Content-Type"] == "application/json"
    assert second["Idempotency-Replayed"] == "true"
    assert "Idempotency-Replayed" not in first
    assert Supplier.objects.count() == 1


def test_spacing_and_order_of_keys_are_the_same_body(crew, api):
    post(api(crew))
    text = '{ "lead_time_days" : 7, "name": "Northbank Resins" }'

    again = api(crew).post("/api/suppliers/", text, content_type="application/json", headers={"Idempotency-Key": "k-1"})

    assert again.status_code == 201
    assert Supplier.objects.count() == 1


def test_the_same_key_with_another_body_is_refused(crew, api):
    post(api(crew))

    refused = post(api(crew), BODY | {"lead_time_days": 8})

    assert refused.status_code == 422
    assert refused.json()["type"] == "/problems/key-reused"
    assert post(api(crew), BODY | {"name": "Other"}, key="k-2").status_code == 201


def test_a_key_belongs_to_one_person(crew, owner, api):
    post(api(crew))

    assert post(api(owner), BODY | {"name": "Other"}).status_code == 201
    assert Supplier.objects.count() == 2


def test_without_a_key_nothing_is_kept(crew, api):
    assert post(api(crew), key=None).status_code == 201
    assert post(api(crew), key=None).status_code == 409  # the name is there already
    assert not IdempotencyKey.objects.exists()


def test_an_error_keeps_neither_work_nor_key(crew, api):
    refused = post(api(crew), {"name": "refuse me", "lead_time_days": 1})

    assert refused.status_code == 422
    assert not Supplier.objects.exists()
    assert not IdempotencyKey.objects.exists()
    assert post(api(crew)).status_code == 201  # the key is free for the mended body


def test_an_error_that_is_answered_and_not_raised_keeps_nothing_either(crew, api, monkeypatch):
    monkeypatch.setattr(Suppliers, "answer", lambda *_: Response({"status": 409}, status=409))

    assert post(api(crew)).status_code == post(api(crew)).status_code == 409
    assert not Supplier.objects.exists()
    assert not IdempotencyKey.objects.exists()


def test_a_refused_body_leaves_the_key_free(crew, api):
    assert post(api(crew), {"name": ""}).status_code == 400
    assert post(api(crew)).status_code == 201


@pytest.mark.parametrize("key", ["", " " * 300, "k\t1", "ünlaut", '""'])
def test_a_key_that_cannot_be_is_refused(key, crew, api):
    refused = post(api(crew), key=key)

    assert refused.status_code == 400
    assert refused.json()["type"] == "/problems/bad-idempotency-key"
    assert not Supplier.objects.exists()


def test_a_quoted_key_is_the_bare_key(crew, api):
    assert post(api(crew), key='"k-1"').content == post(api(crew), key="k-1").content
    assert post(api(crew), BODY | {"name": "Other"}, key="k" * 255).status_code == 201


def test_a_role_that_no_longer_suffices_is_refused_before_the_answer_is_given_again(crew, api):
    post(api(crew))
    crew.role = Role.VIEWER
    crew.save()

    assert post(api(crew)).status_code == 403


def test_an_answer_made_for_another_role_is_not_shown(owner, api):
    post(api(owner))
    owner.role = Role.CREW
    owner.save()

    assert post(api(owner)).status_code == 409


def test_sign_in_and_key_cost_four_statements_beside_the_work(crew, client):
    client.force_login(crew)
    without = statements(client, BODY, {})
    with_key = statements(client, BODY | {"name": "Other"}, {"Idempotency-Key": "k-1"})

    assert len(with_key) - len(without) == 2
    assert sum("django_session" in sql or "shop_person" in sql for sql in with_key) == 2


def statements(client: Any, body: dict[str, Any], headers: dict[str, str]) -> list[str]:
    with CaptureQueriesContext(connection) as queries:
        answer = client.post("/api/suppliers/", body, content_type="application/json", headers=headers)
    assert answer.status_code == 201
    noise = ("SAVEPOINT", "RELEASE", "BEGIN", "COMMIT")
    return [query["sql"] for query in queries if not query["sql"].startswith(noise)]


def test_keys_older_than_thirty_days_are_forgotten(crew, api, capsys):
    post(api(crew))
    post(api(crew), BODY | {"name": "Other"}, key="k-2")
    IdempotencyKey.objects.filter(key="k-1").update(created_at=timezone.now() - timedelta(days=31))

    call_command("forget_old_keys")

    assert "1 forgotten" in capsys.readouterr().out
    assert [row.key for row in IdempotencyKey.objects.all()] == ["k-2"]


@pytest.fixture
def slow(monkeypatch: pytest.MonkeyPatch) -> Iterator[threading.Event]:
    """The work takes a second; the event says that it has begun."""
    entered = threading.Event()
    monkeypatch.setattr(Suppliers, "pause", 1.0)
    monkeypatch.setattr(Suppliers, "entered", entered)
    return entered


def at_once(client: APIClient, answers: list[Any], body: Any = BODY) -> threading.Thread:
    def call() -> None:
        answers.append(post(client, body))
        connections.close_all()

    thread = threading.Thread(target=call)
    thread.start()
    return thread


@pytest.mark.django_db(transaction=True)
def test_a_second_caller_waits_and_gets_the_first_answer(slow, crew, api):
    answers: list[Any] = []
    client, second = api(crew), api(crew)

    thread = at_once(client, answers)
    assert slow.wait(5)
    answers.append(post(second))
    thread.join()

    assert [answer.status_code for answer in answers] == [201, 201]
    assert answers[0].content == answers[1].content
    assert sorted(answer.get("Idempotency-Replayed", "") for answer in answers) == ["", "true"]
    assert Supplier.objects.count() == 1


@pytest.mark.django_db(transaction=True)
def test_a_second_caller_does_the_work_where_the_first_failed(slow, crew, api):
    answers: list[Any] = []
    client, second = api(crew), api(crew)

    thread = at_once(client, answers, {"name": "refuse me", "lead_time_days": 1})
    assert slow.wait(5)
    answer = post(second)
    thread.join()

    assert answers[0].status_code == 422
    assert answer.status_code == 201
    assert [supplier.name for supplier in Supplier.objects.all()] == [BODY["name"]]


@pytest.mark.django_db(transaction=True)
def test_a_lock_held_longer_than_the_wait_is_409_busy(crew, api, shorter_wait):
    client = api(crew)
    taken, free = threading.Event(), threading.Event()

    def hold() -> None:
        with transaction.atomic():
            IdempotencyKey.objects.create(
                person=crew, method="POST", path="/api/suppliers/", key="k-1", created_at=timezone.now()
            )
            taken.set()
            free.wait(10)
            transaction.set_rollback(True)
        connections.close_all()

    holder = threading.Thread(target=hold)
    holder.start()
    assert taken.wait(5)
    try:
        shorter_wait()
        refused = post(client)
    finally:
        free.set()
        holder.join()

    assert refused.status_code == 409
    assert refused.json()["type"] == "/problems/busy"
    assert refused["Retry-After"] == "1"
    assert post(client).status_code == 201


@pytest.fixture
def shorter_wait(transactional_db: None) -> Iterator[Any]:
    """Makes this connection wait 0.3 s for a lock, as short waits make short tests."""

    def shorten() -> None:
        with connection.cursor() as cursor:
            is_sqlite = connection.vendor == "sqlite"
            cursor.execute("PRAGMA busy_timeout = 300" if is_sqlite else "SET lock_timeout = 300")

    yield shorten
    connection.close()
