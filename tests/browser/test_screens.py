"""Every screen, on a phone and a laptop, in light and dark: to be read by everybody, in nobody's way."""

from typing import Any

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.bench import bench
from tests.browser.conftest import LAPTOP, PHONE, OpenPage
from tests.browser.hands import set_up
from tests.browser.looking import headings, overflow, violations
from tests.browser.office import Office
from tests.browser.served import Served

READ = [
    "/",
    "/shelf",
    "/shelf/counts",
    "/shelf/suppliers",
    "/shelf/packs",
    "/shelf/systems",
    "/shelf/places",
    "/shelf/materials/{material}",
    "/shelf/lots/{lot}",
    "/receiving",
    "/receiving/{delivery}",
    "/jobs",
    "/jobs/{job}",
    "/jobs/{job}/sources",
    "/tops/{piece}",
    "/pours",
    "/pours/{planned}",
    "/pours/{done}",
    "/figures",
    "/figures/cost",
    "/figures/cost?group_by=job",
    "/figures/reorder",
    "/figures/expiring",
    "/figures/value",
    "/figures/balance?material={material}",
    "/figures/uses",
    "/figures/uses?lot={lot}",
    "/figures/sources",
    "/figures/movements",
    "/shop",
    "/shop/people",
]
RECORD = [
    "/shelf/count",
    "/shelf/mix",
    "/receiving/new",
    "/jobs/new",
    "/jobs/{open_job}/edit",
    "/jobs/{open_job}/tops/new",
    "/tops/{piece}/edit",
    "/pours/new?job={open_job}",
    "/pours/{planned}/edit",
    "/pours/{done}/add",
    "/pours/{done}/correct",
]
OWN = ["/shelf/materials/new", "/shelf/materials/{material}/edit"]

VIEWERS_ACTS = {"/shop/people": ["My password"], "/jobs": ["All pours"]}

STILL = "*, ::before, ::after { transition: none !important; animation: none !important }"
DRAWN = "() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))"

OWNERS_ACTS = {
    "/shelf": "New material",
    "/shelf/suppliers": "Add a supplier",
    "/shelf/materials/{material}": "Change",
    "/shop/people": "Add somebody",
}


@pytest.fixture(scope="module")
def ids(office: Office) -> dict[str, Any]:
    """One record of each noun from the shop's history, for the addresses."""
    [done, *_] = office.get("/api/pours/?status=completed&ordering=-poured_at")["results"]
    [planned, *_] = office.get("/api/pours/?status=planned")["results"]
    used = office.get(f"/api/pours/{done['id']}/")["usages"][0]
    piece = done["pieces"][0]
    return {
        "done": done["id"],
        "planned": planned["id"],
        "open_job": planned["pieces"][0]["job"],
        "job": piece["job"],
        "piece": piece["piece"],
        "material": used["material"],
        "lot": used["lot"],
        "delivery": office.get("/api/deliveries/")["results"][0]["id"],
    }


def settled(page: Page) -> None:
    """Until the sheet is drawn and its answers are in."""
    expect(page.get_by_role("heading", level=1).first).to_be_visible(timeout=15_000)
    page.wait_for_load_state("networkidle")


def faults_of(page: Page) -> list[str]:
    """All that is wrong with a page: at both widths in light, and its colours in dark."""
    found = []
    page.add_style_tag(content=STILL)
    for size, name in ((PHONE, "390"), (LAPTOP, "1280")):
        page.set_viewport_size(size)  # type: ignore[arg-type]
        page.emulate_media(color_scheme="light")
        page.evaluate(DRAWN)
        found += [f"{name} light: {fault}" for fault in [*violations(page), *overflow(page), *headings(page)]]
        page.emulate_media(color_scheme="dark")
        page.evaluate(DRAWN)
        found += [f"{name} dark: {fault}" for fault in violations(page, only=["color-contrast"])]
    if not page.title().endswith("· Lot & Pour"):
        found.append(f"titled {page.title()!r}")
    return found


@pytest.mark.parametrize("path", [*READ, *RECORD, *OWN])
def test_a_screen_is_read_by_everybody(path: str, demo_shop: Served, open_page: OpenPage, ids: dict[str, Any]) -> None:
    page = open_page(demo_shop, path.format(**ids), who="owner", size=PHONE)
    settled(page)
    assert page.get_by_role("main").get_by_role("link", name="Back to the first page").count() == 0
    assert faults_of(page) == []


def test_the_door_is_read_by_everybody_and_faults_put_into_it_are_found(demo_shop: Served, open_page: OpenPage) -> None:
    page = open_page(demo_shop, "/sign-in", size=PHONE)
    settled(page)
    assert faults_of(page) == []
    page.evaluate(
        """() => document.querySelector('main').insertAdjacentHTML('beforeend',
            '<input><h4>Deep</h4><p style="width: 3000px; color: #888; background: #999">Wide and pale</p>')"""
    )
    said = "\n".join(faults_of(page))
    for fault in ("390 light: label", "1280 light: label", "px too wide", "h4 after h1", "dark: color-contrast"):
        assert fault in said


