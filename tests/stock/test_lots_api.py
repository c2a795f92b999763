"""Lots over HTTP: how they are shown, what happens to them, and who may."""

from collections.abc import Callable
from datetime import date

import pytest
from rest_framework.test import APIClient

from inventory.shop.models import Person
from inventory.stock.models import Lot
from tests.stock.shelf import Shelf, day

SignIn = Callable[[Person], APIClient]


@pytest.fixture
def client(api: SignIn, owner: Person) -> APIClient:
    return api(owner)


def test_a_lot_says_what_it_is_how_it_stands_and_how_much_is_left_where(shelf: Shelf, client: APIClient) -> None:
    lot = shelf.lot("1000", "50", number="A-1", expires_on=date(2099, 1, 31), containers=2)
    shelf.use(lot, "250", at=day(1))

    body = client.get(f"/api/lots/{lot.pk}/").json()

    assert body["material"] == {
        "id": shelf.material.pk,
        "code": "RES",
        "name": "Clear resin A",
        "kind": "resin",
        "stock_unit": "ml",
        "swatch": "",
        "tracks_lots": True,
    }
    assert body["places"] == [
        {"place": shelf.place.pk, "name": "Shop", "on_hand": {"amount": "750", "unit": "ml"}, "value": "37.5000"}
    ]
    assert (body["on_hand"], body["came_in"]) == ({"amount": "750", "unit": "ml"}, {"amount": "1000", "unit": "ml"})
    assert (body["fill"], body["value"], body["unit_cost"]) == ("0.7500", "37.5000", "0.050000")
    assert (body["use_by"], body["is_expired"], body["is_usable"]) == ("2099-01-31", False, True)
    assert (body["status"], body["status_since"], body["status_reason"]) == ("usable", None, "")
    assert (body["notes"], body["opened_lots"], body["status_events"]) == ([], [], [])


def test_crew_and_viewer_see_no_money_of_a_lot(
    shelf: Shelf, api: SignIn, owner: Person, crew: Person, viewer: Person
) -> None:
    lot = shelf.lot("1000", "50")

    for who, sees in [(owner, True), (crew, False), (viewer, False)]:
        one = api(who).get(f"/api/lots/{lot.pk}/").json()
        row = api(who).get("/api/lots/").json()["results"][0]
        line = api(who).get("/api/movements/").json()["results"][0]
        shelf_row = api(who).get("/api/shelf/").json()["results"][0]
        assert [key in one for key in ("value", "unit_cost")] == [sees, sees]
        assert "value" in row["places"][0] if sees else "value" not in row["places"][0]
        assert ("value" in line, "value" in shelf_row) == (sees, sees)
        assert api(who).get("/api/lots/?ordering=value").status_code == (200 if sees else 400)
        assert ("value" in api(who).get("/api/movements/?format=csv").getvalue().decode()) is sees


def test_lots_are_filtered(shelf: Shelf, client: APIClient) -> None:
    old = shelf.lot("10", "1", number="A-1", expires_on=date(2026, 3, 1))
    new = shelf.lot("10", "1", number="B-2", expires_on=date(2099, 3, 1), place=shelf.van)
    gone = shelf.lot("10", "1", number="C-3")
    shelf.use(gone, "10", at=day(1))
    client.post(f"/api/lots/{new.pk}/hold/", {"reason": "Cloudy"})

    def found(query: str) -> set[int]:
        answer = client.get(f"/api/lots/?{query}")
        assert answer.status_code == 200, answer.json()
        return {row["id"] for row in answer.json()["results"]}

    assert found("") == {old.pk, new.pk, gone.pk}
    assert found("status=on_hold") == {new.pk}
    assert found(f"place={shelf.van.pk}") == {new.pk}
    assert found("use_by_before=2026-03-01") == set()
    assert found("use_by_before=2026-03-02") == {old.pk}
    assert found("lot_number=A-1") == {old.pk}
    assert found("on_hand=true") == {old.pk, new.pk}
    assert found("on_hand=false") == {gone.pk}
    assert found("is_expired=true") == {old.pk}
    assert found(f"material={shelf.material.pk}&search=b-2") == {new.pk}
    assert client.get("/api/lots/?colour=red").status_code == 400


