"""Materials: their units, measures, hazards, and what stays when they change."""

import pytest

from inventory.catalog import actions
from inventory.catalog.models import Material
from inventory.rest.problems import BadBody
from inventory.shop.models import Change
from tests.catalog.conftest import pointers

POWDER = {
    "code": "PW-7",
    "name": "Deep kelp mica",
    "kind": "powder",
    "stock_unit": "g",
    "grams_per_tsp": "1.7",
    "measures": [{"name": "scoop", "equals": "4 g"}, {"name": "jar", "equals": "2 oz by weight", "empty_g": "31.5"}],
    "shelf_life_days": 1825,
    "single_lot_per_job": True,
    "hazard_codes": ["H228", "EUH210"],
    "cautions": "Wear a dust mask when scooping.",
    "swatch": "#1f6f5c",
}


def test_a_material_comes_back_as_it_was_given_with_its_measures_in_stock_units(office, supplier):
    answer = office.post("/api/materials/", POWDER | {"main_supplier": supplier["id"]})

    assert answer.status_code == 201, answer.json()
    material = answer.json()
    assert material | {"id": 0} == {
        "id": 0,
        "number": 1,
        "code": "PW-7",
        "name": "Deep kelp mica",
        "kind": "powder",
        "stock_unit": "g",
        "density_g_per_ml": None,
        "grams_per_tsp": "1.7",
        "measures": [
            {
                "name": "scoop",
                "equals": {"amount": "4", "unit": "g"},
                "as_typed": {"amount": "4", "unit": "g"},
                "empty_g": None,
            },
            {
                "name": "jar",
                "equals": {"amount": "56.699046", "unit": "g"},
                "as_typed": {"amount": "2", "unit": "oz"},
                "empty_g": "31.5",
            },
        ],
        "shelf_life_days": 1825,
        "open_life_days": None,
        "tracks_lots": True,
        "single_lot_per_job": True,
        "hazard_codes": ["H228", "EUH210"],
        "hazards": [
            {"code": "H228", "statement": "Flammable solid."},
            {"code": "EUH210", "statement": "See section 2 of the safety data sheet."},
        ],
        "cautions": "Wear a dust mask when scooping.",
        "swatch": "#1f6f5c",
        "main_supplier": {"id": supplier["id"], "name": "Harbour Resin Supply"},
        "is_in_use": False,
        "is_archived": False,
        "version": 1,
    }
    assert office.get(f"/api/materials/{material['id']}/").json() == material


@pytest.mark.parametrize(
    ("changed", "pointer"),
    [
        ({"code": ""}, "/code"),
        ({"kind": "glue"}, "/kind"),
        ({"stock_unit": "gal"}, "/stock_unit"),
        ({"grams_per_tsp": "0"}, "/grams_per_tsp"),
        ({"grams_per_tsp": "NaN"}, "/grams_per_tsp"),
        ({"grams_per_tsp": "1e999999"}, "/grams_per_tsp"),
        ({"density_g_per_ml": "-1"}, "/density_g_per_ml"),
        ({"density_g_per_ml": "900"}, "/density_g_per_ml"),
        ({"shelf_life_days": 0}, "/shelf_life_days"),
        ({"shelf_life_days": 99999999999999999999}, "/shelf_life_days"),
        ({"hazard_codes": ["H228", "P280"]}, "/hazard_codes/1"),
        ({"hazard_codes": ["H300+H310"]}, "/hazard_codes/0"),
        ({"hazard_codes": "H228"}, "/hazard_codes"),
        ({"swatch": "green"}, "/swatch"),
        ({"swatch": "#12345g"}, "/swatch"),
        ({"main_supplier": 4711}, "/main_supplier"),
        ({"main_supplier": "x"}, "/main_supplier"),
        ({"measures": [{"name": "scoop", "equals": "4 oz"}]}, "/measures/0/equals"),
        ({"measures": [{"name": "scoop", "equals": "1/0 g"}]}, "/measures/0/equals"),
        ({"measures": [{"name": "scoop", "equals": "0 g"}]}, "/measures/0/equals"),
        ({"measures": [{"name": "scoop", "equals": "3 pumps"}]}, "/measures/0/equals"),
        ({"measures": [{"name": "scoop", "equals": "3 ft"}]}, "/measures/0/equals"),
        ({"measures": [{"name": "gram", "equals": "4 g"}]}, "/measures/0/name"),
        ({"measures": [{"name": "fl oz", "equals": "4 g"}]}, "/measures/0/name"),
        ({"measures": [{"name": "oz", "equals": "4 g"}]}, "/measures/0/name"),
        ({"measures": [{"name": "scoop"}]}, "/measures/0/equals"),
        ({"measures": [{"name": "scoop", "equals": "4 g"}] * 2}, "/measures/1/name"),
        ({"measures": [{"name": "Scoop", "equals": "4 g"}, {"name": "scoops", "equals": "5 g"}]}, "/measures"),
        ({"brand": "x"}, "/brand"),
    ],
)
def test_what_cannot_be_is_refused_where_it_stands_and_nothing_is_written(office, supplier, changed, pointer):
    assert pointers(office.post("/api/materials/", POWDER | changed)) == [pointer]
    assert not Material.objects.exists()


