"""Suppliers and packs: bottles, cases and kits under one price."""

import pytest

from inventory.calc.quantities import parse_quantity
from inventory.catalog import actions
from inventory.catalog.actions import ContentGiven
from inventory.catalog.models import Material, Pack, Supplier
from inventory.catalog.problems import UnitMismatch
from inventory.shop.models import Change
from tests.catalog.conftest import pointers


@pytest.fixture
def kit(supplier, resin, hardener):
    """The body of a three-gallon kit."""
    return {
        "supplier": supplier["id"],
        "name": "3 gal kit",
        "contents": [
            {"material": resin["id"], "quantity": "2 gal", "cost_share_percent": "60"},
            {"material": hardener["id"], "quantity": {"amount": "128", "unit": "fl_oz"}, "cost_share_percent": "40"},
        ],
        "price": "288.50",
    }


def test_a_kit_comes_back_with_its_contents_in_stock_units(office, kit, supplier, resin, hardener):
    answer = office.post("/api/packs/", kit)

    assert answer.status_code == 201, answer.json()
    pack = answer.json()
    assert pack | {"id": 0} == {
        "id": 0,
        "number": 1,
        "supplier": {"id": supplier["id"], "name": "Harbour Resin Supply"},
        "name": "3 gal kit",
        "contents": [
            {
                "material": {
                    "id": resin["id"],
                    "code": "R-1",
                    "name": "Table resin A",
                    "swatch": "",
                    "stock_unit": "ml",
                },
                "quantity": {"amount": "7570.823568", "unit": "ml"},
                "as_typed": {"amount": "2", "unit": "gal"},
                "cost_share_percent": "60",
            },
            {
                "material": {
                    "id": hardener["id"],
                    "code": "H-1",
                    "name": "Table hardener B",
                    "swatch": "",
                    "stock_unit": "ml",
                },
                "quantity": {"amount": "3785.411784", "unit": "ml"},
                "as_typed": {"amount": "128", "unit": "fl_oz"},
                "cost_share_percent": "40",
            },
        ],
        "price": "288.5000",
        "is_archived": False,
        "version": 1,
    }


def test_the_price_is_the_owners_to_see_filter_and_order_by(api, office, kit, crew, viewer):
    pack = office.post("/api/packs/", kit).json()

    assert office.get("/api/packs/?ordering=-price").json()["results"][0]["price"] == "288.5000"
    for person in (crew, viewer):
        client = api(person)
        assert "price" not in client.get(f"/api/packs/{pack['id']}/").json()
        assert "price" not in client.get("/api/packs/").json()["results"][0]
        assert client.get("/api/packs/?ordering=price").status_code == 400
        assert client.get("/api/packs/?price=288.5").status_code == 400
        assert client.get("/api/packs/?ordering=name").status_code == 200


@pytest.mark.parametrize(
    ("changed", "pointer"),
    [
        ({"contents": []}, "/contents"),
        ({"price": "-1"}, "/price"),
        ({"price": "0.00001"}, "/price"),
        ({"price": "10000000"}, "/price"),
        ({"supplier": 4711}, "/supplier"),
        ({"name": ""}, "/name"),
        ({"cost": "3"}, "/cost"),
    ],
)
def test_a_pack_that_cannot_be_is_refused_where_it_stands(office, kit, changed, pointer):
    assert pointers(office.post("/api/packs/", kit | changed)) == [pointer]
    assert not Pack.objects.exists()


@pytest.mark.parametrize(
    ("shares", "is_good"),
    [
        (("60", "40"), True),
        (("33.333333", "66.666667"), True),
        ((None, None), True),
        (("60", "41"), False),
        (("60", None), False),
        (("0", "100"), True),
    ],
)
def test_cost_shares_are_given_for_all_or_none_and_make_100(office, kit, shares, is_good):
    for content, share in zip(kit["contents"], shares, strict=True):
        content["cost_share_percent"] = share

    answer = office.post("/api/packs/", kit)

    if is_good:
        assert answer.status_code == 201
    else:
        assert pointers(answer) == ["/contents"]


def test_a_material_is_in_a_pack_once(office, kit, resin):
    kit["contents"][1]["material"] = resin["id"]

    assert pointers(office.post("/api/packs/", kit)) == ["/contents/1/material"]


def test_a_quantity_that_does_not_lead_to_the_stock_unit_says_what_is_missing(office, kit, material, hardener):
    can = material("C-1", kind="paint", stock_unit="g")
    kit["contents"][0]["material"] = can["id"]

    answer = office.post("/api/packs/", kit)

    assert answer.status_code == 422
    problem = answer.json()
    assert problem["type"] == "/problems/unit-mismatch"
    assert problem["missing"] == "density_g_per_ml"
    assert problem["material"] == can["id"]
    assert problem["errors"][0]["pointer"] == "/contents/0/quantity"
    assert problem["remedies"][0]["kind"] == "give_figure"
    assert not Pack.objects.exists()


def test_the_action_refuses_the_same(owner, supplier, material):
    can = Material.objects.get(pk=material("C-1", kind="paint", stock_unit="g")["id"])
    shelf = Supplier.objects.get(pk=supplier["id"])

    with pytest.raises(UnitMismatch):
        actions.add_pack(supplier=shelf, name="Can", contents=[ContentGiven(can, parse_quantity("1 gal"))], by=owner)