def test_every_act_on_a_lot_goes_through_and_is_undone(shelf: Shelf, client: APIClient) -> None:
    lot = shelf.lot("1000", "50", number="A-1", containers=4)
    url = f"/api/lots/{lot.pk}/"

    opened = client.post(f"{url}open/", {})
    assert (opened.status_code, opened.json()["on_hand"]["amount"]) == (201, "250")
    child = opened.json()["id"]
    assert opened.json()["opened_from"] == lot.pk
    assert client.get(url).json()["opened_lots"][0]["id"] == child
    undone = client.post(f"/api/lots/{child}/undo-opening/", {"reason": "Other pail"})
    assert (undone.status_code, undone.json()["id"], undone.json()["on_hand"]["amount"]) == (200, lot.pk, "1000")

    acts = [
        ("move", {"to": shelf.van.pk, "quantity": "100 mL"}, "1000", "moved"),
        (
            "write-off",
            {"quantity": {"amount": "100", "unit": "ml"}, "reason": "Spilt", "place": shelf.place.pk},
            "900",
            "written_off",
        ),
        (
            "return",
            {"quantity": "100 mL", "to": "supplier", "credit": "4", "reason": "Dented", "place": shelf.place.pk},
            "900",
            "returned",
        ),
        (
            "give",
            {"quantity": "100 mL", "reason": "To a friend", "price": "5.00", "place": shelf.place.pk},
            "900",
            "given",
        ),
        ("empty", {}, "0", "written_off"),
    ]
    for act, body, left, kind in acts:
        answer = client.post(f"{url}{act}/", body)
        assert answer.status_code == 200, answer.json()
        assert answer.json()["on_hand"]["amount"] == left, act
        posting = client.get(f"/api/movements/?lot={lot.pk}").json()["results"][0]["posting"]
        assert client.get(f"/api/postings/{posting}/").json()["kind"] == kind
        undone = client.post(f"/api/postings/{posting}/reverse/", {"reason": "Mistake"})
        assert undone.status_code == 201, undone.json()
        again = client.post(f"/api/postings/{posting}/reverse/", {"reason": "Mistake"})
        assert (again.status_code, again.json()["type"]) == (409, "/problems/already-undone")
        body = client.get(url).json()
        assert (body["on_hand"]["amount"], body["value"]) == ("1000", "50.0000"), act


def test_hold_reject_and_release_over_http(shelf: Shelf, client: APIClient, api: SignIn, crew: Person) -> None:
    lot, twin = shelf.lot("10", "1", number="A-1"), shelf.lot("10", "1", number="A-1")

    held = client.post(f"/api/lots/{lot.pk}/hold/", {"reason": "Cloudy"}).json()
    assert (held["status"], held["status_reason"]) == ("on_hold", "Cloudy")
    assert Lot.objects.get(pk=twin.pk).status == "on_hold"
    assert client.post(f"/api/lots/{twin.pk}/reject/", {"reason": "Bad"}).json()["status"] == "rejected"
    assert api(crew).post(f"/api/lots/{lot.pk}/release/", {"reason": "Fine"}).status_code == 403
    assert client.post(f"/api/lots/{lot.pk}/release/", {"reason": "Fine"}).json()["status"] == "usable"
    again = client.post(f"/api/lots/{lot.pk}/release/", {"reason": "Fine"})
    assert (again.status_code, again.json()["type"]) == (409, "/problems/not-on-hold")