def test_a_measure_by_volume_needs_the_spoon_weight_of_a_powder(office, supplier):
    cup = {"measures": [{"name": "dash", "equals": "1/8 tsp"}]}

    answer = office.post("/api/materials/", POWDER | cup | {"grams_per_tsp": None})
    assert pointers(answer) == ["/measures/0/equals"]
    assert "level teaspoon" in answer.json()["errors"][0]["detail"]

    measure = office.post("/api/materials/", POWDER | cup).json()["measures"][0]
    assert measure["equals"] == {"amount": "0.2125", "unit": "g"}
    assert measure["as_typed"] == {"amount": "0.125", "unit": "tsp"}


def test_a_third_stays_a_third_as_typed(material):
    measure = material("R-9", measures=[{"name": "cap", "equals": "1/3 cup"}])["measures"][0]

    assert measure["as_typed"] == {"amount": "1/3", "unit": "cup"}
    assert measure["equals"] == {"amount": "78.862746", "unit": "ml"}


def test_a_changed_density_converts_measures_and_packs_anew_from_what_was_typed(office, supplier, material):
    paste = material("P-1", density_g_per_ml="1.25", measures=[{"name": "tub", "equals": "500 g"}])
    body = {"supplier": supplier["id"], "name": "Tub", "contents": [{"material": paste["id"], "quantity": "2 tubs"}]}
    pack = office.post("/api/packs/", body).json()
    assert paste["measures"][0]["equals"] == {"amount": "400", "unit": "ml"}
    assert pack["contents"][0]["quantity"] == {"amount": "800", "unit": "ml"}
    assert pack["contents"][0]["as_typed"] == {"amount": "2", "unit": "tub"}

    changed = office.patch(f"/api/materials/{paste['id']}/", {"density_g_per_ml": "1"}).json()

    assert changed["measures"][0]["equals"] == {"amount": "500", "unit": "ml"}
    assert changed["version"] == 2
    pack = office.get(f"/api/packs/{pack['id']}/").json()
    assert pack["contents"][0]["quantity"] == {"amount": "1000", "unit": "ml"}


def test_a_density_that_a_measure_stands_on_cannot_be_taken_away(office, material):
    paste = material("P-1", density_g_per_ml="1.25", measures=[{"name": "tub", "equals": "500 g"}])

    answer = office.patch(f"/api/materials/{paste['id']}/", {"density_g_per_ml": None})

    assert pointers(answer) == ["/measures/0/equals"]
    assert office.get(f"/api/materials/{paste['id']}/").json()["density_g_per_ml"] == "1.25"


def test_a_measure_that_a_pack_is_given_in_cannot_be_taken_away(office, supplier, material):
    paste = material("P-1", measures=[{"name": "tub", "equals": "400 ml"}])
    body = {"supplier": supplier["id"], "name": "Tub", "contents": [{"material": paste["id"], "quantity": "2 tubs"}]}
    office.post("/api/packs/", body)

    answer = office.patch(f"/api/materials/{paste['id']}/", {"measures": []})

    assert answer.status_code == 400
    assert "Tub holds 2 tub of" in answer.json()["detail"]
    assert office.get(f"/api/materials/{paste['id']}/").json()["measures"]