def test_a_bare_ounce_is_refused_with_both_ounces_offered(office, kit):
    kit["contents"][0]["quantity"] = "32 oz"

    answer = office.post("/api/packs/", kit)

    assert pointers(answer) == ["/contents/0/quantity"]
    assert answer.json()["errors"][0]["choices"] == ["fl_oz", "oz"]


def test_two_packs_of_one_supplier_have_two_names(office, kit):
    office.post("/api/packs/", kit)

    assert pointers(office.post("/api/packs/", kit)) == ["/name"]
    other = office.post("/api/suppliers/", {"name": "Another Supply", "lead_time_days": 3}).json()
    assert office.post("/api/packs/", kit | {"supplier": other["id"]}).status_code == 201


def test_a_new_price_and_new_contents_are_logged(office, kit, resin):
    pack = office.post("/api/packs/", kit).json()
    address = f"/api/packs/{pack['id']}/"
    assert office.patch(address, {"price": "310"}).json()["version"] == 2

    changed = office.patch(address, {"contents": [{"material": resin["id"], "quantity": "1 gal"}]})

    assert changed.status_code == 200, changed.json()
    assert changed.json()["version"] == 3
    logged = {change.field: (change.before, change.after) for change in Change.objects.filter(noun="pack")}
    assert logged["price"] == ("288.5", "310")
    assert logged["contents"][1] == "1 gal of Table resin A"


def test_a_content_in_a_patch_is_whole(office, kit, resin):
    pack = office.post("/api/packs/", kit).json()

    answer = office.patch(f"/api/packs/{pack['id']}/", {"contents": [{"material": resin["id"]}]})

    assert pointers(answer) == ["/contents/0/quantity"]


def test_what_is_archived_is_not_put_into_new_packs(office, kit, resin, supplier):
    pack = office.post("/api/packs/", kit).json()
    office.post(f"/api/materials/{resin['id']}/archive/")

    assert pointers(office.post("/api/packs/", kit | {"name": "Other"})) == ["/contents/0/material"]
    assert office.patch(f"/api/packs/{pack['id']}/", {"contents": kit["contents"]}).status_code == 200
    office.post(f"/api/suppliers/{supplier['id']}/archive/")
    assert pointers(office.post("/api/packs/", kit | {"name": "Other"})) == ["/supplier"]


def test_packs_are_found_by_material_supplier_and_words(office, kit, resin, supplier):
    office.post("/api/packs/", kit)
    single = {"supplier": supplier["id"], "name": "Jug", "contents": [{"material": resin["id"], "quantity": "1 gal"}]}
    office.post("/api/packs/", single)

    def names(query: str) -> list[str]:
        return [row["name"] for row in office.get(f"/api/packs/?{query}").json()["results"]]

    assert names(f"material={resin['id']}") == ["3 gal kit", "Jug"]
    assert names("search=hardener") == ["3 gal kit"]
    assert names("search=table") == ["3 gal kit", "Jug"]
    assert names(f"supplier={supplier['id']}&ordering=-name") == ["Jug", "3 gal kit"]


def test_a_list_of_packs_costs_the_same_however_long(office, kit, django_assert_num_queries):
    for number in range(2):
        office.post("/api/packs/", kit | {"name": f"Kit {number}"})
    with django_assert_num_queries(4):
        office.get("/api/packs/")
    for number in range(2, 40):
        office.post("/api/packs/", kit | {"name": f"Kit {number}"})
    with django_assert_num_queries(4):
        assert len(office.get("/api/packs/").json()["results"]) == 40


def test_suppliers_are_named_once_changed_and_logged(office, supplier):
    body = {"name": "Harbour Resin Supply", "lead_time_days": 3}
    assert pointers(office.post("/api/suppliers/", body)) == ["/name"]
    assert pointers(office.post("/api/suppliers/", {"name": "x", "lead_time_days": -1})) == ["/lead_time_days"]
    assert pointers(office.post("/api/suppliers/", {"name": "x"})) == ["/lead_time_days"]

    address = f"/api/suppliers/{supplier['id']}/"
    changed = office.patch(address, {"lead_time_days": 9, "phone": "555 0142"}).json()
    assert changed | {"id": 0} == {
        "id": 0,
        "number": 1,
        "name": "Harbour Resin Supply",
        "lead_time_days": 9,
        "phone": "555 0142",
        "email": "",
        "note": "",
        "is_archived": False,
        "version": 2,
    }
    change = Change.objects.get(noun="supplier", field="lead_time_days")
    assert (change.before, change.after) == ("6", "9")


def test_a_supplier_of_something_is_archived_and_one_of_nothing_deleted(office, kit, supplier):
    other = office.post("/api/suppliers/", {"name": "Another Supply", "lead_time_days": 3}).json()
    office.post("/api/packs/", kit)

    assert office.delete(f"/api/suppliers/{supplier['id']}/").status_code == 409
    assert office.delete(f"/api/suppliers/{other['id']}/").status_code == 204
    assert office.get(f"/api/suppliers/{other['id']}/").status_code == 404
    deleted = Change.objects.get(noun="supplier", field="deleted")
    assert (deleted.record, deleted.before) == (other["id"], "Another Supply")


def test_a_list_of_suppliers_costs_the_same_however_long(office, django_assert_num_queries):
    for number in range(40):
        office.post("/api/suppliers/", {"name": f"Supply {number}", "lead_time_days": 3})
    with django_assert_num_queries(3):
        assert len(office.get("/api/suppliers/").json()["results"]) == 40