def test_a_count_and_a_mix_over_http(shelf: Shelf, client: APIClient) -> None:
    resin = shelf.lot("1000", "50", number="A-1")
    gold = shelf.lot("100", "20", number="G-1", material=shelf.stuff("GLD", "Gold paste", "paste"))

    count = client.post(
        "/api/stock-counts/",
        {
            "place": shelf.place.pk,
            "counted_at": "2026-03-01T12:00:00Z",
            "lines": [{"lot": resin.pk, "quantity": "900 mL"}],
        },
    )
    assert count.status_code == 201, count.json()
    assert count.json()["lines"][0]["difference"] == {"amount": "-100", "unit": "ml"}
    undo = client.post(f"/api/stock-counts/{count.json()['id']}/undo/", {"reason": "Wrong pail"})
    assert (undo.status_code, undo.json()["is_undone"]) == (200, True)

    mix = client.post(
        "/api/blends/",
        {
            "material": shelf.material.pk,
            "lot_number": "HOUSE-1",
            "made_at": "2026-03-02T12:00:00Z",
            "inputs": [{"lot": resin.pk, "quantity": "500 mL"}, {"lot": gold.pk, "all": True}],
        },
    )
    assert mix.status_code == 201, mix.json()
    assert (mix.json()["lot"]["on_hand"]["amount"], mix.json()["lot"]["value"]) == ("600", "45.0000")
    assert [line["quantity"]["amount"] for line in mix.json()["inputs"]] == ["500", "100"]
    assert client.get(f"/api/blends/{mix.json()['id']}/").json() == mix.json()
    undo = client.post(f"/api/blends/{mix.json()['id']}/undo/", {"reason": "Wrong gold"})
    assert (undo.status_code, undo.json()["is_undone"]) == (200, True)
    assert client.get(f"/api/lots/{gold.pk}/").json()["value"] == "20.0000"


def test_what_is_written_on_a_lot_is_mended_once(shelf: Shelf, client: APIClient) -> None:
    lot = shelf.lot("1000", "50", number="A-1")
    url = f"/api/lots/{lot.pk}/"
    tag = client.get(url).headers["ETag"]

    mended = client.patch(url, {"lot_number": "A-7", "expires_on": "2099-05-01"}, headers={"If-Match": tag})
    assert (mended.status_code, mended.json()["lot_number"], mended.json()["use_by"]) == (200, "A-7", "2099-05-01")
    assert client.patch(url, {"lot_number": "A-8"}, headers={"If-Match": tag}).status_code == 412


def test_places_are_kept(shelf: Shelf, client: APIClient) -> None:
    made = client.post("/api/places/", {"name": "Site"})
    assert made.status_code == 201
    url = f"/api/places/{made.json()['id']}/"
    assert client.post("/api/places/", {"name": "Site"}).status_code == 409
    assert client.patch(url, {"name": "Lake site"}).json()["name"] == "Lake site"
    assert client.delete(url).status_code == 204

    shelf.lot("10", "1", place=shelf.van)
    assert client.delete(f"/api/places/{shelf.van.pk}/").status_code == 409
    assert client.patch(f"/api/places/{shelf.van.pk}/", {"is_archived": True}).json()["type"] == "/problems/in-use"


def test_a_refusal_says_what_is_short_and_where_else_it_lies(shelf: Shelf, client: APIClient) -> None:
    lot = shelf.lot("10", "1", place=shelf.van)

    short = client.post(
        f"/api/lots/{lot.pk}/write-off/", {"quantity": "4 mL", "reason": "Spilt", "place": shelf.place.pk}
    )

    assert (short.status_code, short.json()["type"], short.json()["missing"]) == (
        422,
        "/problems/not-enough-stock",
        "4.000000",
    )
    assert short.json()["elsewhere"] == [{"place": shelf.van.pk, "on_hand": "10.000000"}]


def test_the_shelf_shows_usable_reserved_and_available(shelf: Shelf, client: APIClient) -> None:
    shelf.lot("10", "1", expires_on=date(2026, 1, 31))
    shelf.lot("30", "1", expires_on=date(2099, 1, 31))

    row = client.get(f"/api/shelf/?place={shelf.place.pk}").json()["results"][0]

    amounts = {key: row[key]["amount"] for key in ("on_hand", "usable", "reserved", "available")}
    assert amounts == {"on_hand": "40", "usable": "30", "reserved": "0", "available": "30"}
    assert (row["next_use_by"], row["lots"]) == ("2099-01-31", 2)
