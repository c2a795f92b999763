"""What a client can send amiss is told how to mend it, and never breaks anything."""

from collections.abc import Callable
from typing import Any

import pytest
from rest_framework.test import APIClient

from inventory.shop.models import Person
from inventory.stock.models import Posting
from tests.stock.shelf import Shelf

HUGE = "9" * 30


@pytest.mark.parametrize(
    "url",
    [
        f"lots/?material={HUGE}",
        "lots/?number=1e30",
        "lots/?number=NaN",
        "lots/?use_by_before=2026-13-01",
        "lots/?place=van",
        "lots/?status=broken",
        "lots/?on_hand=perhaps&page_size=0",
        f"movements/?posting={HUGE}",
        "movements/?cause=-1",
        "movements/?kind=reversed",
        "movements/?format=pdf",
        f"shelf/?place={HUGE}",
        "stock-counts/?lot=x",
        "blends/?material=0",
    ],
)
def test_a_filter_that_cannot_be_is_refused(shelf: Shelf, api: Callable[[Person], APIClient], url: str) -> None:
    answer = api(shelf.by).get(f"/api/{url}")

    assert answer.status_code == 400, answer.json()
    assert answer.json()["errors"][0]["parameter"] in url


@pytest.mark.parametrize("url", ["lots/{}/", "postings/{}/", "blends/{}/", "stock-counts/{}/", "places/{}/"])
@pytest.mark.parametrize("key", ["0", "4711", HUGE])
def test_what_is_not_there_is_not_found(shelf: Shelf, api: Callable[[Person], APIClient], url: str, key: str) -> None:
    assert api(shelf.by).get(f"/api/{url.format(key)}").status_code == 404


BODIES: list[tuple[str, dict[str, Any], str]] = [
    ("write-off", {"quantity": "32 oz", "reason": "Spilt"}, "/quantity"),
    ("write-off", {"quantity": "-1 ml", "reason": "Spilt"}, "/quantity"),
    ("write-off", {"quantity": {"amount": "NaN", "unit": "ml"}, "reason": "Spilt"}, "/quantity"),
    ("write-off", {"quantity": {"amount": "1e999999", "unit": "ml"}, "reason": "Spilt"}, "/quantity"),
    ("write-off", {"quantity": "0 ml", "reason": "Spilt"}, "/quantity"),
    ("write-off", {"quantity": "1 ml", "all": True, "reason": "Spilt"}, "/quantity"),
    ("write-off", {"quantity": "1 ml"}, "/reason"),
    ("write-off", {"all": True, "reason": ""}, "/reason"),
    ("write-off", {"all": True, "reason": "Spilt", "happened_at": "yesterday"}, "/happened_at"),
    ("move", {"quantity": "1 ml"}, "/to"),
    ("move", {"quantity": "1 ml", "to": 4711}, "/to"),
    ("return", {"quantity": "1 ml", "to": "friend", "reason": "Dented"}, "/to"),
    ("return", {"quantity": "1 ml", "to": "supplier", "credit": "-1", "reason": "Dented"}, "/credit"),
    ("open", {"containers": 0}, "/containers"),
    ("open", {"containers": 2}, "/containers"),
    ("hold", {}, "/reason"),
    ("notes", {"text": ""}, "/text"),
]


@pytest.mark.parametrize(("act", "body", "pointer"), BODIES)
def test_a_body_is_told_which_field_to_mend(
    shelf: Shelf, api: Callable[[Person], APIClient], act: str, body: dict[str, Any], pointer: str
) -> None:
    lot = shelf.lot("100", "10")
    postings = Posting.objects.count()

    answer = api(shelf.by).post(f"/api/lots/{lot.pk}/{act}/", body)

    assert answer.status_code == 400, answer.json()
    assert pointer in [error["pointer"] for error in answer.json()["errors"]]
    assert Posting.objects.count() == postings


def test_a_count_and_a_mix_name_the_line_to_mend(shelf: Shelf, api: Callable[[Person], APIClient]) -> None:
    client = api(shelf.by)
    lot = shelf.lot("100", "10")
    tape = shelf.lot("10", "1", material=shelf.stuff("TAP", "Tape", "consumable", "each"))

    count = client.post(
        "/api/stock-counts/",
        {
            "place": shelf.place.pk,
            "counted_at": "2026-03-01T12:00:00Z",
            "lines": [{"lot": lot.pk, "quantity": "1 ml"}, {"lot": 4711, "quantity": "1 ml"}],
        },
    )
    mix = client.post("/api/blends/", {"material": shelf.material.pk, "inputs": [{"lot": tape.pk, "quantity": "1 ml"}]})

    assert (count.status_code, count.json()["errors"][0]["pointer"]) == (400, "/lines/1/lot")
    assert (mix.status_code, mix.json()["type"]) == (422, "/problems/unit-mismatch")
    assert mix.json()["errors"][0]["pointer"] == "/inputs/0/quantity"


def test_crew_cannot_say_money(shelf: Shelf, api: Callable[[Person], APIClient], crew: Person) -> None:
    lot = shelf.lot("100", "10")
    body = {"quantity": "1 ml", "to": "supplier", "reason": "Dented"}

    refused = api(crew).post(f"/api/lots/{lot.pk}/return/", {**body, "credit": "1"})

    assert (refused.status_code, refused.json()["errors"][0]["pointer"]) == (400, "/credit")
    assert api(crew).post(f"/api/lots/{lot.pk}/return/", body).status_code == 200


def test_a_retried_act_is_done_once(shelf: Shelf, api: Callable[[Person], APIClient]) -> None:
    lot = shelf.lot("100", "10")
    client = api(shelf.by)
    body = {"quantity": "1 ml", "reason": "Spilt"}

    first, second = (
        client.post(f"/api/lots/{lot.pk}/write-off/", body, headers={"Idempotency-Key": "k-1"}) for _ in range(2)
    )

    assert first.json() == second.json()
    assert shelf.balance(lot)[0] == 99
