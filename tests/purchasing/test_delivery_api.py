"""Deliveries over HTTP: what is sent, what comes back, who may see money, and how many statements it takes."""

from collections.abc import Callable
from typing import Any

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from rest_framework.test import APIClient

from inventory.purchasing.models import Delivery
from inventory.shop.models import Person
from tests.purchasing.conftest import Door, lots_of

Api = Callable[[Person], APIClient]
MONEY = {"cost", "booked_cost", "charges", "landed_cost", "unit_cost"}


def body(door: Door, *lines: dict[str, Any], **fields: Any) -> dict[str, Any]:
    return {"supplier": door.supplier.pk, "received_on": "2026-02-02", "lines": list(lines)} | fields


def resin(door: Door, **fields: Any) -> dict[str, Any]:
    return {"material": door.resin.pk, "quantity": {"amount": "1", "unit": "gal"}} | fields


def post(client: APIClient, path: str, sent: dict[str, Any], status: int = 201, **headers: str) -> dict[str, Any]:
    answer = client.post(f"/api/deliveries/{path}", sent, format="json", headers=headers)
    assert answer.status_code == status, answer.content
    found: dict[str, Any] = answer.json()
    return found


def keys_in(value: Any) -> set[str]:
    if isinstance(value, dict):
        return set(value).union(*(keys_in(inner) for inner in value.values())) if value else set()
    return set().union(*(keys_in(inner) for inner in value)) if isinstance(value, list) and value else set()


def test_a_delivery_comes_back_with_its_lots_and_what_they_cost(door: Door, api: Api, owner: Person) -> None:
    sent = body(
        door,
        resin(door, cost="60", lot_number="K-7", expires_on="2027-02-01"),
        {"material": door.mica.pk, "quantity": "50 g"},
        reference="Slip 88",
        charges=[{"kind": "freight", "amount": "12.5", "spread_by": "value"}],
    )

    answer = post(api(owner), "", sent)

    lot = lots_of(Delivery.objects.get())[0]
    line, to_follow = answer["lines"]
    assert (answer["number"], answer["reference"], answer["landed_cost"]) == (1, "Slip 88", "72.5000")
    assert answer["supplier"] == {"id": door.supplier.pk, "name": "Harbour Resin Supply"}
    assert (answer["is_provisional"], answer["is_undone"]) == (True, False)
    assert line["lot"] == {
        "id": lot.pk,
        "number": lot.number,
        "lot_number": "K-7",
        "is_own_number": False,
        "made_on": None,
        "expires_on": "2027-02-01",
        "use_by": "2027-02-01",
        "status": "usable",
    }
    assert line["quantity"] == {"amount": "3785.411784", "unit": "ml"}
    assert line["as_typed"] == {"amount": "1", "unit": "gal"}
    assert (line["cost"], line["charges"], line["landed_cost"]) == ("60.0000", "12.5000", "72.5000")
    assert line["unit_cost"] == "0.019152"
    assert (to_follow["cost"], to_follow["booked_cost"], to_follow["is_provisional"]) == (None, "0.0000", True)
    assert answer["charges"][0] | {"id": 0} == {
        "id": 0,
        "kind": "freight",
        "amount": "12.5000",
        "spread_by": "value",
        "charged_on": "2026-02-02",
    }
    assert api(owner).get(f"/api/deliveries/{answer['id']}/").json() == answer


def test_crew_receives_without_sending_or_seeing_money(door: Door, api: Api, crew: Person) -> None:
    sent = body(door, resin(door, cost="60"), charges=[{"kind": "freight", "amount": "5"}])
    refused = post(api(crew), "", sent, 400)
    assert "/charges" in {error["pointer"] for error in refused["errors"]}
    refused = post(api(crew), "", body(door, resin(door, cost="60")), 400)
    assert [error["pointer"] for error in refused["errors"]] == ["/lines/0/cost"]
    assert not Delivery.objects.exists()

    answer = post(api(crew), "", body(door, resin(door), resin(door, basis="customers_own")))

    assert not MONEY & keys_in(answer)
    assert [line["is_provisional"] for line in answer["lines"]] == [True, False]
    for path in ("", f"{answer['id']}/"):
        assert not MONEY & keys_in(api(crew).get(f"/api/deliveries/{path}").json())


def test_a_viewer_reads_and_does_not_receive(door: Door, api: Api, viewer: Person) -> None:
    assert post(api(viewer), "", body(door, resin(door)), 403)["type"] == "/problems/not-for-your-role"
    assert api(viewer).get("/api/deliveries/").status_code == 200


