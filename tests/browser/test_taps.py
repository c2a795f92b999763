"""Gloves on, phone in hand: a planned pour is logged in at most six taps, a lot is traced in three."""

from playwright.sync_api import Page, expect

from tests.browser.bench import bench
from tests.browser.conftest import PHONE, OpenPage
from tests.browser.hands import part
from tests.browser.office import Office
from tests.browser.served import Served

COUNTING = "() => { window.taps = 0; addEventListener('pointerup', (e) => e.isTrusted && window.taps++, true) }"


def taps(page: Page) -> int:
    """Every touch of the glass since counting began; the page was never loaded anew."""
    counted: int = page.evaluate("window.taps")
    return counted


def test_a_planned_pour_is_logged_from_today_in_six_taps(
    demo_shop: Served, open_page: OpenPage, office: Office
) -> None:
    ours = bench(office, "Linn")
    ours.receive_kit()
    before = ours.plan("32 fl oz", "16 fl oz")
    seen = {"conditions": {"air_temperature": {"value": "71", "unit": "F"}}, "ticks": {"sanded": True}}
    office.post(f"/api/pours/{before['id']}/complete/", seen)
    pour = ours.plan("48 fl oz", "24 fl oz")
    page = open_page(demo_shop, "/", who="crew", size=PHONE)
    page.evaluate(COUNTING)

    page.get_by_role("list", name="Pours to log").get_by_role("link", name="Linn").tap()
    page.get_by_role("button", name="All as planned").tap()
    page.get_by_role("region", name="Room and work").get_by_role("button", name="As at pour").tap()
    page.get_by_role("button", name="Pour completed").tap()

    expect(part(page, "What went in")).to_contain_text("Linn-A")
    assert taps(page) == 4
    assert taps(page) <= 6
    done = office.get(f"/api/pours/{pour['id']}/")
    assert (done["status"], done["conditions"]["air_temperature"]["value"]) == ("completed", "71")


def test_a_lot_is_traced_in_three_taps(demo_shop: Served, open_page: OpenPage, office: Office) -> None:
    ours = bench(office, "Corrie")
    ours.receive_kit()
    pour = ours.plan("48 fl oz", "24 fl oz")
    office.post(f"/api/pours/{pour['id']}/complete/", {})
    page = open_page(demo_shop, "/", who="crew", size=PHONE)
    page.evaluate(COUNTING)

    page.get_by_role("link", name="Shelf", exact=True).tap()
    search = page.get_by_label("A material, or the number on a label")
    search.tap()
    search.press_sequentially("Corrie-A")
    expect(page.get_by_role("main").get_by_role("heading", level=2)).to_have_count(1)  # the list has come to rest
    page.get_by_role("list", name="Lots of Corrie resin").get_by_role("link").tap()

    went = part(page, "Where it went")
    expect(went).to_contain_text("1 top in 1 pour")
    expect(went.get_by_role("link", name="Corrie top")).to_be_visible()
    expect(went).to_contain_text("Corrie kitchen · Corrie household")
    assert taps(page) == 3
