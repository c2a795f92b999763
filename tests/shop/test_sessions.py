"""Signing in and out, the first set-up, one's own password."""

import pytest
from django.test import Client
from rest_framework.authtoken.models import Token
from rest_framework.test import APIClient

from inventory.shop import actions, queries
from inventory.shop.models import Person, Shop
from inventory.shop.problems import AlreadySetUp

PASSWORD = "pour-slowly-9"
SET_UP = {
    "name": "Kelp Lane Tops",
    "town": "Saltmarsh",
    "currency": "USD",
    "time_zone": "America/Chicago",
    "units": {"volume": "ml", "temperature": "C"},
    "counts_faces": {"splash": False},
    "owner_name": "Ines Marlow",
    "username": "ines",
    "password": "tidal-flat-42",
}


def pointers(answer) -> list[str]:
    return [error["pointer"] for error in answer.json()["errors"]]


@pytest.mark.django_db
def test_an_empty_shop_says_that_it_needs_set_up_and_hands_out_the_csrf_cookie():
    answer = APIClient().get("/api/session/")

    assert answer.status_code == 200
    assert answer.json()["needs_set_up"] is True
    assert answer.json()["person"] is None
    assert "csrftoken" in answer.cookies


@pytest.mark.django_db
def test_set_up_makes_the_shop_and_signs_its_first_owner_in():
    client = APIClient()

    answer = client.post("/api/set-up/", SET_UP)

    assert answer.status_code == 201, answer.json()
    session = client.get("/api/session/").json()
    assert session == answer.json()
    assert session["needs_set_up"] is False
    assert session["person"]["role"] == "owner"
    assert session["shop"] == {
        "name": "Kelp Lane Tops",
        "town": "Saltmarsh",
        "currency": "USD",
        "time_zone": "America/Chicago",
        "units": {"volume": "ml", "mass": "g", "area": "sqft", "temperature": "C"},
        "counts_faces": {"top": True, "edges": True, "splash": False, "deducts_cutouts": False},
        "poison_help": "",
    }


@pytest.mark.django_db
def test_set_up_works_once():
    APIClient().post("/api/set-up/", SET_UP)

    answer = APIClient().post("/api/set-up/", {**SET_UP, "username": "intruder"})

    assert answer.status_code == 409
    assert answer.json()["type"] == "/problems/already-set-up"
    assert list(Person.objects.values_list("username", flat=True)) == ["ines"]


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("changed", "pointer"),
    [
        ({"time_zone": "Mars/Olympus"}, "/time_zone"),
        ({"currency": "dollars"}, "/currency"),
        ({"name": " "}, "/name"),
        ({"password": "12345678"}, "/password"),
        ({"password": "ines"}, "/password"),
        ({"username": "with space"}, "/username"),
        ({"units": {"volume": "barrel"}}, "/units/volume"),
        ({"colour": "green"}, "/colour"),
    ],
)
def test_a_set_up_that_cannot_be_names_the_field_and_makes_nobody(changed, pointer):
    answer = APIClient().post("/api/set-up/", SET_UP | changed)

    assert answer.status_code == 400
    assert pointer in pointers(answer)
    assert not Person.objects.exists()
    assert not Shop.objects.exists()


@pytest.mark.django_db
def test_the_action_keeps_the_same_rule_as_the_address():
    actions.set_up_shop(owner_name="Ines Marlow", username="ines", password="tidal-flat-42", name="Kelp Lane Tops")

    with pytest.raises(AlreadySetUp):
        actions.set_up_shop(owner_name="Bo", username="bo", password="tidal-flat-43", name="Other")


def test_a_session_opens_with_the_right_password_and_closes_again(crew):
    client = APIClient()

    answer = client.post("/api/session/", {"username": "crew-person", "password": PASSWORD})
    assert answer.status_code == 200
    assert answer.json()["person"] == {"id": crew.pk, "name": "Crew", "username": "crew-person", "role": "crew"}
    assert client.get("/api/people/").status_code == 200

    assert client.delete("/api/session/").json()["person"] is None
    assert client.get("/api/people/").status_code == 401


@pytest.mark.parametrize("username", ["crew-person", "nobody"])
def test_a_wrong_password_and_an_unknown_name_are_refused_in_the_same_words(crew, username):
    answer = APIClient().post("/api/session/", {"username": username, "password": "wrong"})

    assert answer.status_code == 400
    assert answer.json()["type"] == "/problems/sign-in-refused"
    assert "capitals count" in answer.json()["detail"]


def test_somebody_whose_access_ended_is_not_let_in(crew, owner):
    actions.change_person(person=crew, is_active=False, by=owner)

    assert APIClient().post("/api/session/", {"username": "crew-person", "password": PASSWORD}).status_code == 400


def test_guessing_is_slowed_down_for_the_guesser_alone(crew, viewer, settings):
    settings.AXES_ENABLED = True
    settings.AXES_FAILURE_LIMIT = 3
    client = APIClient()
    wrong = {"username": "crew-person", "password": "wrong"}

    answers = [client.post("/api/session/", wrong) for _ in range(4)]

    assert [answer.status_code for answer in answers] == [400, 400, 429, 429]
    assert answers[-1]["Content-Type"] == "application/problem+json"
    assert answers[-1].json()["type"] == "/problems/too-many-tries"
    assert answers[-1].json()["retry_after_seconds"] == 900
    assert answers[-1]["Retry-After"] == "900"
    assert client.post("/api/session/", {**wrong, "password": PASSWORD}).status_code == 429
    assert client.post("/api/session/", {"username": "viewer-person", "password": PASSWORD}).status_code == 200


def test_a_browser_needs_the_csrf_token_to_sign_in(crew):
    browser = Client(enforce_csrf_checks=True)
    token = browser.get("/api/session/").cookies["csrftoken"].value
    body = {"username": "crew-person", "password": PASSWORD}

    without = browser.post("/api/session/", body, content_type="application/json")
    assert without.status_code == 403
    assert without.json()["type"] == "/problems/csrf"

    with_token = browser.post("/api/session/", body, content_type="application/json", headers={"X-CSRFToken": token})
    assert with_token.status_code == 200


def test_own_password_changes_with_the_current_one_and_the_session_stays(crew):
    client = APIClient()
    client.post("/api/session/", {"username": "crew-person", "password": PASSWORD})
    body = {"current": PASSWORD, "password": "low-tide-at-six"}

    wrong = client.post("/api/session/password/", body | {"current": "wrong"})
    assert (wrong.status_code, pointers(wrong)) == (400, ["/current"])
    weak = client.post("/api/session/password/", body | {"password": "password"})
    assert (weak.status_code, pointers(weak)) == (400, ["/password"])

    assert client.post("/api/session/password/", body).status_code == 204
    assert client.get("/api/people/").status_code == 200
    crew.refresh_from_db()
    assert crew.check_password("low-tide-at-six")


def test_the_session_costs_three_statements_at_most(crew, django_assert_max_num_queries):
    client = APIClient()
    client.post("/api/session/", {"username": "crew-person", "password": PASSWORD})

    with django_assert_max_num_queries(3):
        client.get("/api/session/")


def test_a_signed_in_person_needs_no_set_up(owner):
    assert queries.session_of(owner).needs_set_up is False
    assert not Token.objects.exists()