def test_what_judges_lots_and_amounts_goes_to_the_change_log(office, owner, resin):
    office.patch(
        f"/api/materials/{resin['id']}/",
        {"density_g_per_ml": "1.14", "open_life_days": 180, "name": "Clear table resin A", "measures": []},
    )

    changes = Change.objects.filter(noun="material", record=resin["id"]).exclude(field="added").order_by("field")
    assert [(change.field, change.before, change.after, change.by) for change in changes] == [
        ("density_g_per_ml", "1.13", "1.14", owner),
        ("open_life_days", "", "180", owner),
    ]


def test_the_stock_unit_is_free_until_the_material_was_in_stock_and_fixed_then(office, resin):
    address = f"/api/materials/{resin['id']}/"
    assert office.patch(address, {"stock_unit": "g"}).json()["stock_unit"] == "g"
    Material.objects.update(is_in_use=True)

    answer = office.patch(address, {"stock_unit": "ml"})

    assert answer.status_code == 409
    assert answer.json()["type"] == "/problems/stock-unit-fixed"
    assert answer.json()["errors"][0]["pointer"] == "/stock_unit"
    assert office.patch(address, {"stock_unit": "g", "name": "Renamed"}).status_code == 200


def test_a_code_belongs_to_one_material(office, resin, hardener):
    body = {"code": "R-1", "name": "Other", "kind": "resin", "stock_unit": "ml"}
    assert pointers(office.post("/api/materials/", body)) == ["/code"]
    assert pointers(office.patch(f"/api/materials/{hardener['id']}/", {"code": "R-1"})) == ["/code"]


def test_the_action_keeps_the_same_rules_as_the_address(owner, resin):
    with pytest.raises(BadBody) as refusal:
        actions.add_material(code="R-1", name="Other", kind="resin", stock_unit="ml", by=owner)
    assert refusal.value.errors[0]["pointer"] == "/code"
    with pytest.raises(BadBody) as refusal:
        actions.add_material(code="R-2", name="Other", kind="resin", stock_unit="ml", hazard_codes=["X1"], by=owner)
    assert refusal.value.errors[0]["pointer"] == "/hazard_codes/0"


def test_patch_changes_what_it_names_and_put_sets_the_rest_to_what_is_usual(office, resin):
    address = f"/api/materials/{resin['id']}/"
    patched = office.patch(address, {"cautions": "Gloves."}).json()
    assert (patched["cautions"], patched["density_g_per_ml"]) == ("Gloves.", "1.13")

    put = office.put(address, {"code": "R-1", "name": "Resin", "kind": "resin", "stock_unit": "ml"}).json()
    assert (put["cautions"], put["density_g_per_ml"], put["name"]) == ("", None, "Resin")
    assert pointers(office.put(address, {"code": "R-1"})) == ["/name", "/kind", "/stock_unit"]


def test_a_measure_in_a_patch_is_whole(office, resin):
    address = f"/api/materials/{resin['id']}/"

    assert pointers(office.patch(address, {"measures": [{"name": "pump"}]})) == ["/measures/0/equals"]
    assert office.patch(address, {"measures": [{"name": "pump", "equals": "30 ml"}]}).status_code == 200


def test_a_change_of_the_same_measures_is_no_change(office, material):
    paste = material("P-1", measures=[{"name": "tub", "equals": "400 ml"}])
    address = f"/api/materials/{paste['id']}/"

    assert office.patch(address, {"measures": [{"name": "tub", "equals": "400 ml"}]}).json()["version"] == 1
    assert office.patch(address, {"measures": [{"name": "tub", "equals": "401 ml"}]}).json()["version"] == 2


def test_a_stale_page_changes_nothing(office, resin):
    address = f"/api/materials/{resin['id']}/"
    seen = office.get(address)["ETag"]
    assert office.patch(address, {"name": "New"}, HTTP_IF_MATCH=seen).status_code == 200

    assert office.patch(address, {"name": "Newer"}, HTTP_IF_MATCH=seen).status_code == 412
    assert office.delete(address, HTTP_IF_MATCH=seen).status_code == 412
    assert office.get(address).json()["name"] == "New"