def test_only_the_owner_prices_and_charges(door: Door, api: Api, crew: Person, owner: Person) -> None:
    delivery = post(api(crew), "", body(door, resin(door)))
    price = {"lines": [{"line": delivery["lines"][0]["id"], "cost": "60"}]}
    charge = {"kind": "freight", "amount": "4", "spread_by": "mass", "charged_on": "2026-03-01"}

    post(api(crew), f"{delivery['id']}/price/", price, 403)
    post(api(crew), f"{delivery['id']}/charges/", charge, 403)

    priced = post(api(owner), f"{delivery['id']}/price/", price, 200)
    assert (priced["lines"][0]["cost"], priced["is_provisional"]) == ("60.0000", False)
    charged = post(api(owner), f"{delivery['id']}/charges/", charge)
    assert charged["lines"][0]["landed_cost"] == "64.0000"


def test_a_correction_and_its_undoing_over_http(door: Door, api: Api, crew: Person) -> None:
    delivery = post(api(crew), "", body(door, resin(door)))
    line = delivery["lines"][0]["id"]

    corrected = post(
        api(crew),
        f"{delivery['id']}/correct/",
        {"lines": [{"line": line, "quantity": "2 gal"}], "reason": "Two pails, not one."},
        200,
    )
    assert corrected["lines"][0]["as_typed"] == {"amount": "2", "unit": "gal"}

    lot = lots_of(Delivery.objects.get())[0]
    poured = door.use(lot, "100")
    refused = post(api(crew), f"{delivery['id']}/reverse/", {"reason": "Never came."}, 409)
    assert refused["type"] == "/problems/not-whole-any-more"
    assert refused["first"][0]["posting"] == poured.id
    door.undo(poured)
    undone = post(api(crew), f"{delivery['id']}/reverse/", {"reason": "Never came."}, 200)
    assert (undone["is_undone"], undone["is_provisional"]) == (True, False)
    assert post(api(crew), f"{delivery['id']}/reverse/", {"reason": "Never came."}, 409)["type"].endswith("undone")


@pytest.mark.parametrize(
    ("wrong", "pointers"),
    [
        ({"quantity": "0 gal"}, ["/lines/0/quantity"]),
        ({"quantity": "1 oz"}, ["/lines/0/quantity"]),
        ({"quantity": "1 furlong"}, ["/lines/0/quantity"]),
        ({"cost": "-1"}, ["/lines/0/cost"]),
        ({"cost": "0"}, ["/lines/0/cost"]),
        ({"cost": "1e999999"}, ["/lines/0/cost"]),
        ({"cost": "5", "basis": "borrowed"}, ["/lines/0/basis"]),
        ({"basis": "found"}, ["/lines/0/basis"]),
        ({"containers": 0}, ["/lines/0/containers"]),
        ({"made_on": "2026-02-31"}, ["/lines/0/made_on"]),
        ({"count": 2}, ["/lines/0/count"]),
        ({"pack": 1}, ["/lines/0/material"]),
        ({"lot": "K-7"}, ["/lines/0/lot"]),
        ({"material": 999_999}, ["/lines/0/material"]),
    ],
)
def test_a_bad_line_is_named_by_its_field(
    door: Door, api: Api, owner: Person, wrong: dict[str, Any], pointers: list[str]
) -> None:
    answer = api(owner).post("/api/deliveries/", body(door, resin(door) | wrong), format="json")

    assert answer.status_code in (400, 422)
    assert [error["pointer"] for error in answer.json()["errors"]] == pointers
    assert not Delivery.objects.exists()


@pytest.mark.parametrize(
    ("wrong", "status"),
    [
        ({"lines": []}, 400),
        ({"received_on": "2199-01-01"}, 422),
        ({"supplier": 999_999}, 400),
        ({"place": 999_999}, 400),
        ({"charges": [{"kind": "freight", "amount": "0"}]}, 400),
        ({"lines": [{}]}, 400),
        ({"lines": "all of it"}, 400),
    ],
)
def test_a_bad_delivery_is_refused_and_nothing_is_written(
    door: Door, api: Api, owner: Person, wrong: dict[str, Any], status: int
) -> None:
    refused = post(api(owner), "", body(door, resin(door)) | wrong, status)
    assert refused["status"] == status
    assert not Delivery.objects.exists()


