"""Two people edit the same record."""

import threading
from typing import Any

import pytest
from django.db import connections, transaction

from inventory.catalog.models import Supplier
from inventory.rest.etag import check_version, locked, write_fields
from inventory.rest.problems import Stale

pytestmark = [pytest.mark.urls("tests.rest.urls"), pytest.mark.django_db]


@pytest.fixture
def supplier(db):
    return Supplier.objects.create(number=1, name="Northbank Resins", lead_time_days=7)


def patch(client: Any, supplier: Supplier, days: int, if_match: str | None = None) -> Any:
    headers = {} if if_match is None else {"If-Match": if_match}
    return client.patch(f"/api/suppliers/{supplier.pk}/", {"lead_time_days": days}, headers=headers)


def test_a_change_over_the_version_that_was_read_is_made(supplier, crew, api):
    client = api(crew)
    tag = client.get(f"/api/suppliers/{supplier.pk}/")["ETag"]

    changed = patch(client, supplier, 9, tag)

    assert changed.status_code == 200
    assert changed.json()["lead_time_days"] == 9
    assert changed["ETag"] == client.get(f"/api/suppliers/{supplier.pk}/")["ETag"] != tag


def test_a_change_over_an_older_version_is_refused_and_nothing_is_written(supplier, crew, api):
    client = api(crew)
    tag = client.get(f"/api/suppliers/{supplier.pk}/")["ETag"]
    patch(client, supplier, 8)

    stale = patch(client, supplier, 9, tag)

    assert stale.status_code == 412
    assert stale.json()["type"] == "/problems/stale"
    assert stale.json()["etag"] == '"2"'
    assert Supplier.objects.get().lead_time_days == 8
    assert patch(client, supplier, 9, stale.json()["etag"]).status_code == 200


@pytest.mark.parametrize("if_match", [None, "*", '"1"', 'W/"1"', '"9", "1"', '"x",W/"1" ,"2"'])
def test_what_if_match_lets_through(if_match, supplier, crew, api):
    assert patch(api(crew), supplier, 9, if_match).status_code == 200


KEPT_OUT = [('"2"', 412), ('"x"', 412), ('"01x"', 412), ("1", 400), ("", 400), ('"1', 400)]


@pytest.mark.parametrize(("if_match", "status"), KEPT_OUT)
def test_what_if_match_keeps_out(if_match, status, supplier, crew, api):
    assert patch(api(crew), supplier, 9, if_match).status_code == status
    assert Supplier.objects.get().lead_time_days == 7


def test_a_change_of_nothing_keeps_the_version(supplier, crew, api):
    assert patch(api(crew), supplier, 7)["ETag"] == '"1"'


def test_put_needs_every_field_and_patch_does_not(supplier, crew, api):
    url = f"/api/suppliers/{supplier.pk}/"
    assert api(crew).put(url, {"lead_time_days": 9}).status_code == 400
    assert api(crew).put(url, {"lead_time_days": 9, "name": "N"}).json()["name"] == "N"


def test_delete_honours_if_match(supplier, owner, api):
    url = f"/api/suppliers/{supplier.pk}/"
    assert api(owner).delete(url, headers={"If-Match": '"2"'}).status_code == 412
    assert api(owner).delete(url, headers={"If-Match": '"1"'}).status_code == 204
    assert api(owner).get(url).status_code == api(owner).delete(url).status_code == 404


def test_a_write_over_a_version_that_is_gone_is_stale(supplier):
    mine, theirs = Supplier.objects.get(), Supplier.objects.get()
    write_fields(theirs, {"lead_time_days": 8})

    with pytest.raises(Stale):
        write_fields(mine, {"lead_time_days": 9})

    assert Supplier.objects.get().lead_time_days == 8
    assert theirs.version == 2


@pytest.mark.django_db(transaction=True)
def test_of_two_changes_over_one_version_at_once_one_is_stale(supplier):
    start, outcomes = threading.Barrier(2), []

    def change(days: int) -> None:
        start.wait()
        try:
            with transaction.atomic():
                record = locked(Supplier.objects.all(), pk=supplier.pk)
                check_version(record, frozenset({1}))
                write_fields(record, {"lead_time_days": days})
            outcomes.append("changed")
        except Stale:
            outcomes.append("stale")
        finally:
            connections.close_all()

    threads = [threading.Thread(target=change, args=(days,)) for days in (8, 9)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()

    assert sorted(outcomes) == ["changed", "stale"]
