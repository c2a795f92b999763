"""What answers where: the API, its description, health, the admin pages, and the app's one page for all the rest."""

import pytest
from django.db import DatabaseError
from django.test import Client

from inventory.config import health

PAGE = "<!doctype html><title>Lot &amp; Pour</title>"


@pytest.fixture
def built(tmp_path, settings):
    settings.FRONTEND_DIST = tmp_path
    (tmp_path / "index.html").write_text(PAGE)


@pytest.mark.parametrize("address", ["/", "/shelf", "/lots/12/uses", "/apiary"])
def test_every_other_address_opens_the_app_and_is_never_kept(client, built, address):
    answer = client.get(address)

    assert answer.status_code == 200
    assert answer.content.decode() == PAGE
    assert "no-cache" in answer["Cache-Control"]
    assert "script-src 'self'" in answer["Content-Security-Policy"]
    assert "csrftoken" in answer.cookies


def test_without_a_built_front_end_a_page_says_how_to_build_it(client, tmp_path, settings):
    settings.FRONTEND_DIST = tmp_path

    answer = client.get("/")

    assert answer.status_code == 503
    assert "npm run build" in answer.content.decode()


@pytest.mark.parametrize("address", ["/assets/gone-1a2b.js", "/favicon.ico"])
def test_a_file_that_is_not_there_is_not_the_app(client, built, address):
    assert client.get(address).status_code == 404


def test_the_page_takes_no_writes(client, built):
    assert client.post("/shelf").status_code == 405


@pytest.mark.parametrize("address", ["/api/", "/api/no-such-noun/", "/api/materials", "/api/materials/x/"])
def test_an_unknown_address_of_the_api_is_a_problem_and_not_a_page(client, built, address):
    answer = client.get(address)

    assert answer.status_code == 404
    assert answer["Content-Type"] == "application/problem+json"
    assert answer.json()["type"] == "/problems/not-found"


@pytest.mark.parametrize("method", ["post", "put", "patch", "delete"])
def test_a_write_to_an_unknown_address_is_told_so_and_not_asked_for_a_token(method):
    answer = getattr(Client(enforce_csrf_checks=True), method)("/api/no-such-noun/")

    assert answer.status_code == 404
    assert answer.json()["type"] == "/problems/not-found"


@pytest.mark.django_db
def test_health_says_that_the_database_answers_and_the_ledger_is_guarded(client):
    answer = client.get("/api/health/")

    assert answer.status_code == 200
    assert answer.json() == {
        "is_well": True,
        "is_database_reachable": True,
        "is_ledger_guarded": True,
        "version": health.version(),
    }


@pytest.mark.django_db
def test_health_is_503_without_the_guards_or_the_database(client, monkeypatch):
    monkeypatch.setattr(health, "missing_triggers", lambda _connection: ["stock_movement_update"])
    assert client.get("/api/health/").status_code == 503
    assert client.get("/api/health/").json()["is_ledger_guarded"] is False

    def unreachable(_connection: object) -> list[str]:
        raise DatabaseError("no route to it")

    monkeypatch.setattr(health, "missing_triggers", unreachable)
    assert client.get("/api/health/").status_code == 503
    assert client.get("/api/health/").json()["is_database_reachable"] is False


@pytest.mark.django_db
def test_the_api_is_described_and_shown_without_scripts_from_elsewhere():
    client = Client()
    schema = client.get("/api/schema/", headers={"Accept": "application/json"})
    assert schema.status_code == 200
    assert schema.json()["openapi"].startswith("3.1")
    assert "/api/materials/" in schema.json()["paths"]

    docs = client.get("/api/docs/")
    assert docs.status_code == 200
    assert "<script>" not in docs.content.decode()
    assert "http://" not in docs.content.decode()
    assert "https://" not in docs.content.decode()


def test_the_admin_pages_are_for_owners_and_only_to_look_at(client, owner, crew, api):
    address = "/admin/catalog/material/"
    assert client.get(address).status_code == 302
    client.force_login(crew)
    assert client.get(address).status_code == 302
    client.force_login(owner)
    body = {"code": "R-1", "name": "Resin", "kind": "resin", "stock_unit": "ml", "measures": []}
    material = api(owner).post("/api/materials/", body).json()

    assert client.get(address).status_code == 200
    assert "Resin" in client.get(f"{address}{material['id']}/change/").content.decode()
    assert client.post(f"{address}{material['id']}/change/", {"name": "Renamed"}).status_code == 403
    assert client.post(f"{address}{material['id']}/delete/", {"post": "yes"}).status_code == 403
    assert client.get(f"{address}add/").status_code == 403
