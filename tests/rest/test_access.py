"""Who is let in, and what each role sees."""

import pytest
from django.test import Client
from rest_framework.authtoken.models import Token
from rest_framework.test import APIClient

from inventory.catalog.models import Pack, Supplier
from inventory.rest.permissions import needed_role
from inventory.rest.problems import Role
from inventory.rest.views import TradeView

pytestmark = [pytest.mark.urls("tests.rest.urls"), pytest.mark.django_db]


@pytest.fixture
def pack(db):
    supplier = Supplier.objects.create(number=1, name="Northbank Resins", lead_time_days=7)
    return Pack.objects.create(number=1, supplier=supplier, name="Two-part kit", price="189.50")


@pytest.mark.parametrize(
    ("method", "url", "allowed"),
    [
        ("get", "/api/suppliers/", {"owner", "crew", "viewer"}),
        ("post", "/api/suppliers/", {"owner", "crew"}),
        ("get", "/api/suppliers/1/", {"owner", "crew", "viewer"}),
        ("patch", "/api/suppliers/1/", {"owner", "crew"}),
        ("delete", "/api/suppliers/1/", {"owner"}),
        ("post", "/api/echo/", {"owner", "crew", "viewer"}),
        ("get", "/api/open/", {"owner", "crew", "viewer", "nobody"}),
    ],
)
def test_the_role_decides(method, url, allowed, owner, crew, viewer, api, client):
    for who in (owner, crew, viewer):
        answer = getattr(api(who), method)(url, {})
        assert (answer.status_code != 403) == (who.role in allowed), (method, url, who.role)
    assert (getattr(client, method)(url).status_code != 401) == ("nobody" in allowed)


def test_a_view_that_says_nothing_is_the_owners_to_write():
    class Quiet(TradeView):
        def post(self, request): ...

    class OnlyReads(TradeView):
        permission = Role.OWNER

        def get(self, request): ...

    assert needed_role(Quiet(), "POST") is Role.OWNER
    assert needed_role(Quiet(), "GET") is Role.VIEWER
    assert needed_role(OnlyReads(), "GET") is needed_role(OnlyReads(), "HEAD") is Role.OWNER


@pytest.mark.parametrize("key", ["", " a b", " \0", " " + "0" * 40, " ü", " " + "z" * 40])
def test_a_token_that_nobody_has_is_401(key, client, shop):
    refused = client.get("/api/suppliers/", headers={"Authorization": f"Token{key}"})

    assert refused.status_code == 401
    assert refused["WWW-Authenticate"] == "Token"
    assert refused["Content-Type"] == "application/problem+json"


def test_another_scheme_is_not_signed_in(client, shop):
    assert client.get("/api/suppliers/", headers={"Authorization": "Basic YTpi"}).status_code == 401


def test_a_session_cookie_that_no_database_stores_is_not_signed_in(client, shop):
    cookie = 'sessionid="' + r"\000" * 9 + '"'  # nine NUL characters, as a cookie writes them
    assert client.get("/api/suppliers/", headers={"Cookie": cookie}).status_code == 401


def test_somebody_who_left_is_refused_by_token_and_by_session(crew, api, client):
    client.force_login(crew)
    by_token = api(crew)
    assert by_token.get("/api/suppliers/").status_code == client.get("/api/suppliers/").status_code == 200

    crew.is_active = False
    crew.save()

    assert by_token.get("/api/suppliers/").status_code == client.get("/api/suppliers/").status_code == 401


def test_a_browsers_write_needs_the_csrf_token_and_a_scripts_does_not(crew):
    browser = Client(enforce_csrf_checks=True)
    browser.force_login(crew)
    body = {"name": "Northbank Resins", "lead_time_days": 7}
    refused = browser.post("/api/suppliers/", body, content_type="application/json")
    assert (refused.status_code, refused.json()["type"]) == (403, "/problems/csrf")

    browser.cookies["csrftoken"] = "c" * 32
    headers = {"X-CSRFToken": "c" * 32}
    assert browser.post("/api/suppliers/", body, content_type="application/json", headers=headers).status_code == 201

    script = Client(enforce_csrf_checks=True)
    headers = {"Authorization": f"Token {Token.objects.create(user=crew).key}"}
    body["name"] = "Other"
    assert script.post("/api/suppliers/", body, content_type="application/json", headers=headers).status_code == 201


def test_money_is_in_the_owners_answers_only(pack, owner, crew, viewer, api):
    rows = api(owner).get("/api/packs/").json()["results"]
    assert rows == [{"id": pack.pk, "name": "Two-part kit", "price": "189.5000"}]
    for who in (crew, viewer):
        assert api(who).get("/api/packs/").json()["results"] == [{"id": pack.pk, "name": "Two-part kit"}]


def test_money_is_absent_in_nested_answers_too(pack, owner, crew, api):
    url = f"/api/suppliers/{pack.supplier_id}/packs/"
    assert api(owner).get(url).json()["packs"][0]["price"] == "189.5000"
    assert "price" not in api(crew).get(url).json()["packs"][0]


@pytest.mark.parametrize("query", ["ordering=price", "ordering=-price", "price=189.5", "price=1"])
def test_only_the_owner_orders_and_filters_by_money(query, pack, owner, crew, viewer, api):
    assert api(owner).get(f"/api/packs/?{query}").status_code == 200
    for who in (crew, viewer):
        refused = api(who).get(f"/api/packs/?{query}")
        assert refused.status_code == 400
        assert "price" not in refused.json()["detail"].split(":")[-1]  # not among what is allowed


def csv_of(client: APIClient, url: str) -> str:
    return client.get(url, {"format": "csv"}).getvalue().decode("utf-8-sig")


def test_money_is_absent_from_exports_and_reports(pack, owner, crew, api):
    assert "189.5" in csv_of(api(owner), "/api/packs/")
    assert csv_of(api(crew), "/api/packs/") == "name\r\nTwo-part kit\r\n"
    assert "189.5" in csv_of(api(owner), "/api/reports/cost/")
    assert "189.5" not in csv_of(api(crew), "/api/reports/cost/")
    assert api(owner).get("/api/reports/cost/").json()["rows"][0]["cost"] == "189.5000"
    assert api(crew).get("/api/reports/cost/").json()["rows"][0] == {"pack": "Two-part kit"}


def test_crew_enters_no_money(pack, owner, crew, api):
    body = {"lines": [{"supplier": pack.supplier_id, "quantity": "3 g", "cost": "12"}]}
    assert api(owner).post("/api/echo/", body).status_code == 200

    refused = api(crew).post("/api/echo/", body)

    assert refused.status_code == 400
    assert refused.json()["errors"][0]["pointer"] == "/lines/0/cost"