EMPTY = {
    "/": "Nothing needs a hand",
    "/shelf": "The shelf is bare",
    "/shelf/suppliers": "No supplier yet",
    "/receiving": "Nothing was received yet",
    "/pours": "No pour yet",
    "/figures/cost": "No tops here",
}
BARE = [
    "/jobs",
    "/shelf/packs",
    "/shelf/systems",
    "/shelf/counts",
    "/figures",
    "/figures/reorder",
    "/figures/expiring",
    "/figures/value",
    "/figures/uses",
    "/figures/sources",
    "/figures/movements",
    "/receiving/new",
    "/pours/new",
]


def test_an_empty_shop_is_read_by_everybody_and_says_what_comes_first(empty_shop: Served, open_page: OpenPage) -> None:
    page = open_page(empty_shop, size=PHONE)
    settled(page)
    found = faults_of(page)
    set_up(page)
    for path in [*EMPTY, *BARE]:
        page.goto(path)
        settled(page)
        if path in EMPTY:
            expect(page.get_by_role("main")).to_contain_text(EMPTY[path])
        found += [f"{path}: {fault}" for fault in faults_of(page)]
    assert found == []


@pytest.mark.parametrize("who", ["crew", "viewer"])
def test_whoever_may_not_see_money_sees_none_and_no_acts_of_others(
    who: str, demo_shop: Served, open_page: OpenPage, ids: dict[str, Any]
) -> None:
    page = open_page(demo_shop, "/", who=who)
    paths = [*READ, *RECORD] if who == "crew" else READ
    wrong = []
    for path in paths:
        page.goto(path.format(**ids))
        settled(page)
        if "$" in page.locator("body").inner_text():
            wrong.append(f"money on {path}")
        if (act := OWNERS_ACTS.get(path)) and acts_named(page, act).count():
            wrong.append(f"{act} on {path}")
        acts = page.locator("[data-acts] :is(a, button)").all_inner_texts()
        if who == "viewer" and acts != VIEWERS_ACTS.get(path, []):
            wrong.append(f"acts on {path}: {acts}")
    assert wrong == []


def acts_named(page: Page, name: str) -> Locator:
    return page.locator("[data-acts] :is(a, button)").filter(has_text=name)


def test_the_owner_sees_money_and_the_acts_that_others_do_not(
    demo_shop: Served, open_page: OpenPage, ids: dict[str, Any]
) -> None:
    page = open_page(demo_shop, "/figures/cost", who="owner")
    settled(page)
    assert "$" in page.locator("body").inner_text()
    for path, act in OWNERS_ACTS.items():
        page.goto(path.format(**ids))
        expect(acts_named(page, act).first).to_be_visible()


@pytest.mark.parametrize("who", ["crew", "viewer"])
def test_a_page_of_another_role_says_so(who: str, demo_shop: Served, open_page: OpenPage, ids: dict[str, Any]) -> None:
    page = open_page(demo_shop, "/", who=who)
    for path in OWN if who == "crew" else [*RECORD, *OWN]:
        page.goto(path.format(**ids))
        expect(page.get_by_text("Not with your role"), path).to_be_visible()
        expect(page.get_by_role("main").locator("button[type=submit]"), path).to_have_count(0)


def test_a_pour_is_completed_with_the_keyboard_alone(demo_shop: Served, open_page: OpenPage, office: Office) -> None:
    ours = bench(office, "Ness")
    ours.receive_kit()
    ours.plan("48 fl oz", "24 fl oz")
    page = open_page(demo_shop, "/sign-in")
    expect(page.get_by_label("Sign-in name")).to_be_visible()
    tab_to(page, page.get_by_label("Sign-in name"))
    page.keyboard.type("crew")
    tab_to(page, page.get_by_label("Password", exact=True))
    page.keyboard.type("pour-slowly")
    page.keyboard.press("Enter")
    link = page.get_by_role("list", name="Pours to log").get_by_role("link", name="Ness")
    expect(link).to_be_visible()
    tab_to(page, link)
    page.keyboard.press("Enter")
    done = page.get_by_role("button", name="Pour completed")
    expect(done).to_be_visible()
    tab_to(page, done)
    page.keyboard.press("Enter")
    expect(page.get_by_role("region", name="What went in")).to_contain_text("Ness-A")


def tab_to(page: Page, aim: Locator, at_most: int = 90) -> None:
    """Presses Tab until the aim has the focus, and sees that the focus is drawn."""
    for _ in range(at_most):
        page.keyboard.press("Tab")
        if aim.evaluate("(e) => e === document.activeElement"):
            assert aim.evaluate("(e) => e.matches(':focus-visible')")
            return
    raise AssertionError(f"Tab never reaches {aim}")
