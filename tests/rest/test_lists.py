"""Pages, filters, order and search of lists."""

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from inventory.catalog.models import Pack, Supplier

pytestmark = [pytest.mark.urls("tests.rest.urls"), pytest.mark.django_db]


@pytest.fixture
def suppliers(db):
    for number, (name, days) in enumerate([("Birch", 7), ("Alder", 7), ("Cedar", 3), ("Dogwood", 7)], start=1):
        Supplier.objects.create(number=number, name=name, lead_time_days=days)


@pytest.fixture
def names(viewer, api):
    def ask(query: str) -> list[str]:
        answer = api(viewer).get(f"/api/suppliers/?{query}")
        assert answer.status_code == 200, answer.json()
        return [row["name"] for row in answer.json()["results"]]

    return ask


@pytest.fixture
def refusal(viewer, api):
    def ask(url: str) -> dict[str, str]:
        answer = api(viewer).get(url)
        assert answer.status_code == 400, url
        assert answer.json()["type"] == "/problems/bad-query"
        error: dict[str, str] = answer.json()["errors"][0]
        return error

    return ask


def test_a_list_comes_in_pages_that_neither_overlap_nor_miss(suppliers, viewer, api):
    seen, url = [], "/api/suppliers/?page_size=3&ordering=lead_time_days"
    while url:
        page = api(viewer).get(url).json()
        assert page["count"] == 4
        seen += [row["name"] for row in page["results"]]
        url = page["next"]
    assert seen == ["Cedar", "Birch", "Alder", "Dogwood"]  # ties by id


def test_order_filter_and_search(suppliers, names):
    assert names("") == ["Alder", "Birch", "Cedar", "Dogwood"]
    assert names("ordering=-name") == ["Dogwood", "Cedar", "Birch", "Alder"]
    assert names("ordering=-lead_time_days,-name") == ["Dogwood", "Birch", "Alder", "Cedar"]
    assert names("lead_time_days=3") == ["Cedar"]
    assert names("search=wood") == ["Dogwood"]
    assert names("search=wood&lead_time_days=3") == []


@pytest.mark.parametrize(
    ("query", "parameter"),
    [
        ("ordering=phone", "ordering"),
        ("ordering=name,materials__code", "ordering"),
        ("lead_time_day=3", "lead_time_day"),
        ("lead_time_days=soon", "lead_time_days"),
        ("is_archived=maybe", "is_archived"),
        ("is_archived=1", "is_archived"),
        ("page_size=201", "page_size"),
        ("page_size=0", "page_size"),
        ("page_size=x", "page_size"),
        ("format=csv", "format"),
        ("search=%00", "search"),
    ],
)
def test_what_a_list_does_not_know_is_refused_by_name(query, parameter, suppliers, refusal):
    assert refusal(f"/api/suppliers/?{query}")["parameter"] == parameter


def test_the_refusal_names_what_is_allowed(suppliers, refusal):
    assert "name, lead_time_days" in refusal("/api/suppliers/?ordering=x")["detail"]
    assert "is_archived, lead_time_days" in refusal("/api/suppliers/?x=1")["detail"]
    assert "json, csv, xlsx" in refusal("/api/packs/?format=pdf")["detail"]


@pytest.mark.parametrize("page", ["0", "2", "-1", "x", "9" * 30, "9" * 5000])
def test_a_page_that_is_not_there_is_404(page, suppliers, viewer, api):
    assert api(viewer).get(f"/api/suppliers/?page={page}").status_code == 404


@pytest.mark.parametrize("value", ["9" * 30, "-" + "9" * 30, "1e400", "NaN", "%F0%9F%92%A7"])
def test_a_number_out_of_bounds_in_a_filter_is_no_fault_of_ours(value, owner, api):
    for url in (
        f"/api/suppliers/?lead_time_days={value}",
        f"/api/packs/?supplier={value}",
        f"/api/packs/?price={value}",
    ):
        assert api(owner).get(url).status_code in (200, 400), url
    if value.isdigit():
        assert api(owner).get(f"/api/suppliers/{value}/").status_code == 404


@pytest.mark.parametrize("ordering", ["price", "-price"])
def test_what_has_no_value_comes_last_either_way(ordering, suppliers, owner, api):
    supplier = Supplier.objects.get(name="Alder")
    for number, price in enumerate([None, "2", "1"], start=1):
        Pack.objects.create(number=number, supplier=supplier, name=f"{price}", price=price)

    rows = api(owner).get(f"/api/packs/?ordering={ordering}").json()["results"]

    assert rows[-1]["name"] == "None"


def test_a_list_costs_the_same_statements_however_long(suppliers, viewer, api):
    client = api(viewer)
    with CaptureQueriesContext(connection) as few:
        client.get("/api/suppliers/?ordering=name&search=e")
    Supplier.objects.bulk_create(Supplier(number=n, name=f"Elm {n}", lead_time_days=1) for n in range(10, 210))
    with CaptureQueriesContext(connection) as many:
        client.get("/api/suppliers/?ordering=name&search=e")
    assert len(few) == len(many) == 3  # token with person, count, rows
