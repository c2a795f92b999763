"""People, roles, passwords and tokens."""

from io import StringIO

import pytest
from django.core.management import CommandError, call_command
from rest_framework.authtoken.models import Token
from rest_framework.test import APIClient

from inventory.rest.problems import BadBody
from inventory.shop import actions
from inventory.shop.models import Change, Person

NEW = {"name": "Bo Lindqvist", "username": "bo", "role": "crew", "password": "salt-and-kelp-7"}


def pointers(answer) -> list[str]:
    return [error["pointer"] for error in answer.json()["errors"]]


def test_an_owner_adds_somebody_who_can_then_sign_in(api, owner):
    answer = api(owner).post("/api/people/", NEW)

    assert answer.status_code == 201, answer.json()
    assert answer.json() == {
        "id": answer.json()["id"],
        "name": "Bo Lindqvist",
        "role": "crew",
        "is_active": True,
        "username": "bo",
        "email": "",
        "has_token": False,
        "last_login": None,
    }
    assert APIClient().post("/api/session/", {"username": "bo", "password": NEW["password"]}).status_code == 200


def test_crew_and_viewers_see_names_and_no_usernames(api, owner, crew, viewer):
    for person in (crew, viewer):
        rows = api(person).get("/api/people/").json()["results"]
        assert [row["name"] for row in rows] == ["Crew", "Owner", "Viewer"]
        assert all(set(row) == {"id", "name", "role", "is_active"} for row in rows)
        assert set(api(person).get(f"/api/people/{owner.pk}/").json()) == {"id", "name", "role", "is_active"}
    assert "username" in api(owner).get("/api/people/").json()["results"][0]


def test_only_owners_write_people(api, crew, viewer):
    for person in (crew, viewer):
        client = api(person)
        assert client.post("/api/people/", NEW).status_code == 403
        assert client.patch(f"/api/people/{person.pk}/", {"role": "owner"}).status_code == 403
        assert client.post(f"/api/people/{person.pk}/password/", {"password": "salt-and-kelp-7"}).status_code == 403
        assert client.post(f"/api/people/{person.pk}/token/").status_code == 403
        assert client.delete(f"/api/people/{person.pk}/token/").status_code == 403
    assert not Person.objects.filter(username="bo").exists()


@pytest.mark.parametrize("username", ["crew-person", "Crew-Person"])
def test_a_username_belongs_to_one_person_whatever_its_capitals(api, owner, crew, username):
    answer = api(owner).post("/api/people/", NEW | {"username": username})

    assert answer.status_code == 400
    assert pointers(answer) == ["/username"]


def test_two_who_take_one_username_at_once_get_a_field_error_and_no_fault(owner, monkeypatch):
    """The second passes the check before the first has written; the database's own rule then speaks."""
    monkeypatch.setattr("inventory.shop.actions.people.checked_username", lambda username, **_: None)
    actions.add_person(username="bo", name="Bo", by=owner)

    with pytest.raises(BadBody) as refusal:
        actions.add_person(username="bo", name="Bea", by=owner)

    assert refusal.value.errors[0]["pointer"] == "/username"


def test_the_last_owner_who_can_sign_in_stays_one(api, owner, crew):
    client = api(owner)
    for change in ({"role": "crew"}, {"is_active": False}):
        answer = client.patch(f"/api/people/{owner.pk}/", change)
        assert answer.status_code == 409
        assert answer.json()["type"] == "/problems/last-owner"
        assert answer.json()["remedies"]

    client.patch(f"/api/people/{crew.pk}/", {"role": "owner"})
    assert client.patch(f"/api/people/{owner.pk}/", {"role": "crew"}).status_code == 200


def test_an_owner_without_access_does_not_count_as_the_last_one(api, owner, crew):
    actions.change_person(person=crew, role="owner", is_active=False, by=owner)

    assert api(owner).patch(f"/api/people/{owner.pk}/", {"role": "viewer"}).status_code == 409


def test_ending_access_ends_the_token_too(api, owner, crew):
    client = api(crew)
    assert client.get("/api/people/").status_code == 200

    api(owner).patch(f"/api/people/{crew.pk}/", {"is_active": False})

    assert client.get("/api/people/").status_code == 401
    assert not Token.objects.filter(user=crew).exists()


