"""A pour that happened can be recorded, whatever the book says; and nothing that was typed is lost on the way."""

import re

from playwright.sync_api import Page, expect

from tests.browser.bench import bench
from tests.browser.conftest import OpenPage
from tests.browser.hands import part
from tests.browser.office import Office
from tests.browser.served import Served

NOTE = "Poured at dusk, a little slower than planned."


def try_to_complete(page: Page) -> None:
    page.get_by_label("Note").fill(NOTE)
    page.get_by_role("button", name="All as planned").click()
    page.get_by_role("button", name="Pour completed").click()


def test_a_pour_on_a_kit_that_nobody_booked(demo_shop: Served, open_page: OpenPage, office: Office) -> None:
    ours = bench(office, "Tarn")
    pour = ours.plan("48 fl oz", "24 fl oz")
    page = open_page(demo_shop, f"/pours/{pour['id']}", who="owner")
    try_to_complete(page)

    refusal = page.get_by_role("alert").filter(has=page.get_by_role("list", name="What would help"))
    expect(refusal).to_contain_text("Tarn resin: 48 fl oz short")
    expect(refusal).to_contain_text("Tarn hardener: 24 fl oz short")
    refusal.get_by_role("button", name=re.compile("booked|received|came", re.IGNORECASE)).click()

    dialog = page.get_by_role("dialog", name="Here, and not booked yet")
    expect(dialog.get_by_role("combobox", name="What was opened")).to_have_value("Tarn kit")
    dialog.get_by_label("Lot number on the label of Tarn resin").fill("TA-1")
    dialog.get_by_label("Lot number on the label of Tarn hardener").fill("TB-1")
    dialog.get_by_role("button", name="Book it, the price follows").click()
    expect(page.get_by_role("dialog")).to_have_count(0)

    expect(page.get_by_label("Note")).to_have_value(NOTE)
    page.get_by_role("button", name="Pour completed").click()
    went_in = part(page, "What went in")
    expect(went_in.get_by_text("TA-1").first).to_be_visible()
    expect(went_in.get_by_text("TB-1").first).to_be_visible()
    expect(page.get_by_text(NOTE)).to_be_visible()
    [delivery] = office.get(f"/api/deliveries/?supplier={ours.supplier['id']}")["results"]
    assert delivery["is_provisional"]
    [lot] = office.get("/api/lots/?lot_number=TA-1")["results"]
    assert lot["on_hand"] == {"amount": "2365.882365", "unit": "ml"}  # 128 − 48 = 80 fl oz of 29.5735295625 mL


def test_there_was_more_than_the_book_said(demo_shop: Served, open_page: OpenPage, office: Office) -> None:
    ours = bench(office, "Skerry")
    ours.receive_kit()
    pour = ours.plan("130 fl oz", "64 fl oz")
    page = open_page(demo_shop, f"/pours/{pour['id']}", who="owner")
    try_to_complete(page)

    refusal = page.get_by_role("alert").filter(has=page.get_by_role("list", name="What would help"))
    expect(refusal).to_contain_text("Skerry resin: 2 fl oz short. 130 fl oz wanted, 128 fl oz there.")
    expect(refusal).not_to_contain_text("Skerry hardener:")
    refusal.get_by_role("button", name=re.compile("more", re.IGNORECASE)).click()

    dialog = page.get_by_role("dialog", name="There was more than the book said")
    expect(dialog.get_by_label("How much more than the book said")).to_have_value("2 fl oz")
    dialog.get_by_role("button", name="The container was fuller than its label").click()
    dialog.get_by_role("button", name="Count it up with the pour").click()
    expect(page.get_by_role("list", name="More than the book said")).to_contain_text("2 fl oz more")

    expect(page.get_by_label("Note")).to_have_value(NOTE)
    page.get_by_role("button", name="Pour completed").click()
    expect(part(page, "What went in").get_by_text("Skerry-A").first).to_be_visible()
    [lot] = office.get(f"/api/lots/?material={ours.resin['id']}")["results"]
    assert lot["on_hand"]["amount"] == "0"