def test_too_many_of_a_pack_are_refused_in_their_field(door: Door, api: Api, owner: Person) -> None:
    kit = door.kit(times=2)
    refused = post(api(owner), "", body(door, {"pack": kit.pk, "count": 9_999, "cost": "1"}), 400)
    assert [error["pointer"] for error in refused["errors"]] == ["/lines/0/count"]

    post(api(owner), "", body(door, {"pack": kit.pk, "count": 2, "cost": "1"}))


def test_the_same_key_receives_once(door: Door, api: Api, crew: Person) -> None:
    key = {"Idempotency-Key": "a-slip-of-paper"}

    first = post(api(crew), "", body(door, resin(door)), **key)
    again = post(api(crew), "", body(door, resin(door)), **key)

    assert first == again
    assert Delivery.objects.count() == 1


def listed(client: APIClient, query: str) -> list[int]:
    answer = client.get(f"/api/deliveries/?{query}")
    assert answer.status_code == 200, answer.content
    return [row["number"] for row in answer.json()["results"]]


def test_deliveries_are_listed_the_latest_first_and_filtered(door: Door, api: Api, owner: Person) -> None:
    client = api(owner)
    post(client, "", body(door, resin(door, cost="60", lot_number="K-7"), received_on="2026-01-05"))
    post(client, "", body(door, resin(door), reference="Slip 88", received_on="2026-02-05"))
    mica = post(client, "", body(door, {"material": door.mica.pk, "quantity": "5 g"}, received_on="2026-01-20"))

    assert listed(client, "") == [2, 3, 1]
    assert listed(client, "ordering=number") == [1, 2, 3]
    assert listed(client, "received_from=2026-01-20") == [2, 3]
    assert listed(client, "received_to=2026-01-20") == [3, 1]
    assert listed(client, "is_provisional=true") == [2, 3]
    assert listed(client, "is_provisional=false") == [1]
    assert listed(client, f"material={door.mica.pk}") == [3]
    assert listed(client, "lot_number=K-7") == [1]
    assert listed(client, f"supplier={door.supplier.pk}") == [2, 3, 1]
    assert listed(client, "search=slip") == [2]
    post(client, f"{mica['id']}/reverse/", {"reason": "Never came."}, 200)
    assert listed(client, "is_undone=true") == [3]
    assert listed(client, "is_provisional=true") == [2]
    assert client.get("/api/deliveries/?received_from=yesterday").status_code == 400


def statements(act: Callable[[], Any]) -> int:
    with CaptureQueriesContext(
        connection,
    ) as captured:
        act()
    return sum(not query["sql"].startswith(("SAVEPOINT", "RELEASE", "BEGIN", "COMMIT")) for query in captured)


def many(door: Door, count: int) -> dict[str, Any]:
    kit = door.kit(name=f"Kit for {count}")
    lines = [resin(door, cost="60", lot_number=f"A-{count}-{index}") for index in range(count - 1)]
    freight = {"kind": "freight", "amount": "5", "spread_by": "mass"}
    return body(door, *lines, {"pack": kit.pk, "count": 1}, charges=[freight])


def test_two_lines_and_forty_take_as_many_statements(door: Door, api: Api, owner: Person) -> None:
    client = api(owner)
    made: list[dict[str, Any]] = []
    client.get("/api/deliveries/")

    few, lot_of_them = (
        statements(lambda sent=sent: made.append(post(client, "", sent))) for sent in (many(door, 2), many(door, 40))
    )
    assert few == lot_of_them <= 24
    for path, sent, status in (
        ("price", lambda lines: {"lines": [{"line": line["id"], "cost": "70"} for line in lines]}, 200),
        ("charges", lambda lines: {"kind": "duty", "amount": "3", "charged_on": "2026-03-01"}, 201),
        (
            "correct",
            lambda lines: {"lines": [{"line": line["id"], "quantity": "2 gal"} for line in lines], "reason": "Slip."},
            200,
        ),
        ("reverse", lambda lines: {"reason": "Booked twice."}, 200),
    ):
        counts = [
            statements(
                lambda one=one: post(client, f"{one['id']}/{path}/", sent(one["lines"]), status)  # noqa: B023
            )
            for one in made
        ]
        assert counts[0] == counts[1], path
    assert statements(lambda: client.get(f"/api/deliveries/{made[0]['id']}/")) == statements(
        lambda: client.get(f"/api/deliveries/{made[1]['id']}/")
    )