@pytest.mark.parametrize("ending", ["access", "password"])
def test_an_open_session_ends_with_the_access_and_with_a_new_password(api, owner, crew, ending):
    browser = APIClient()
    browser.post("/api/session/", {"username": "crew-person", "password": "pour-slowly-9"})
    assert browser.get("/api/session/").json()["person"]["id"] == crew.pk

    if ending == "access":
        api(owner).patch(f"/api/people/{crew.pk}/", {"is_active": False})
    else:
        api(owner).post(f"/api/people/{crew.pk}/password/", {"password": "new-flood-tide-3"})

    assert browser.get("/api/session/").json()["person"] is None
    assert browser.get("/api/people/").status_code == 401


def test_a_change_on_a_stale_reading_is_refused(api, owner, crew):
    client = api(owner)
    seen = client.get(f"/api/people/{crew.pk}/")["ETag"]
    client.patch(f"/api/people/{crew.pk}/", {"name": "Somebody"})

    answer = client.patch(f"/api/people/{crew.pk}/", {"name": "Else"}, HTTP_IF_MATCH=seen)

    assert answer.status_code == 412
    assert Person.objects.get(pk=crew.pk).name == "Somebody"


def test_a_new_role_opens_and_closes_the_admin_pages(client, owner, crew):
    client.force_login(crew)
    assert client.get("/admin/").status_code == 302

    actions.change_person(person=crew, role="owner", by=owner)
    assert client.get("/admin/").status_code == 200
    assert client.get("/admin/shop/person/").status_code == 200
    assert client.get(f"/admin/shop/person/{owner.pk}/change/").status_code == 200
    assert client.get("/admin/shop/person/add/").status_code == 403

    actions.change_person(person=crew, role="viewer", by=owner)
    assert client.get("/admin/").status_code == 302


def test_an_owner_resets_a_password_and_the_log_does_not_hold_it(api, owner, crew):
    assert api(owner).post(f"/api/people/{crew.pk}/password/", {"password": "new-flood-tide-3"}).status_code == 204

    crew.refresh_from_db()
    assert crew.check_password("new-flood-tide-3")
    change = Change.objects.get(noun="person", record=crew.pk, field="password")
    assert (change.before, change.after, change.by) == ("", "changed", owner)


def test_a_token_is_shown_once_works_and_can_be_withdrawn(api, owner, crew):
    address = f"/api/people/{crew.pk}/token/"
    first = api(owner).post(address)
    assert first.status_code == 201
    script = APIClient()
    script.credentials(HTTP_AUTHORIZATION=f"Token {first.json()['token']}")
    assert script.get("/api/people/").status_code == 200

    second = api(owner).post(address).json()["token"]
    assert script.get("/api/people/").status_code == 401
    script.credentials(HTTP_AUTHORIZATION=f"Token {second}")
    assert script.get("/api/people/").status_code == 200

    assert api(owner).delete(address).status_code == 204
    assert script.get("/api/people/").status_code == 401


def test_somebody_without_access_gets_no_token(api, owner, crew):
    actions.change_person(person=crew, is_active=False, by=owner)

    assert api(owner).post(f"/api/people/{crew.pk}/token/").status_code == 409


def printed(*arguments: str) -> str:
    out = StringIO()
    call_command("issue_token", *arguments, stdout=out)
    return out.getvalue().strip()


@pytest.mark.django_db
def test_the_command_makes_the_person_and_prints_the_same_token_again():
    token = printed("till", "--role", "crew")

    assert Token.objects.get(key=token).user.role == "crew"
    assert printed("till") == token
    assert printed("till", "--replace") != token


@pytest.mark.django_db
def test_the_command_refuses_another_role_and_an_odd_name():
    printed("till", "--role", "crew")

    with pytest.raises(CommandError, match="is there already, as crew"):
        printed("till", "--role", "owner")
    with pytest.raises(CommandError, match="without spaces"):
        printed("two words")


def test_a_list_of_people_costs_the_same_however_many(api, owner, django_assert_num_queries):
    client = api(owner)
    with django_assert_num_queries(3):
        client.get("/api/people/")
    for number in range(40):
        actions.add_person(username=f"p{number}", name=f"Person {number}", by=owner)
    with django_assert_num_queries(3):
        assert len(client.get("/api/people/").json()["results"]) == 41


def test_people_are_found_by_name_and_by_role(api, crew, owner):
    client = api(crew)

    assert [row["name"] for row in client.get("/api/people/?search=own").json()["results"]] == ["Owner"]
    assert [row["name"] for row in client.get("/api/people/?role=crew").json()["results"]] == ["Crew"]
    assert client.get("/api/people/?ordering=username").status_code == 400
    assert client.get("/api/people/?username=crew-person").status_code == 400