def test_what_nothing_names_is_deleted_and_what_was_used_is_archived(office, supplier, resin, hardener):
    body = {"supplier": supplier["id"], "name": "Jug", "contents": [{"material": resin["id"], "quantity": "1 gal"}]}
    office.post("/api/packs/", body)

    assert office.delete(f"/api/materials/{hardener['id']}/").status_code == 204
    refusal = office.delete(f"/api/materials/{resin['id']}/")
    assert refusal.status_code == 409
    assert refusal.json()["type"] == "/problems/in-use"
    assert refusal.json()["remedies"][0]["kind"] == "archive"

    archived = office.post(f"/api/materials/{resin['id']}/archive/").json()
    assert archived["is_archived"] is True
    assert office.get("/api/materials/?is_archived=false").json()["count"] == 0
    assert office.post(f"/api/materials/{resin['id']}/unarchive/").json()["is_archived"] is False


def test_a_material_that_has_been_in_stock_is_not_deleted(office, resin):
    Material.objects.update(is_in_use=True)

    assert office.delete(f"/api/materials/{resin['id']}/").status_code == 409


def test_an_archived_supplier_stays_where_it_is_and_is_not_chosen_anew(office, supplier, material):
    bought = material("R-1", main_supplier=supplier["id"])
    other = material("R-2")
    office.post(f"/api/suppliers/{supplier['id']}/archive/")

    assert office.patch(f"/api/materials/{bought['id']}/", {"main_supplier": supplier["id"]}).status_code == 200
    answer = office.patch(f"/api/materials/{other['id']}/", {"main_supplier": supplier["id"]})
    assert pointers(answer) == ["/main_supplier"]


def test_a_hazard_code_said_twice_is_kept_once(office):
    answer = office.post("/api/materials/", POWDER | {"hazard_codes": ["H317", "H228", "H317"]})

    assert answer.json()["hazard_codes"] == ["H317", "H228"]


def test_materials_are_found_and_ordered(office, resin, hardener):
    def codes(query: str) -> list[str]:
        return [row["code"] for row in office.get(f"/api/materials/?{query}").json()["results"]]

    assert codes("") == ["H-1", "R-1"]
    assert codes("ordering=-code") == ["R-1", "H-1"]
    assert codes("search=resin") == ["R-1"]
    assert codes("kind=hardener") == ["H-1"]
    assert codes("kind=hardener&kind=resin") == ["H-1", "R-1"]
    assert codes("code=R-1") == ["R-1"]
    assert office.get("/api/materials/?colour=green").status_code == 400
    assert office.get("/api/materials/?main_supplier=99999999999999999999999").status_code == 400


def test_a_list_costs_the_same_however_long(office, material, supplier, django_assert_num_queries):
    measures = [{"name": "pump", "equals": "30 ml"}]
    for number in range(2):
        material(f"M-{number}", measures=measures, main_supplier=supplier["id"])
    with django_assert_num_queries(4):
        office.get("/api/materials/")
    for number in range(2, 40):
        material(f"M-{number}", measures=measures, main_supplier=supplier["id"])
    with django_assert_num_queries(4):
        assert len(office.get("/api/materials/").json()["results"]) == 40


def test_the_owner_alone_writes_the_catalogue_and_everybody_reads_it(api, crew, viewer, resin):
    for person in (crew, viewer):
        client = api(person)
        assert client.get(f"/api/materials/{resin['id']}/").json()["code"] == "R-1"
        assert client.post("/api/materials/", POWDER).status_code == 403
        assert client.patch(f"/api/materials/{resin['id']}/", {"name": "x"}).status_code == 403
        assert client.delete(f"/api/materials/{resin['id']}/").status_code == 403
        assert client.post(f"/api/materials/{resin['id']}/archive/").status_code == 403


def test_the_units_are_listed_with_their_exact_size(office):
    units = {unit["code"]: unit for unit in office.get("/api/units/").json()["results"]}

    assert units["fl_oz"] == {
        "code": "fl_oz",
        "name": "fluid ounce",
        "label": "fl oz",
        "dimension": "volume",
        "base_unit": "ml",
        "factor": "29.573529562500",
    }
    assert office.get("/api/units/?dimension=mass").status_code == 400
