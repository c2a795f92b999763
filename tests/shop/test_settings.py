"""The shop's settings and the change log."""

import pytest

from inventory.shop.models import Change


def test_everybody_reads_the_settings_and_the_owner_alone_changes_them(api, owner, crew, viewer):
    for person in (crew, viewer):
        assert api(person).get("/api/shop/").json()["name"] == "Kelp Lane Tops"
        assert api(person).patch("/api/shop/", {"town": "Elsewhere"}).status_code == 403

    answer = api(owner).patch("/api/shop/", {"town": "Saltmarsh", "units": {"mass": "oz"}})

    assert answer.status_code == 200
    assert answer.json()["town"] == "Saltmarsh"
    assert answer.json()["units"] == {"volume": "fl_oz", "mass": "oz", "area": "sqft", "temperature": "F"}


def test_a_change_is_logged_with_before_and_after(api, owner):
    api(owner).patch("/api/shop/", {"time_zone": "America/Denver", "name": "Kelp Lane Tops"})

    changes = Change.objects.filter(noun="shop")
    assert [(change.field, change.before, change.after, change.by) for change in changes] == [
        ("time_zone", "America/Chicago", "America/Denver", owner)
    ]


@pytest.mark.parametrize(
    ("change", "pointer"),
    [
        ({"time_zone": "Chicago"}, "/time_zone"),
        ({"time_zone": "../etc/passwd"}, "/time_zone"),
        ({"currency": "usd"}, "/currency"),
        ({"name": ""}, "/name"),
        ({"counts_faces": {"top": "perhaps"}}, "/counts_faces/top"),
        ({"units": "metric"}, "/units"),
        ({"counts_faces": {"bottom": True}}, "/counts_faces/bottom"),
    ],
)
def test_a_setting_that_cannot_be_is_refused_where_it_stands(api, owner, change, pointer):
    answer = api(owner).patch("/api/shop/", change)

    assert answer.status_code == 400
    assert [error["pointer"] for error in answer.json()["errors"]] == [pointer]
    assert not Change.objects.filter(noun="shop").exists()


def test_a_stale_page_changes_nothing(api, owner):
    client = api(owner)
    seen = client.get("/api/shop/")["ETag"]
    fresh = client.patch("/api/shop/", {"town": "Saltmarsh"}, HTTP_IF_MATCH=seen)
    assert fresh.status_code == 200
    assert fresh["ETag"] != seen

    stale = client.patch("/api/shop/", {"town": "Elsewhere"}, HTTP_IF_MATCH=seen)

    assert stale.status_code == 412
    assert client.get("/api/shop/").json()["town"] == "Saltmarsh"


def test_the_change_log_is_the_owners_and_is_read_by_record(api, owner, crew):
    api(owner).patch("/api/shop/", {"town": "Saltmarsh", "poison_help": "555 0100"})
    api(owner).patch(f"/api/people/{crew.pk}/", {"name": "Somebody"})

    rows = api(owner).get("/api/changes/?noun=shop&record=1").json()["results"]

    assert [(row["field"], row["before"], row["after"]) for row in rows] == [
        ("poison_help", "", "555 0100"),
        ("town", "", "Saltmarsh"),
    ]
    assert rows[0]["by"] == {"id": owner.pk, "name": "Owner"}
    assert [row["noun"] for row in api(owner).get("/api/changes/?field=name").json()["results"]] == ["person"]
    assert api(crew).get("/api/changes/").status_code == 403


@pytest.mark.parametrize("record", ["x", "-1", "1e999999", "99999999999999999999", "NaN"])
def test_an_odd_record_number_is_no_fault(api, owner, record):
    answer = api(owner).get(f"/api/changes/?record={record}")

    assert answer.status_code in (200, 400)
    assert answer.json().get("count", 0) == 0


def test_the_change_log_costs_the_same_however_long(api, owner, django_assert_num_queries):
    client = api(owner)
    for number in range(2):
        client.patch("/api/shop/", {"town": f"Town {number}"})
    with django_assert_num_queries(3):
        client.get("/api/changes/")
    for number in range(40):
        client.patch("/api/shop/", {"town": f"Village {number}"})
    with django_assert_num_queries(3):
        assert len(client.get("/api/changes/").json()["results"]) == 42
