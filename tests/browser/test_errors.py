"""The server broke, went away, or refused: a person reads what is wrong, and what they typed is still there."""

import re

from playwright.sync_api import Route, expect

from tests.browser.bench import bench
from tests.browser.conftest import OpenPage
from tests.browser.office import Office
from tests.browser.served import Served


def test_a_broken_server_shows_the_trouble_and_the_page_comes_on_trying_again(
    demo_shop: Served, open_page: OpenPage
) -> None:
    page = open_page(demo_shop, "/figures", who="owner", may_break=True)
    page.route("**/api/shelf/**", lambda route: route.fulfill(status=500, body="{}"))
    page.get_by_role("link", name="Shelf", exact=True).click()
    expect(page.get_by_role("heading", name="Something broke on the server")).to_be_visible(timeout=20_000)

    page.unroute("**/api/shelf/**")
    page.get_by_role("button", name="Try again").click()
    expect(page.get_by_role("heading", name="The shelf", level=1)).to_be_visible()


def test_an_answer_that_is_lost_keeps_what_was_typed_and_posts_once(
    demo_shop: Served, open_page: OpenPage, office: Office
) -> None:
    page = open_page(demo_shop, "/jobs/new", who="crew")
    page.get_by_role("combobox", name="Customer").fill("Fell household")
    page.get_by_label("What it is called").fill("Fell kitchen")
    page.get_by_label("Name of the top").fill("Fell top")
    page.get_by_label("Length, in", exact=True).fill("72")
    page.get_by_label("Width, in", exact=True).fill("24")

    def lose_the_answer(route: Route) -> None:
        route.fetch()
        route.abort()

    page.route("**/api/jobs/", lose_the_answer)
    page.get_by_role("button", name="Put the job down").click()
    expect(page.get_by_role("alert")).to_contain_text("The shop's server did not answer")
    expect(page.get_by_label("What it is called")).to_have_value("Fell kitchen")
    expect(page.get_by_label("Length, in", exact=True)).to_have_value("72")

    page.unroute("**/api/jobs/")
    page.get_by_role("button", name="Try again").click()
    expect(page.get_by_role("heading", name="Fell kitchen", level=1)).to_be_visible()
    assert office.get("/api/jobs/?search=Fell%20kitchen")["count"] == 1


def test_a_change_over_somebody_elses_keeps_what_was_typed(
    demo_shop: Served, open_page: OpenPage, office: Office
) -> None:
    job = bench(office, "Garth").job
    page = open_page(demo_shop, f"/jobs/{job['id']}/edit", who="owner")
    page.get_by_label("What it is called").fill("Garth kitchen, as typed here")
    office.patch(f"/api/jobs/{job['id']}/", {"title": "Garth kitchen, changed elsewhere"})

    page.get_by_role("button", name="Save", exact=True).click()
    expect(page.get_by_role("button", name="Show what is there now")).to_be_visible()
    expect(page.get_by_label("What it is called")).to_have_value("Garth kitchen, as typed here")
    assert office.get(f"/api/jobs/{job['id']}/")["title"] == "Garth kitchen, changed elsewhere"

    page.get_by_role("button", name="Save mine over it").click()
    expect(page.get_by_role("heading", name="Garth kitchen, as typed here", level=1)).to_be_visible()


def test_an_error_stands_at_its_field(demo_shop: Served, open_page: OpenPage, office: Office) -> None:
    bench(office, "Holm")
    page = open_page(demo_shop, "/shelf/materials/new", who="owner")
    page.get_by_label("Name", exact=True).fill("Another resin")
    code = page.get_by_label("Code", exact=True)
    code.fill("Holm-A")
    page.get_by_role("button", name="Add it to the shelf").click()

    expect(code).to_have_attribute("aria-invalid", "true")
    expect(code).to_be_focused()
    expect(code).to_have_accessible_description(re.compile(r"Holm-A|code", re.IGNORECASE))
    expect(page.get_by_label("Name", exact=True)).to_have_value("Another resin")
    expect(page.get_by_label("Name", exact=True)).not_to_have_attribute("aria-invalid", "true")

    code.fill("Holm-C")
    page.get_by_role("button", name="Add it to the shelf").click()
    expect(page.get_by_role("heading", name="Another resin", level=1)).to_be_visible()
